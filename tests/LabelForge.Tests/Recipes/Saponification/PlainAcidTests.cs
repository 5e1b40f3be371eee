using CsCheck;
using LabelForge.Ingredients;
using LabelForge.Recipes;
using LabelForge.Recipes.Saponification;

namespace LabelForge.Tests.Recipes.Saponification;

/// <summary>Acids that are no fats: they have their alkali first and whole, and give a salt and water.</summary>
public class PlainAcidTests
{
    // The atoms that take part, abridged standard atomic weights (IUPAC 2021).
    private const decimal H = 1.008m, C = 12.011m, O = 15.999m, Na = 22.990m, K = 39.098m;

    // Worked by hand. Olive oil 450 g at 190 mg KOH/g takes 1.52393 mol; 95 % of it 1.44773 mol, a third of that in glycerin: 44.44 g.
    // Citric acid 20 g at 876.09 takes 0.31230 mol: water 0.31230 x 18.015 = 5.626 g; citrate 20 + 0.31230 x (39.997 - 18.015) = 26.865 g.
    [Fact]
    public void Citric_acid_becomes_citrate_and_water_and_leaves_the_superfat_to_the_oil()
    {
        using var bench = SoapBench.New()
            .Write("materials/citric.yaml", "name: Citric acid\nkind: additive\ncontains: Citric Acid\nsaponification: 876.09 mg KOH/g\n")
            .Write("materials/olive.yaml", "name: Olive oil\nkind: oil\ncontains: olive oil\nsaponification: 190 mg KOH/g\n")
            .Soap("superfat: 5 %", "olive, amount: 450 g", "water, amount: 150 g", "citric, amount: 20 g", "soda, amount: by superfat");
        var made = bench.Made();
        Assert.Equal(44.44m, Math.Round(made.Grams("Glycerin"), 2));
        Assert.Equal(26.87m, Math.Round(made.Grams("Sodium Citrate"), 2));
        Assert.Equal(5.63m, Math.Round(made.Grams("Water"), 2));
        Assert.Equal(22.5m, Math.Round(made.Grams("Olea Europaea (Olive) Fruit Oil"), 2));
        Assert.Equal(0.05m, Superfat.Of(bench.Charge()).Middle, 10);
        Assert.DoesNotContain(made, s => s.Part == SoapPart.SpareAlkali);
    }

    // acid + n MOH -> salt + n H2O: atom by atom. Citric acid C6H8O7, lactic C3H6O3, acetic C2H4O2, stearic C18H36O2.
    [Theory]
    [InlineData("Citric Acid", 6, 8, 7, 3, "Sodium Citrate", true)]
    [InlineData("Citric Acid", 6, 8, 7, 3, "Potassium Citrate", false)]
    [InlineData("Lactic Acid", 3, 6, 3, 1, "Sodium Lactate", true)]
    [InlineData("Lactic Acid", 3, 6, 3, 1, "Potassium Lactate", false)]
    [InlineData("Acetic Acid", 2, 4, 2, 1, "Sodium Acetate", true)]
    [InlineData("Acetic Acid", 2, 4, 2, 1, "Potassium Acetate", false)]
    [InlineData("Stearic Acid", 18, 36, 2, 1, "Sodium Stearate", true)]
    public void Every_atom_of_an_acid_and_its_alkali_is_found_again_in_salt_and_water(string acid, int carbon, int hydrogen, int oxygen,
        int protons, string salt, bool sodium)
    {
        var molar = carbon * C + hydrogen * H + oxygen * O;
        var metal = sodium ? Na : K;
        using var bench = SoapBench.New()
            .Write("materials/acid.yaml",
                FormattableString.Invariant(
                    $"name: Acid\nkind: additive\ncontains: {acid}\nsaponification: {protons * MolarMass.PotassiumHydroxide / molar * 1000} mg KOH/g\n"))
            .Write("materials/potash.yaml", "name: Potash lye\nkind: lye\ncontains: Potassium Hydroxide\npurity: 100 %\n")
            .Soap("superfat: 5 %", "olive, amount: 450 g", "water, amount: 150 g", "acid, amount: 20 g",
                (sodium ? "soda" : "potash") + ", amount: by superfat");
        var made = bench.Made();
        var share = acid == "Stearic Acid" ? made.Single(s => s.Name == salt).Middle / (20 / molar * (molar + protons * (metal - H))) : 1;
        // The salt: every acid hydrogen that reacts is replaced by the metal.
        Assert.Equal(20 / molar * (molar + protons * (metal - H)) * share, made.Single(s => s.Name == salt).Middle, 6);
        Assert.Equal(20 / molar * protons * (2 * H + O) * share, made.Single(s => s.Part == SoapPart.Water).Middle, 6);
        Assert.Equal(1m, share, 6);
    }

    [Fact]
    public void Mass_is_kept_to_a_thousandth_of_a_milligram_and_each_amount_is_within_its_bounds() =>
        Gen.Select(Gen.Decimal[1, 500].Array[5], Gen.Decimal[100, 900].Array[5], Gen.Decimal[0, 40].Array[5], Gen.Decimal[0.05m, 1.4m],
            Gen.Decimal[0, 1].Array[5])
            .Sample((grams, low, width, alkali, where) =>
            {
                FatKind[] kinds = [FatKind.PlainAcid, FatKind.Acid, FatKind.Triglyceride, FatKind.Triglyceride, FatKind.Wax];
                var fats = kinds.Select((k,
                    i) => new Fat(null!, $"F{i}", grams[i], new SaponificationValue(low[i], low[i] + width[i]), true,
                        new SoapEntry($"F{i}", k, $"S{i}", null)));
                var demand = fats.Sum(f => f.Moles(f.Value.Middle));
                var charge = new SoapCharge([.. fats],
                    [new Lye(null!, Alkali.Sodium, demand * alkali * MolarMass.SodiumHydroxide, LabelForge.Measures.Share.Whole, true)],
                    []);
                var made = SoapMade.Of(charge);
                Assert.InRange(made.Sum(s => s.Middle) - charge.Grams, -1e-6m, 1e-6m);
                // Any values inside the ranges: what comes out is inside the bounds.
                var at =
                    new SoapCharge(
                        [.. charge.Fats
                            .Select((f,
                                i) => f with
                                {
                                    Value = new SaponificationValue(f.Value.Low + where[i] * (f.Value.High - f.Value.Low),
                                        f.Value.Low + where[i] * (f.Value.High - f.Value.Low)),
                                })], charge.Lyes, []);
                foreach (var same in SoapMade.Of(at).GroupBy(s => (s.Name, s.Part)))
                {
                    var bounds = made.Where(m => (m.Name, m.Part) == same.Key).ToArray();
                    Assert.InRange(same.Sum(s => s.Middle), bounds.Sum(b => b.Low) - 1e-9m, bounds.Sum(b => b.High) + 1e-9m);
                }
            });

    // Acids, two oils and a wax: the least and the most are reached, so no narrower bound would hold.
    [Fact]
    public void The_bounds_of_each_substance_are_reached_at_some_corner_of_the_ranges() =>
        Gen.Select(Gen.Decimal[1, 500].Array[4], Gen.Decimal[100, 300].Array[4], Gen.Decimal[1, 40].Array[4], Gen.Decimal[0.3m, 1.2m])
            .Sample((grams, low, width, alkali) =>
        {
            FatKind[] kinds = [FatKind.Acid, FatKind.Triglyceride, FatKind.Triglyceride, FatKind.Wax];
            var fats =
                kinds.Select((k,
                    i) => new Fat(null!, $"F{i}", grams[i], new SaponificationValue(low[i], low[i] + width[i]), true,
                        new SoapEntry($"F{i}", k, $"S{i}", null))).ToArray();
            Lye[] lyes = [new Lye(null!, Alkali.Sodium, fats.Sum(f => f.Moles(f.Value.Middle)) * alkali * MolarMass.SodiumHydroxide,
                LabelForge.Measures.Share.Whole, true)];
            var made = SoapMade.Of(new SoapCharge([.. fats], [.. lyes], []));
            // Each value at its ends, and at the point where the alkali is just used up.
            decimal[][] ends = [.. fats.Select(f => new[] { f.Value.Low, f.Value.High })];
            var reached = new Dictionary<(string, SoapPart), (decimal Low, decimal High)>();
            foreach (var corner in Corners(ends, fats, lyes[0].Moles))
            {
                var at =
                    SoapMade.Of(
                        new SoapCharge([.. fats.Select((f, i) => f with { Value = new SaponificationValue(corner[i], corner[i]) })],
                            [.. lyes], []));
                foreach (var key in made.Select(m => (m.Name, m.Part)))
                {
                    var amount = at.Where(s => (s.Name, s.Part) == key).Sum(s => s.Middle);
                    reached[key] = reached.TryGetValue(key, out var r)
                        ? (Math.Min(r.Low, amount), Math.Max(r.High, amount))
                        : (amount, amount);
                }
            }
            foreach (var substance in made)
            {
                Assert.Equal(reached[(substance.Name, substance.Part)].Low, Math.Max(0, substance.Low), 6);
                Assert.Equal(reached[(substance.Name, substance.Part)].High, substance.High, 6);
            }
        });

    private static IEnumerable<decimal[]> Corners(decimal[][] ends, Fat[] fats, decimal moles)
    {
        for (var bits = 0; bits < 16; bits++)
        {
            decimal[] corner = [.. ends.Select((e, i) => e[bits >> i & 1])];
            yield return corner;
            for (var free = 0; free < 4; free++)
            {
                // The acid has its turn alone and first; an oil or the wax finds what it and the others leave.
                var others = free == 0 ? 0 : fats.Select((f, i) => i == free ? 0 : f.Moles(corner[i])).Sum();
                var usedUp = (moles - others) / fats[free].Moles(1);
                if (usedUp > ends[free][0] && usedUp < ends[free][1])
                    yield return [.. corner.Select((v, i) => i == free ? usedUp : v)];
            }
        }
    }
}
