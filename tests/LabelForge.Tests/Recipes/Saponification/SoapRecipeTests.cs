using LabelForge.Checks;
using LabelForge.Composition;
using LabelForge.Declarations;
using LabelForge.Ingredients;
using LabelForge.Markets;
using LabelForge.Measures;
using LabelForge.Recipes;
using LabelForge.Recipes.Saponification;

namespace LabelForge.Tests.Recipes.Saponification;

public class SoapRecipeTests
{
    [Fact]
    public void Lye_by_superfat_follows_oils_and_water_given_as_shares()
    {
        // Olive oil of 184-196, middle 190: 500 g and 500 g of coconut of 256 take up 223 g of KOH; 95 % of it as NaOH: 151.0 g.
        using var bench = SoapBench.New()
            .Soap("superfat: 5 %", "coconut, amount: 500 g", "olive, amount: 100 % of coconut", "water, amount: 30 % of oils",
            "soda, amount: by superfat");
        var batch = bench.Open().Batch;
        Assert.Equal(300m, batch.Lines[2].Mass.Grams);
        Assert.Equal(decimal.Round(223 * 0.95m / 56.105m * 39.997m, 10), decimal.Round(batch.Lines[3].Mass.Grams, 10));
    }

    [Fact]
    public void Lye_by_superfat_serves_oils_that_are_a_share_of_the_batch()
    {
        using var bench = SoapBench.New()
            .Soap("superfat: 5 %", "coconut, amount: 60 % of batch", "water, amount: 300 g", "soda, amount: by superfat");
        var (_, batch) = bench.Open();
        Assert.Equal(0.6m, decimal.Round(batch.Lines[0].Mass.Grams / batch.Total.Grams, 20));
        Assert.Equal(0.05m, decimal.Round(Superfat.Of(bench.Charge()).Middle, 20));
    }

    [Fact]
    public void Written_lye_gives_the_superfat_and_its_range()
    {
        // 1000 g of olive oil: 184, 190, 196 g of KOH are 131.173, 135.450, 139.728 g of NaOH; 130 g leave 0.89 %, 4.02 %, 6.96 %.
        using var bench = SoapBench.New().Soap("", "olive, amount: 1000 g", "soda, amount: 130 g");
        var superfat = Superfat.Of(bench.Charge());
        Assert.Equal([0.0089m, 0.0402m, 0.0696m],
            [decimal.Round(superfat.Least, 4), decimal.Round(superfat.Middle, 4), decimal.Round(superfat.Most, 4)]);
        Assert.Empty(Findings(bench));
    }

    [Fact]
    public void Lye_that_the_low_end_of_a_range_would_leave_over_must_not_stand()
    {
        // 131.173 g are the least that 1000 g of olive oil take up; 133 g leave 1.827 g over there, and nothing by the middle.
        using var bench = SoapBench.New().Soap("", "olive, amount: 1000 g", "soda, amount: 133 g");
        var finding = Assert.Single(Findings(bench));
        Assert.Equal(("lye.excess", Severity.Must), (finding.Rule, finding.Severity));
        Assert.Contains("may be more", finding.Message);
        Assert.Contains("1.8 g would be left over", finding.Message);
        // 1.827 g, rounded up; 184 / 190 is a superfat of 3.158 %.
        Assert.Contains("1.9 g less lye", finding.Fix);
        Assert.Contains("3.2 % or more", finding.Fix);
    }

    [Fact]
    public void Lye_beyond_the_middle_is_said_to_be_too_much()
    {
        using var bench = SoapBench.New().Soap("", "coconut, amount: 1000 g", "soda, amount: 200 g");
        var finding = Assert.Single(Findings(bench));
        Assert.Contains("17.5 g too much", finding.Message);
        Assert.DoesNotContain("certificate", finding.Fix);
    }

    [Fact]
    public void The_advice_of_the_finding_settles_it()
    {
        using var bench = SoapBench.New().Soap("", "olive, amount: 1000 g", "soda, amount: 131.1 g");
        Assert.Empty(Findings(bench));
        bench.Soap("superfat: 3.2 %", "olive, amount: 1000 g", "soda, amount: by superfat");
        Assert.Empty(Findings(bench));
    }

    [Fact]
    public void A_superfat_that_the_weighed_lye_does_not_give_is_noticed()
    {
        using var bench = SoapBench.New().Soap("superfat: 8 %", "coconut, amount: 1000 g", "soda, amount: 175.2 g");
        var finding = Assert.Single(Findings(bench));
        Assert.Equal("lye.superfat-differs", finding.Rule);
        Assert.Contains("leaves 4.0 %", finding.Message);
    }

    [Fact]
    public void A_certificate_goes_before_the_dictionary()
    {
        using var bench = SoapBench.New()
            .Write("materials/olive.yaml", "name: Olive oil\nkind: oil\ncontains: olive oil\nsaponification: 189-191 mg KOH/g\n")
            .Soap("superfat: 5 %", "olive, amount: 1 kg", "soda, amount: by superfat");
        Assert.Equal(new SaponificationValue(189, 191), bench.Charge().Fats[0].Value);
        Assert.True(bench.Charge().Fats[0].IsFromCertificate);
    }

    [Fact]
    public void A_lye_without_a_purity_counts_as_all_alkali_and_says_so()
    {
        using var bench = SoapBench.New()
            .Write("materials/soda.yaml", "name: Caustic soda\nkind: lye\ncontains: Sodium Hydroxide\n")
            .Soap("superfat: 5 %", "coconut, amount: 1 kg", "soda, amount: by superfat");
        Assert.Equal(Share.Whole, bench.Charge().Lyes[0].Purity);
        Assert.Equal(["lye.purity-unknown"], Findings(bench).Select(f => f.Rule));
    }

    [Fact]
    public void Lye_mixed_in_the_shop_and_oils_blended_there_are_opened_up()
    {
        // Half water, half soda: twice the mass of lye, and the same superfat. The blend is 3 parts coconut to 1 of castor.
        using var bench = SoapBench.New()
            .Write("materials/lye-water.yaml",
                "name: Lye water\nkind: lye\nmade from: [ { use: water, amount: 500 g }, { use: soda, amount: 500 g } ]\n")
            .Write("materials/blend.yaml",
                "name: Blend\nkind: oil\nmade from: [ { use: coconut, amount: 750 g }, { use: castor-oil, amount: 250 g } ]\n")
            .Soap("superfat: 6 %", "blend, amount: 1000 g", "lye-water, amount: by superfat");
        var demand = 750 * 256m + 250 * 181.5m;
        Assert.Equal(decimal.Round(2 * 0.94m * demand / 1000 / 56.105m * 39.997m, 10),
            decimal.Round(bench.Open().Batch.Lines[1].Mass.Grams, 10));
        Assert.Equal([750m, 250m], bench.Charge().Fats.Select(f => decimal.Round(f.Grams, 10)));
    }

    [Fact]
    public void Declared_as_charged_it_names_what_went_in()
    {
        using var bench = SoapBench.New()
            .Soap("superfat: 5 %\ndeclare as: charged", "coconut, amount: 700 g", "castor-oil, amount: 100 g", "water, amount: 240 g",
            "soda, amount: by superfat");
        Assert.Equal(["Cocos Nucifera (Coconut) Oil", "Water", "Sodium Hydroxide", "Ricinus Communis (Castor) Seed Oil"], Names(bench));
    }

    [Fact]
    public void Declared_as_formed_it_names_what_came_out()
    {
        // 700 g coconut of 256 and 100 g castor of 181.5 (176-187): about 693 g of cocoate, 240 g water, 105 g glycerin, 98 g castorate.
        using var bench = SoapBench.New()
            .Soap("superfat: 5 %\ndeclare as: formed", "coconut, amount: 700 g", "castor-oil, amount: 100 g", "water, amount: 240 g",
            "soda, amount: by superfat");
        var proof = Proof(bench);
        Assert.Equal(["Sodium Cocoate", "Water", "Glycerin", "Sodium Castorate", "Cocos Nucifera (Coconut) Oil",
            "Ricinus Communis (Castor) Seed Oil"],
            proof.Ingredients.Select(i => i.Name));
        Assert.True(proof.IsProved);
        Assert.All(proof.Ingredients, i => Assert.True(i.Low <= i.High));
        Assert.InRange(proof.Ingredients.Sum(i => i.Low), 0, 1);
        Assert.InRange(proof.Ingredients.Sum(i => i.High), 1, 2);
    }

    [Fact]
    public void Water_that_dries_off_comes_off_the_water_of_a_bar_declared_as_formed()
    {
        using var bench = SoapBench.New()
            .Soap("superfat: 0 %\ndeclare as: formed\nloss: 200 g water", "coconut, amount: 1000 g", "water, amount: 300 g",
            "soda, amount: by superfat");
        // 1042.4302 g soap, 140.0711 g glycerin, 100 g water in 1282.5012 g.
        var proof = Proof(bench);
        Assert.Equal([1042.4302m, 140.0711m, 100m], proof.Ingredients.Select(i => decimal.Round(i.High * 1282.5013m, 3)),
            (a, b) => Math.Abs(a - b) < 0.001m);
    }

    [Fact]
    public void Of_two_oils_the_greater_leaves_more_without_lye_however_much_is_left()
    {
        using var bench = SoapBench.New()
            .Soap("superfat: 6 %\ndeclare as: formed", "olive, amount: 500 g", "shea, amount: 450 g", "soda, amount: by superfat");
        var proof = Proof(bench);
        var olive = proof.Ingredients.Single(i => i.Name.StartsWith("Olea", StringComparison.Ordinal));
        var shea = proof.Ingredients.Single(i => i.Name.StartsWith("Butyro", StringComparison.Ordinal));
        Assert.True(shea.High > olive.Low);
        Assert.Equal(PairOrder.FirstForced, proof.Pair(proof.Ingredients.IndexOf(olive), proof.Ingredients.IndexOf(shea)));
    }

    [Fact]
    public void A_pair_of_soaps_that_the_ranges_leave_open_asks_for_the_certificates()
    {
        using var bench = SoapBench.New()
            .Soap("superfat: 6 %\ndeclare as: formed", "olive, amount: 500 g", "shea, amount: 500 g", "soda, amount: by superfat");
        var pair = Assert.Single(Proof(bench).Unproven);
        Assert.Equal(["Sodium Olivate", "Sodium Shea Butterate"], new[] { pair.First, pair.Second }.Order());
        Assert.Contains("certificate", pair.Ask.Sentence);
    }

    [Theory]
    [InlineData("superfat: 5", "oil", "not a superfat", "superfat: 5 %")]
    [InlineData("superfat: 100 %", "oil", "not a superfat", "superfat: 5 %")]
    [InlineData("declare as: made", "oil", "not a way to declare", "formed")]
    public void A_key_that_cannot_be_read_says_what_to_write(string keys, string _, string wrong, string write)
    {
        using var bench = SoapBench.New().Soap(keys, "coconut, amount: 1 kg", "soda, amount: 100 g");
        var problem = Assert.Throws<InputException>(() => bench.Open()).Problem;
        Assert.Equal(5, problem.Line);
        Assert.Contains(wrong, problem.Wrong);
        Assert.Contains(write, problem.Write);
    }

    [Theory]
    [InlineData("", "coconut, amount: 1 kg", "soda, amount: by superfat", "nothing says how much superfat")]
    [InlineData("superfat: 5 %", "water, amount: 1 kg", "soda, amount: by superfat", "No oil in the recipe")]
    [InlineData("superfat: 5 %", "coconut, amount: by superfat", "soda, amount: 100 g", "is no lye")]
    [InlineData("superfat: 5 %", "soda, amount: 500 g", "potash, amount: by superfat", "No oil in the recipe")]
    [InlineData("superfat: 5 %", "water, amount: 30 % of oils", "soda, amount: 100 g", "no material of kind oil")]
    public void Lye_that_cannot_be_measured_out_says_why(string keys, string first, string second, string wrong)
    {
        using var bench = SoapBench.New().Soap(keys, first, second);
        Assert.Contains(wrong, Assert.Throws<InputException>(() => bench.Open()).Problem.Wrong);
    }

    [Theory]
    [InlineData("superfat: 5 %", "no lye")]
    [InlineData("declare as: formed", "Nothing is formed")]
    public void Keys_of_soap_in_a_recipe_without_lye_are_refused_at_their_line(string keys, string wrong)
    {
        using var bench = SoapBench.New().Soap(keys, "coconut, amount: 1 kg");
        var problem = Assert.Throws<InputException>(() => (Proof(bench), Findings(bench))).Problem;
        Assert.Equal(5, problem.Line);
        Assert.Contains(wrong, problem.Wrong);
    }

    [Theory]
    [InlineData("kind: oil\ncontains: coconut oil\nsaponification: 256\n", "mg KOH/g")]
    [InlineData("kind: oil\ncontains: coconut oil\nsaponification: 2560 mg KOH/g\n", "not a saponification value")]
    [InlineData("kind: oil\ncontains: coconut oil\npurity: 99 %\n", "Only a lye")]
    [InlineData("kind: lye\ncontains: Sodium Hydroxide\npurity: 0 %\n", "not a purity")]
    [InlineData("kind: lye\ncontains: [ Water, Sodium Hydroxide ]\n", "does not say how strong")]
    [InlineData("kind: lye\ncontains: Citric Acid\n", "names no alkali")]
    [InlineData("kind: oil\ncontains: Avocado butter\n", "how much alkali it takes up")]
    [InlineData("kind: oil\ncontains: [ coconut oil, Tocopherol ]\n", "how much of it is Tocopherol")]
    [InlineData("kind: oil\ncontains: [ coconut oil, olive oil ]\n", "several fats")]
    public void A_material_that_cannot_be_counted_says_what_to_write(string material, string wrong)
    {
        using var bench = SoapBench.New().Write("materials/odd.yaml", $"name: Odd\n{material}")
            .Soap("", "olive, amount: 1 kg", "odd, amount: 100 g", "soda, amount: 100 g");
        var problem = Assert.Throws<InputException>(() => bench.Charge()).Problem;
        Assert.Equal("materials/odd.yaml", problem.File);
        Assert.Contains(wrong, problem.Wrong);
        Assert.NotEmpty(problem.Write);
    }

    [Fact]
    public void What_stands_by_in_an_oil_goes_through_unchanged()
    {
        // 1000 g of an oil with 0.2 % tocopherol: 998 g of oil take up lye.
        using var bench = SoapBench.New()
            .Write("materials/coconut.yaml",
                "name: Coconut oil\nkind: oil\ncontains: [ coconut oil, Tocopherol: 0.2 % ]\nsaponification: 256 mg KOH/g\n")
            .Write("materials/paraffin.yaml", "name: Paraffin oil\nkind: oil\ncontains: Mineral Oil\n")
            .Soap("superfat: 0 %", "coconut, amount: 1000 g", "paraffin, amount: 10 g", "soda, amount: by superfat");
        var made = bench.Made();
        Assert.Equal([2m, 10m], [made.Grams("Tocopherol"), made.Grams("Mineral Oil")]);
        Assert.Equal(182.5012m, decimal.Round(bench.Charge().Lyes[0].Grams, 4));
    }

    [Fact]
    public void A_soap_without_a_standard_name_is_not_declared_as_formed_until_the_maker_names_it()
    {
        using var bench = SoapBench.New()
            .Soap("superfat: 5 %\ndeclare as: formed", "coconut, amount: 900 g", "jojoba, amount: 100 g", "soda, amount: by superfat");
        var problem = Assert.Throws<InputException>(() => Proof(bench)).Problem;
        Assert.Contains("Sodium soap of Simmondsia Chinensis", problem.Wrong);
        bench.Write("materials/jojoba.yaml", "name: Jojoba oil\nkind: oil\ncontains: jojoba oil\nsoap name: Sodium Jojobate\n");
        Assert.Contains("Sodium Jojobate", Proof(bench).Ingredients.Select(i => i.Name));
    }

    private static IEnumerable<string> Names(BenchFolder bench) => Proof(bench).Ingredients.Select(i => i.Name);

    private static CompositionProof Proof(BenchFolder bench)
    {
        var (workshop, batch) = bench.Open();
        return BatchComposition.Prove(workshop, batch, IngredientDictionary.Shipped, Market.Us.On(new(2026, 11, 26)));
    }

    private static Finding[] Findings(BenchFolder bench)
    {
        var (workshop, batch) = bench.Open();
        return [.. SoapCheck.Find(workshop, batch)];
    }
}
