using CsCheck;
using LabelForge.Ingredients;
using LabelForge.Measures;
using LabelForge.Recipes;
using LabelForge.Recipes.Saponification;

namespace LabelForge.Tests.Recipes.Saponification;

public class StoichiometryTests
{
    // 1000 g of an oil of 256 mg KOH/g take up 256 / 56.105 = 4.562873 mol. With superfat 0: NaOH 4.562873 * 39.997 = 182.5012 g;
    // glycerin 4.562873 / 3 * 92.094 = 140.0711 g; soap 1000 + 182.5012 - 140.0711 = 1042.4302 g.
    [Fact]
    public void All_of_an_oil_becomes_soap_and_glycerin_where_the_superfat_is_nothing()
    {
        using var bench = SoapBench.New().Soap("superfat: 0 %", "coconut, amount: 1000 g", "soda, amount: by superfat");
        var made = bench.Made();
        Assert.Equal(182.5012m, decimal.Round(bench.Charge().Lyes[0].Grams, 4));
        Assert.Equal([140.0711m, 1042.4302m], [made.Grams("Glycerin"), made.Grams("Sodium Cocoate")]);
        Assert.Equal(2, made.Length);
    }

    // The same oil with 5 %: 95 % of each of those, and 50 g of oil left.
    [Fact]
    public void Superfat_is_oil_that_finds_no_lye()
    {
        using var bench = SoapBench.New().Soap("superfat: 5 %", "coconut, amount: 1000 g", "soda, amount: by superfat");
        var made = bench.Made();
        Assert.Equal([173.3762m, 133.0675m, 990.3086m, 50m],
            [decimal.Round(bench.Charge().Lyes[0].Grams, 4), made.Grams("Glycerin"), made.Grams("Sodium Cocoate"),
                made.Grams("Cocos Nucifera (Coconut) Oil")]);
    }

    // Potassium hydroxide of 90 %: 256 g / 0.9 = 284.4444 g of it, of which 28.4444 g count as water.
    // Soap 1000 + 256 - 140.0711 = 1115.9289 g.
    [Fact]
    public void Potassium_hydroxide_is_weighed_by_its_purity()
    {
        using var bench = SoapBench.New().Soap("superfat: 0 %", "coconut, amount: 1000 g", "potash, amount: by superfat");
        var made = bench.Made();
        Assert.Equal([284.4444m, 28.4444m, 1115.9289m],
            [decimal.Round(bench.Charge().Lyes[0].Grams, 4), made.Grams("Water"), made.Grams("Potassium Cocoate")]);
    }

    // Stearic acid of 197.2 mg KOH/g: 100 g take up 19.72 / 56.105 = 0.351484 mol. NaOH 14.0583 g; water 0.351484 * 18.015 = 6.3320 g;
    // soap 100 + 14.0583 - 6.3320 = 107.7263 g; no glycerin.
    [Fact]
    public void A_fatty_acid_gives_water_in_place_of_glycerin()
    {
        using var bench = SoapBench.New().Soap("superfat: 0 %", "stearic, amount: 100 g", "soda, amount: by superfat");
        var made = bench.Made();
        Assert.Equal([14.0583m, 6.3320m, 107.7263m, 0m],
            [decimal.Round(bench.Charge().Lyes[0].Grams, 4), made.Grams("Water"), made.Grams("Sodium Stearate"), made.Grams("Glycerin")]);
    }

    // 100 g stearic acid (0.351484 mol) and 100 g of the oil (0.456287 mol) with 0.351484 mol of NaOH, 14.0583 g:
    // the acid takes all of it, the oil none.
    [Fact]
    public void Fatty_acids_take_the_lye_before_the_oils()
    {
        using var bench = SoapBench.New().Soap("", "stearic, amount: 100 g", "coconut, amount: 100 g", "soda, amount: 14.0583 g");
        var made = bench.Made();
        Assert.Equal(107.726m, made.Grams("Sodium Stearate"), 3);
        Assert.Equal(100m, made.Grams("Cocos Nucifera (Coconut) Oil"), 3);
        Assert.Equal(0m, made.Grams("Sodium Cocoate"), 3);
    }

    // Beeswax of 87-104, middle 95.5: 100 g take up 9.55 / 56.105 = 0.170217 mol, 6.8082 g NaOH; soap and alcohols together 106.8082 g.
    [Fact]
    public void A_wax_gives_no_glycerin_and_keeps_its_alcohols()
    {
        using var bench = SoapBench.New().Soap("superfat: 0 %", "beeswax, amount: 100 g", "soda, amount: by superfat");
        var made = bench.Made();
        Assert.Equal([106.8082m, 0m], [made.Grams("Sodium Beeswax"), made.Grams("Glycerin")]);
    }

    [Fact]
    public void What_finds_no_lye_is_shared_in_proportion_to_the_oils_weight()
    {
        using var bench = SoapBench.New()
            .Soap("superfat: 8 %", "coconut, amount: 300 g", "olive, amount: 500 g", "castor-oil, amount: 200 g",
                "soda, amount: by superfat");
        Assert.Equal([24m, 40m, 16m], bench.Made().Where(s => s.Part == SoapPart.Unreacted).Select(s => decimal.Round(s.Middle, 20)));
    }

    // Half the moles of each: 0.5 * 4.562873 * 39.997 = 91.2506 g of soda need 128 / 0.9 = 142.2222 g of potash beside them.
    [Fact]
    public void Two_lyes_share_the_oils_by_their_moles()
    {
        using var bench = SoapBench.New()
            .Soap("superfat: 0 %", "coconut, amount: 1000 g", "soda, amount: 91.2506 g", "potash, amount: by superfat");
        var made = bench.Made();
        Assert.Equal(142.222m, bench.Charge().Lyes[1].Grams, 3);
        Assert.Equal([1042.43m / 2, 1115.93m / 2], [made.Grams("Sodium Cocoate"), made.Grams("Potassium Cocoate")],
            (a, b) => Math.Abs(a - b) < 0.01m);
    }

    // 1000 g of the oil with 200 g of NaOH: 182.5012 g are used, 17.4988 g are left over.
    [Fact]
    public void Lye_beyond_what_the_oils_take_up_is_left_over()
    {
        using var bench = SoapBench.New().Soap("", "coconut, amount: 1000 g", "soda, amount: 200 g");
        var made = bench.Made();
        Assert.Equal([17.4988m, 0m, 1042.4302m],
            [made.Grams("Sodium Hydroxide"), made.Grams("Cocos Nucifera (Coconut) Oil"), made.Grams("Sodium Cocoate")]);
    }

    private static readonly string[] Kinds = ["coconut", "olive", "shea", "castor-oil", "stearic", "beeswax"];

    private static readonly Gen<SoapCharge> Charges =
        from fats in Gen.Select(Gen.Int[0, 5], Gen.Int[1, 100000], Gen.Int[70, 260], Gen.Int[0, 30]).Array[1, 6]
        from lyes in Gen.Select(Gen.Bool, Gen.Int[1, 30000], Gen.Int[50, 100]).Array[1, 3]
        from oil in Gen.Int[0, 1000]
        select new SoapCharge(
            [.. fats.Select(f => new Fat(null!, Kinds[f.Item1], f.Item2 / 100m, new SaponificationValue(f.Item3, f.Item3 + f.Item4), false,
                new SoapEntry(Kinds[f.Item1], f.Item1 switch { 4 => FatKind.Acid, 5 => FatKind.Wax, _ => FatKind.Triglyceride },
                    $"Sodium {f.Item1}", $"Potassium {f.Item1}")))],
            [
                .. lyes.Select(l => new Lye(null!, l.Item1 ? Alkali.Sodium : Alkali.Potassium, l.Item2 / 100m, Share.FromPercent(l.Item3),
                    true))],
            [new Bystander("Tocopherol", oil / 100m)]);

    [Fact]
    public void Whatever_is_charged_the_same_mass_comes_out() => Charges.Sample(charge =>
        Math.Abs(SoapMade.Of(charge).Sum(s => s.Middle) - charge.Grams) < 1e-9m);

    [Fact]
    public void Every_substance_lies_within_its_bounds_whatever_the_oils_values_are() =>
        Gen.Select(Charges, Gen.Int[0, 100].Array[6]).Sample((charge, places) =>
        {
            var bounds = SoapMade.Of(charge);
            var sure = charge with
            {
                Fats = [.. charge.Fats.Select((f, at) =>
                {
                    var value = f.Value.Low + (f.Value.High - f.Value.Low) * places[at] / 100m;
                    return f with { Value = new SaponificationValue(value, value) };
                })],
            };
            // Substances come in the same order; where one is nothing it is left out, so they are told apart by part, name and fat.
            foreach (var (key, grams) in ByKey(sure))
            {
                var bound = bounds.Where(b => Key(b, charge) == key).ToArray();
                Assert.True(grams >= bound.Sum(b => b.Low) - 1e-12m && grams <= bound.Sum(b => b.High) + 1e-12m, $"{key}: {grams}");
            }
        });

    private static IEnumerable<((SoapPart, string, int), decimal)> ByKey(SoapCharge charge) =>
        SoapMade.Of(charge).GroupBy(s => Key(s, charge)).Select(g => (g.Key, g.Sum(s => s.Middle)));

    private static (SoapPart, string, int) Key(SoapSubstance substance, SoapCharge charge) =>
        (substance.Part, substance.Name, charge.Fats.ToList().FindIndex(f => ReferenceEquals(f, substance.Of)));
}
