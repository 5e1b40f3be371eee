using LabelForge.Checks;
using LabelForge.Markets;
using LabelForge.Measures;
using LabelForge.Recipes;
using LabelForge.Tests.Checks;
using LabelForge.Tests.Declarations;

namespace LabelForge.Tests.Recipes;

/// <summary>What a scale can tell: a share is an interval, and what it leaves open is said.</summary>
public sealed class ScaleTests
{
    [Theory]
    [InlineData("0.2 g", "1 g", 0, 0.3)]
    [InlineData("27 g", "1 g", 27, 0.5)]
    [InlineData("27.4 g", "1 g", 27, 0.9)]
    [InlineData("27.5 g", "1 g", 28, 1)]
    [InlineData("100 g", "0.1 oz", 99.2233309375, 2.19414)]
    public void An_amount_is_shown_at_the_nearest_mark_and_may_be_off_by_half_a_step_beyond_it(string amount, string step, decimal shown,
        double off)
    {
        using var bench = Bench($"scale: {step}\n", amount);
        var batch = BatchFormula.Of(bench.Workshop, bench.Workshop.Recipe("bar"));
        var reading = ScaleReading.Of(batch, bench.Workshop.Business.Scale!.Value)[1];

        Assert.Equal(shown, reading.Shown.Grams);
        Assert.Equal(off, (double)(reading.AsMuchAs * reading.Line.Mass.Grams), 1e-4);
        Assert.InRange(reading.Line.Mass.Grams, reading.Low.Grams, reading.High.Grams);
    }

    [Fact]
    public void What_the_scale_cannot_weigh_is_told_with_a_way_round()
    {
        using var bench = Bench("scale: 1 g\n", "0.2 g");
        var finding = Assert.Single(bench.Declare(Market.Us).Findings,
            f => f.Rule == "scale.too-coarse" && f.Message.StartsWith("0.2 g of mica", StringComparison.Ordinal));

        Assert.Equal(Severity.Should, finding.Severity);
        Assert.Contains("teaspoons", finding.Fix, StringComparison.Ordinal);
        Assert.Contains("use a scale that shows 0.001 g", finding.Fix, StringComparison.Ordinal);
    }

    [Fact]
    public void A_premix_in_the_oil_brings_both_in_at_once()
    {
        using var bench = Bench("scale: 1 g\n", "10 g", oil: "60 g");
        var finding = Assert.Single(bench.Declare(Market.Us).Findings, f => f.Rule == "scale.too-coarse");

        // 50 g of the powder is the least that 1 g steps weigh to 2 %; 300 g of oil keep it at 10 to 60.
        Assert.Contains("stir 50 g of it into 300 g of oil and take 70 g of that in place of both", finding.Fix, StringComparison.Ordinal);
        Assert.Contains("make 5 batches at once", finding.Fix, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("", "0.2 g")]
    [InlineData("scale: 0.1 g\n", "20 g")]
    public void Nothing_is_said_where_no_scale_is_named_or_it_is_fine_enough(string scale, string mica)
    {
        using var bench = Bench(scale, mica);
        Assert.DoesNotContain(bench.Declare(Market.Us).Findings, f => f.Rule.StartsWith("scale.", StringComparison.Ordinal));
    }

    [Fact]
    public void Two_amounts_nearer_than_the_scale_tells_leave_their_order_open()
    {
        using var bench = new MakerBench().Write("workshop.yaml", Workshop("scale: 5 g\n"))
            .Material("base", "base", "Glycerin").Material("oil", "oil", "Castor Oil").Material("butter", "oil", "Shea Butter")
            .Recipe("soap-bar", "", ("base", "900 g"), ("oil", "301 g"), ("butter", "299 g"));

        var finding = Assert.Single(bench.Declare(Market.Us).Findings, f => f.Rule == "scale.order-open");
        Assert.StartsWith("Ricinus Communis (Castor) Seed Oil and Butyrospermum Parkii (Shea) Butter", finding.Message,
            StringComparison.Ordinal);
    }

    // Glycerin is 300 to 400 g of the base, the oil 299 g: by figures alone 1 g apart, and each weighing is 2.5 g off.
    [Theory]
    [InlineData("scale: 5 g\n", "299 g", true)]
    [InlineData("scale: 0.1 g\n", "299 g", false)]
    [InlineData("scale: 5 g\n", "280 g", false)]
    public void An_order_that_ranges_prove_is_open_where_the_weighings_may_turn_it(string scale, string oil, bool open)
    {
        using var bench = new MakerBench().Write("workshop.yaml", Workshop(scale))
            .Material("base", "base", "\n  - Water: 60-70 %\n  - Glycerin: 30-40 %").Material("oil", "oil", "Castor Oil")
            .Recipe("soap-bar", "", ("base", "1000 g"), ("oil", oil));

        Assert.Equal(open,
            bench.Declare(Market.Us).Findings
                .Any(f => f.Rule == "scale.order-open" && f.Message.Contains("Castor", StringComparison.Ordinal)));
    }

    // 0.0099 g of linalool in 100.2 g is below 0.01 % of a rinse-off product; a scale of 1 g may give up to half a gram more of the scent.
    [Theory]
    [InlineData("scale: 1 g\n", true)]
    [InlineData("scale: 0.001 g\n", false)]
    public void An_allergen_below_its_threshold_is_open_where_the_weighing_may_bring_it_over(string scale, bool open)
    {
        using var bench = new MakerBench().Write("workshop.yaml", Workshop(scale))
            .Material("base", "base", "Glycerin").Material("scent", "fragrance", "Fragrance", "allergens: { Linalool: 0.99 % }\n")
            .Recipe("soap-bar", "", ("base", "99 g"), ("scent", "1 g"));
        Assert.Equal(open, bench.Declare(Market.Eu).Findings.Any(f => f.Rule == "scale.allergen-open"));
    }

    [Theory]
    [InlineData("scale: 1 g\n", true)]
    [InlineData("scale: 0.001 g\n", false)]
    public void A_preservative_below_its_limit_is_open_where_the_weighing_may_bring_it_over(string scale, bool open)
    {
        using var recipe = new CheckedRecipe { Kind = "body-lotion" };
        recipe.File("workshop.yaml", Workshop(scale)).Add(99.1m, "Water").Add(0.9m, "Phenoxyethanol");
        Assert.Equal(open,
            recipe.In(Market.Eu).Findings
                .Any(f => f.Rule == "scale.limit-open" && f.Message.Contains("Phenoxyethanol", StringComparison.Ordinal)));
    }

    // A list that stands on guesses says so as a whole, once.
    [Fact]
    public void A_list_that_rests_on_guesses_says_so_once()
    {
        using var bench = new MakerBench().Write("workshop.yaml", Workshop(""))
            .Material("base", "base", "\n  - Water\n  - Example Ferment Filtrate\n  - Sodium Stearate\n  - Sorbitol")
            .Material("oil", "oil", "Castor Oil")
            .Recipe("soap-bar", "", ("base", "900 g"), ("oil", "100 g"));
        var declaration = bench.Declare(Market.Us);
        var guesses = declaration.Ingredients.Count(i => i.Placed == LabelForge.Composition.Placed.Guess);
        Assert.True(guesses > 0);
        Assert.StartsWith($"{guesses} of the 5 places", Assert.Single(declaration.Findings, f => f.Rule == "ingredients.guessed").Message,
            StringComparison.Ordinal);
        using var known = new MakerBench().Write("workshop.yaml", Workshop("")).Material("base", "base", "Glycerin")
            .Material("oil", "oil", "Castor Oil")
            .Recipe("soap-bar", "", ("base", "900 g"), ("oil", "100 g"));
        Assert.DoesNotContain(known.Declare(Market.Us).Findings, f => f.Rule == "ingredients.guessed");
    }

    [Fact]
    public void Two_of_one_material_never_turn_with_its_weight()
    {
        using var bench = new MakerBench().Write("workshop.yaml", Workshop("scale: 5 g\n"))
            .Material("base", "base", "\n  - Water: 50.1 %\n  - Glycerin: 49.9 %").Recipe("soap-bar", "", ("base", "100 g"));
        Assert.DoesNotContain(bench.Declare(Market.Us).Findings, f => f.Rule == "scale.order-open");
    }

    [Theory]
    [InlineData("scale: heavy")]
    [InlineData("scale: 5 mL")]
    [InlineData("scale: 0 g")]
    public void A_scale_is_named_by_what_its_display_moves_by(string scale)
    {
        using var bench = new MakerBench().Write("workshop.yaml", Workshop(scale + "\n")).Material("base", "base", "Glycerin")
            .Recipe("soap-bar", "", ("base", "900 g"));
        Assert.Contains("scale", Assert.Throws<InputException>(() => bench.Workshop).Problem.Wrong, StringComparison.Ordinal);
    }

    private static MakerBench Bench(string scale, string mica, string? oil = null)
    {
        var bench = new MakerBench().Write("workshop.yaml", Workshop(scale))
            .Material("base", "base", "Glycerin").Material("mica", "colourant", "Mica").Material("oil", "oil", "Castor Oil");
        return oil is null
            ? bench.Recipe("soap-bar", "", ("base", "900 g"), ("mica", mica))
            : bench.Recipe("soap-bar", "", ("base", "900 g"), ("mica", mica), ("oil", oil));
    }

    private static string Workshop(string scale) =>
        $"business: Test Bench\nplace: {{ street: 1 Example Lane, city: Fairport, region: ME, postcode: \"00000\", country: US "
            + $"}}\ncontact: {{ phone: \"555-0100\" }}\n{scale}";
}
