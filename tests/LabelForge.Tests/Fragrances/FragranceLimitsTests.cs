using CsCheck;
using LabelForge.Checks;
using LabelForge.Fragrances;
using LabelForge.Measures;
using LabelForge.Recipes;
using LabelForge.Tests.Declarations;

namespace LabelForge.Tests.Fragrances;

public class FragranceLimitsTests
{
    [Fact]
    public void Each_oil_is_held_against_its_own_certificate_and_the_parts_are_added()
    {
        // 1000 g bar: 20 g rose (limit 4 %): 2 % is half of it. 15 g moss (limit 2 %): 1.5 % is three quarters. Together 125 %.
        using var bench = Bench().Recipe("soap-bar", "", ("plain", "965 g"), ("rose", "20 g"), ("moss", "15 g"));
        var budget = Budget(bench);
        Assert.Equal([0.5m, 0.75m], budget.Oils.Select(o => o.PartOfLimit!.Value));
        Assert.Equal(1.25m, budget.Together);
        Assert.DoesNotContain(budget.Oils, o => o.IsOver);
        Assert.True(budget.IsOverTogether);
        // k * (20/0.04 + 15/0.02) = 965 + k * 35, so k = 965 / 1215 and all fragrance 35 k = 27.798... g.
        Assert.Equal(27.79m, budget.MostTogether!.Value.Grams);
        var finding = Assert.Single(FragranceCheck.Find(budget, bench.Workshop.Recipe("bar"), bench.Workshop.Markets.Every));
        Assert.Equal(("fragrance.over-together", Severity.Should), (finding.Rule, finding.Severity));
    }

    [Fact]
    public void The_most_of_an_oil_is_told_in_grams_and_in_drops()
    {
        // With 965 g + 15 g of everything else, m / (980 + m) = 4 %: m = 980 * 0.04 / 0.96 = 40.8333 g.
        // At 0.9 g/mL and 25 drops to the mL: 40.83 / 0.9 * 25 = 1134.16, so 1134 drops.
        using var bench = Bench().Recipe("soap-bar", "", ("plain", "965 g"), ("rose", "20 g"), ("moss", "15 g"));
        var line = Budget(bench).Lines[0];
        Assert.Equal((40.83m, 1134), (line.Most!.Value.Grams, line.MostDrops!.Value));
        // Moss: (965 + 20) * 0.02 / 0.98 = 20.102 g; its density is not known, so no drops.
        Assert.Equal((20.10m, (int?)null), (Budget(bench).Lines[1].Most!.Value.Grams, Budget(bench).Lines[1].MostDrops));
    }

    [Fact]
    public void A_blend_is_opened_up_and_the_oil_that_reaches_its_limit_first_binds()
    {
        // Half rose, half moss: 30 g in 1000 g is 1.5 % of each. Moss binds: b/2 = 0.02 (970 + b), b = 19.4 / 0.48 = 40.4166 g;
        // rose alone would allow b/2 = 0.04 (970 + b), b = 38.8 / 0.46 = 84.3 g.
        using var bench = Bench().Blend().Recipe("soap-bar", "", ("plain", "970 g"), ("blend", "30 g"));
        var budget = Budget(bench);
        Assert.Equal([("rose", 15m), ("moss", 15m)], budget.Oils.Select(o => (o.Material.Id, o.Mass.Grams)));
        Assert.Equal((40.41m, "moss"), (budget.Lines[0].Most!.Value.Grams, budget.Lines[0].Binds!.Id));
    }

    [Theory]
    [InlineData("50 % of blend", "50 % of blend", 15, 15)]
    [InlineData("75 % of batch", "25 % of batch", 22.5, 7.5)]
    public void A_blend_may_be_written_in_shares_of_itself(string first, string second, double rose, double moss)
    {
        using var bench = Bench()
            .Write("materials/blend.yaml",
                $"name: blend\nkind: fragrance\nmade from:\n  - {{ use: rose, amount: {first} }}\n  - {{ use: moss, amount: {second} }}\n")
            .Recipe("soap-bar", "", ("plain", "970 g"), ("blend", "30 g"));
        Assert.Equal([(decimal)rose, (decimal)moss], Budget(bench).Oils.Select(o => o.Mass.Grams));
    }

    [Fact]
    public void A_blend_whose_shares_do_not_come_to_the_whole_is_refused_at_its_line()
    {
        using var bench = Bench()
            .Write("materials/blend.yaml",
                "name: blend\nkind: fragrance\nmade from:\n  - { use: rose, amount: 50 % of blend }\n  - { use: moss, amount: 40 % "
                    + "of blend }\n")
            .Recipe("soap-bar", "", ("plain", "970 g"), ("blend", "30 g"));
        var problem = Assert.Throws<InputException>(() => Budget(bench)).Problem;
        Assert.Equal(("materials/blend.yaml", 4), (problem.File, problem.Line));
        Assert.Contains("90 %", problem.Wrong, StringComparison.Ordinal);
    }

    [Fact]
    public void An_oil_that_a_blend_brings_too_leaves_less_room()
    {
        // Moss 15 g in the blend and 10 g alone. Alone at most: 0.02 (1000 + m) = 15 + m, m = 5 / 0.98 = 5.102 g.
        using var bench = Bench().Blend().Recipe("soap-bar", "", ("plain", "970 g"), ("blend", "30 g"), ("moss", "10 g"));
        var budget = Budget(bench);
        Assert.True(budget.Oils.Single(o => o.Material.Id == "moss").IsOver);
        Assert.Equal(5.10m, budget.Lines.Single(l => l.Material.Id == "moss").Most!.Value.Grams);
        var finding = FragranceCheck.Find(budget, bench.Workshop.Recipe("bar"), bench.Workshop.Markets.Every).Single(f => f.Rule == "fragrance.over-limit");
        Assert.Equal(Severity.Must, finding.Severity);
    }

    [Fact]
    public void A_limit_that_is_not_written_down_is_asked_for_and_nothing_is_guessed()
    {
        using var bench = Bench().Recipe("lip-balm", "", ("plain", "990 g"), ("rose", "10 g"));
        var budget = Budget(bench);
        Assert.Null(budget.Together);
        Assert.Null(budget.Lines[0].Most);
        Assert.Equal("fragrance.limit-unknown", Assert.Single(FragranceCheck.Find(budget, bench.Workshop.Recipe("bar"), bench.Workshop.Markets.Every)).Rule);
    }

    [Fact]
    public void A_certificate_that_allows_nothing_is_over_with_any_amount()
    {
        using var bench = Bench().Material("forbidden", "fragrance", "Fragrance", "limits: { category 9: 0 % }\n")
            .Recipe("soap-bar", "", ("plain", "990 g"), ("forbidden", "1 g"));
        var budget = Budget(bench);
        Assert.True(budget.Oils[0].IsOver);
        Assert.Equal(0m, budget.Lines[0].Most!.Value.Grams);
    }

    [Fact]
    public void The_most_told_is_within_the_limit_and_a_tenth_of_a_gram_more_is_not() =>
        Gen.Select(Gen.Int[1, 200], Gen.Int[1, 60], Gen.Int[1, 60]).Sample((limit, rose, moss) =>
        {
            // limit in thousandths, grams as given.
            var share = limit / 1000m;
            using var bench = Bench()
                .Material("rose", "fragrance", "Fragrance", FormattableString.Invariant($"limits: {{ category 9: {share * 100} % }}\n"))
                .Recipe("soap-bar", "", ("plain", "1000 g"), ("rose", $"{rose} g"), ("moss", $"{moss} g"));
            var most = Budget(bench).Lines[0].Most!.Value.Grams;
            var rest = 1000m + moss;
            return most / (rest + most) <= share && (most + 0.1m) / (rest + most + 0.1m) > share;
        }, iter: 20, threads: 1);

    private static MakerBench Bench() => new MakerBench()
        .Material("plain", "base", "[ Glycerin: 60 %, Water: 40 % ]")
        .Material("rose", "fragrance", "Fragrance", "limits: { category 9: 4 % }\ndensity: 0.9 g/mL\ndrops per mL: 25\n")
        .Material("moss", "fragrance", "Fragrance", "limits: { category 9: 2 % }\n");

    private static FragranceBudget Budget(MakerBench bench)
    {
        var workshop = bench.Workshop;
        var recipe = workshop.Recipe("bar");
        return FragranceLimits.Of(LabelForge.Declarations.FinishedProduct.Of(workshop, BatchFormula.Of(workshop, recipe)),
            ProductKindOf.Recipe(recipe));
    }
}

file static class Blends
{
    public static MakerBench Blend(this MakerBench bench) =>
        bench.Write("materials/blend.yaml",
            "name: blend\nkind: fragrance\nmade from:\n  - { use: rose, amount: 10 g }\n  - { use: moss, amount: 10 g }\n");
}
