using LabelForge.Checks;
using LabelForge.Composition;
using LabelForge.Declarations;
using LabelForge.Markets;

namespace LabelForge.Tests.Declarations;

public class AllergenNamingTests
{
    private const string Base = "[ Glycerin: 60 %, Water: 40 % ]";

    [Theory]
    [InlineData("4", "2026-11-25", "Ingredients: Glycerin, Aqua, Parfum.")]               // 4 % of 0.25 % = 0.01 %: does not exceed it
    [InlineData("4.01", "2026-11-25", "Ingredients: Glycerin, Aqua, Parfum, Linalool.")]  // 0.010025 %
    [InlineData("0-4.01", "2026-11-25", "Ingredients: Glycerin, Aqua, Parfum, Linalool.")] // the upper bound decides
    public void An_allergen_of_a_bar_is_named_above_a_hundredth_of_a_percent(string percent, string on, string statement)
    {
        // 0.25 g of fragrance in 100 g.
        using var bench = new MakerBench()
            .Material("plain", "base", Base)
            .Material("scent", "fragrance", "Fragrance", $"allergens: {{ Linalool: {percent} % }}\n")
            .Recipe("soap-bar", "", ("plain", "99.75 g"), ("scent", "0.25 g"));
        Assert.Equal(statement, bench.Declare(Market.Eu, on).Statement);
        Assert.Equal("Ingredients: Glycerin, Water, Fragrance.", bench.Declare(Market.Us, on).Statement);
    }

    [Fact]
    public void Small_shares_from_several_sources_add_up_under_one_name()
    {
        // Leave-on, 100 g: rose 0.02 g with 2 % Citronellol = 0.0004 %; geranium oil 0.01 g with 3 to 8 % = 0.0003 to 0.0008 %.
        // Together 0.0007 to 0.0012 %: above 0.001 %, though neither is alone. d-Limonene and Limonene are one: 0.0006 + 0.0005.
        using var bench = new MakerBench()
            .Material("plain", "base", Base)
            .Material("rose", "fragrance", "Fragrance", "allergens: { Citronellol: 2 %, d-Limonene: 3 % }\n")
            .Material("geranium", "oil", "Pelargonium Graveolens Oil", "allergens: { Citronellol: 3-8 %, Limonene: 5 % }\n")
            .Recipe("body-butter", "on the market since: 2025-05-01\n", ("plain", "99.97 g"), ("rose", "0.02 g"), ("geranium", "0.01 g"));
        var declaration = bench.Declare(Market.Eu);
        Assert.Equal("Ingredients: Glycerin, Aqua, Parfum, Pelargonium Graveolens Oil, Citronellol, Limonene.", declaration.Statement);
        var citronellol = declaration.Ingredients.Single(i => i.Name == "Citronellol");
        Assert.Equal((0.0007m, 0.0012m, Part.Minor, true), (citronellol.Low, citronellol.High, citronellol.Part, citronellol.IsAllergen));
        var why = declaration.Findings.Single(f => f.Message.StartsWith("Citronellol", StringComparison.Ordinal));
        Assert.Equal(("allergen.named-for-its-bound", Severity.Note), (why.Rule, why.Severity));
        Assert.Contains("geranium 0.0003 % to 0.0008 %, rose 0.0004 %", why.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Geranial_and_neral_of_one_certificate_are_citral_together()
    {
        // 1 g of lemongrass in 1000 g: 7 % + 5 % of 0.1 % = 0.012 %, above 0.01 %.
        using var bench = new MakerBench()
            .Material("plain", "base", Base)
            .Material("lemon", "fragrance", "Fragrance", "allergens: { Geranial: 7 %, Neral: 5 % }\n")
            .Recipe("soap-bar", "", ("plain", "999 g"), ("lemon", "1 g"));
        var declaration = bench.Declare(Market.Uk);
        Assert.EndsWith("Parfum, Citral.", declaration.Statement, StringComparison.Ordinal);
        Assert.Equal(0.012m, declaration.Ingredients.Single(i => i.Name == "Citral").High);
    }

    [Theory]
    [InlineData("2026-07-31", "Ingredients: Glycerin, Aqua, Lavandula Angustifolia Oil, Linalool.")]
    [InlineData("2026-08-01", "Ingredients: Glycerin, Aqua, Lavandula Oil/Extract, Linalool, Linalyl Acetate.")]
    public void Old_and_new_law_name_a_lavender_bar_each_in_its_way(string on, string statement)
    {
        // 2 % of lavender oil: Linalool 35 % of it = 0.7 %, Linalyl Acetate 30 % = 0.6 %. The oil is itself an entry of the new list.
        using var bench = new MakerBench()
            .Material("plain", "base", Base)
            .Material("lavender", "fragrance", "Lavender oil", "allergens: { Linalool: 35 %, Linalyl Acetate: 30 % }\n")
            .Recipe("soap-bar", "", ("plain", "98 g"), ("lavender", "2 g"));
        Assert.Equal(statement, bench.Declare(Market.Eu, on).Statement);
    }

    [Fact]
    public void An_allergen_that_is_an_ingredient_of_its_own_is_named_once_and_its_certificate_adds_to_the_sum()
    {
        // Benzyl alcohol preserves the base (1 % of 99 g) and stands in the fragrance (10 % of 1 g) too.
        using var bench = new MakerBench()
            .Material("plain", "base", "[ Glycerin: 60 %, Water: 39 %, Benzyl Alcohol: 1 % ]")
            .Material("scent", "fragrance", "Fragrance", "allergens: { Benzyl Alcohol: 10 % }\n")
            .Recipe("soap-bar", "", ("plain", "99 g"), ("scent", "1 g"));
        var declaration = bench.Declare(Market.Eu);
        Assert.Single(declaration.Ingredients, i => i.Name == "Benzyl Alcohol");
        Assert.Contains("1.09 %", declaration.Findings.Single(f => f.Rule == "allergen.named").Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_constituent_without_a_figure_is_named_for_the_most_that_the_list_allows()
    {
        // The base's label list puts Limonene last of three after a 60 % and a 30 % line: at most 10 %, so it is named.
        using var bench = new MakerBench()
            .Material("cleaner", "base", "[ Glycerin: 60 %, Water: 30 %, Limonene ]")
            .Recipe("soap-bar", "", ("cleaner", "100 g"));
        var declaration = bench.Declare(Market.Eu);
        Assert.Equal("Ingredients: Glycerin, Aqua, Limonene.", declaration.Statement);
        Assert.Equal(10m, declaration.Ingredients[2].High);
    }

    [Fact]
    public void A_constituent_and_a_certificate_of_one_material_are_one_amount()
    {
        using var bench = new MakerBench()
            .Material("plain", "base", Base)
            .Material("scent", "fragrance", "[ Fragrance, Limonene: 1-9 % ]", "allergens: { Limonene: 4 % }\n")
            .Recipe("soap-bar", "", ("plain", "99 g"), ("scent", "1 g"));
        var limonene = bench.Declare(Market.Eu).Ingredients.Single(i => i.Name == "Limonene");
        Assert.Equal((0.04m, 0.04m), (limonene.Low, limonene.High));
    }

    [Fact]
    public void In_a_perfume_an_allergen_over_one_percent_takes_its_place_by_weight_and_doubts_are_told()
    {
        // 20 g of perfume in 100 g, Limonene 30 to 60 % of it: 6 to 12 %, against 8 % of castor oil: not settled.
        using var bench = new MakerBench()
            .Material("carrier", "oil", "Caprylic/Capric Triglyceride")
            .Material("castor", "oil", "Castor Oil")
            .Material("scent", "fragrance", "Fragrance", "allergens: { Limonene: 30-60 % }\n")
            .Recipe("perfume-oil", "", ("carrier", "72 g"), ("castor", "8 g"), ("scent", "20 g"));
        var declaration = bench.Declare(Market.Eu);
        Assert.Equal("Ingredients: Caprylic/Capric Triglyceride, Parfum, Limonene, Ricinus Communis Seed Oil.", declaration.Statement);
        Assert.Equal([("Limonene", "Ricinus Communis Seed Oil")], declaration.Unsettled.Select(u => (u.First, u.Second)));
        Assert.False(declaration.IsProved);
    }

    [Fact]
    public void A_certificates_name_that_nothing_knows_is_told_and_not_named()
    {
        using var bench = new MakerBench()
            .Material("plain", "base", Base)
            .Material("scent", "fragrance", "Fragrance", "allergens: { Linalol: 4 % }\n")
            .Recipe("soap-bar", "", ("plain", "99 g"), ("scent", "1 g"));
        var declaration = bench.Declare(Market.Eu);
        Assert.EndsWith("Parfum.", declaration.Statement, StringComparison.Ordinal);
        Assert.Equal(("allergen.name-unknown", Severity.Should),
            (declaration.Findings.Single().Rule, declaration.Findings.Single().Severity));
    }
}
