using LabelForge.Declarations;
using LabelForge.Markets;
using LabelForge.Measures;
using LabelForge.Recipes;

namespace LabelForge.Tests.Declarations;

public class AssortmentTests
{
    private const string Scents = """
        variants:
          - name: Rose
            item: "12"
            replace: { plain-scent: rose-scent }
          - name: Moss
            item: "13"
            replace: { plain-scent: moss-scent }

        """;

    private const string Shades = """
        variants:
          - { name: Red, replace: { white: red } }
          - { name: Pearl, add: [ { use: mica, amount: 1 g } ] }

        """;

    [Fact]
    public void Scents_that_declare_the_same_share_one_list_in_the_united_states_and_not_where_allergens_are_named()
    {
        using var bench = Scented();
        var american = Declare(bench, Market.Us)!;
        Assert.Equal(["Rose", "Moss"], american.Variants.Select(v => v.Variant.Name));
        Assert.Equal("Ingredients: Ricinus Communis (Castor) Seed Oil, Fragrance.", american.Common.Declaration!.Statement);
        var european = Declare(bench, Market.Eu)!;
        Assert.Equal("Ingredients: Ricinus Communis Seed Oil, Parfum, Citronellol.", european.Variants[0].Declaration.Statement);
        Assert.Equal("Ingredients: Ricinus Communis Seed Oil, Parfum, Evernia Prunastri Extract.",
            european.Variants[1].Declaration.Statement);
        Assert.Null(european.Common.Declaration);
        Assert.Contains("Only Rose has Citronellol. Only Moss has Evernia Prunastri Extract.", european.Common.Why,
            StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("tinted-lip-balm", "us",
        "Ingredients: Ricinus Communis (Castor) Seed Oil, May contain: Iron Oxides, Titanium Dioxide, Mica.")]
    [InlineData("tinted-lip-balm", "eu", "Ingredients: Ricinus Communis Seed Oil, [+/- CI 77491, CI 77891, CI 77019].")]
    [InlineData("tinted-lip-balm", "ca", "Ingredients/Ingrédients: Ricinus Communis Seed Oil, [+/- CI 77491, CI 77891, CI 77019].")]
    [InlineData("soap-bar", "us", null)]
    [InlineData("soap-bar", "eu", null)]
    public void Makeup_that_differs_in_colour_only_shares_one_list_and_soap_does_not(string product, string market, string? statement)
    {
        using var bench = new MakerBench()
            .Material("oil", "oil", "Castor Oil")
            .Material("white", "colourant", "Titanium Dioxide")
            .Material("red", "colourant", "CI 77491")
            .Material("mica", "colourant", "Mica")
            .Recipe(product, Shades, ("oil", "97 g"), ("white", "3 g"));
        var common = Declare(bench, Market.Named(market))!.Common;
        Assert.Equal(statement, common.Declaration?.Statement);
        Assert.NotEmpty(common.Why);
        Assert.NotEmpty(common.Source);
    }

    [Fact]
    public void Variants_that_declare_the_same_share_a_list_with_the_widest_figures()
    {
        // 100 g of oil and 2 g of scent; more: 4 g more of the scent, so 2/102 and 6/106.
        using var bench = Scented(more: "variants: [ { name: Mild }, { name: Strong, add: [ { use: rose-scent, amount: 4 g } ] } ]\n");
        var common = Declare(bench, Market.Us)!.Common;
        Assert.Contains("one ingredient list serves all", common.Why, StringComparison.Ordinal);
        var scent = common.Declaration!.Ingredients.Single(i => i.Name == "Fragrance");
        Assert.Equal((2 / 1.02m, 6 / 1.06m), (Math.Round(scent.Low, 20), Math.Round(scent.High, 20)), Near);
        Assert.Equal((2 / 1.02m + 6 / 1.06m) / 2, scent.Estimate, 20);
    }

    private static readonly IEqualityComparer<(decimal,
        decimal)> Near = EqualityComparer<(decimal, decimal)>.Create((a, b) => Math.Abs(a.Item1 - b.Item1) < 1e-18m
            && Math.Abs(a.Item2 - b.Item2) < 1e-18m);

    [Fact]
    public void What_can_exceed_one_percent_in_one_variant_stands_among_the_main_ingredients_of_all()
    {
        using var bench = Scented("0.5 g",
            more: "variants: [ { name: Mild }, { name: Strong, add: [ { use: rose-scent, amount: 4 g } ] } ]\n");
        Assert.Equal(LabelForge.Composition.Part.Main,
            Declare(bench, Market.Us)!.Common.Declaration!.Ingredients.Single(i => i.Name == "Fragrance").Part);
    }

    [Fact]
    public void Variants_of_the_same_ingredients_in_another_order_need_a_list_each()
    {
        using var bench =
            Scented(
                more: "variants: [ { name: One, add: [ { use: shea, amount: 30 g }, { use: cocoa, amount: 20 g } ] }, { name: Two, add: [ "
                    + "{ use: shea, amount: 20 g }, { use: cocoa, amount: 30 g } ] } ]\n")
            .Material("shea", "oil", "Shea Butter").Material("cocoa", "oil", "Cocoa Butter");
        var common = Declare(bench, Market.Us)!.Common;
        Assert.Null(common.Declaration);
        Assert.Equal(
            "One and Two differ in more than colour, so each needs its own list. They have the same ingredients in another order.",
            common.Why);
    }

    [Fact]
    public void Variants_of_which_one_alone_has_more_say_which()
    {
        using var bench = Scented(more: "variants: [ { name: One }, { name: Two, add: [ { use: shea, amount: 20 g } ] } ]\n")
            .Material("shea", "oil", "Shea Butter");
        Assert.Equal(
            "One and Two differ in more than colour, so each needs its own list. Only Two has Butyrospermum Parkii (Shea) Butter.",
            Declare(bench, Market.Us)!.Common.Why);
    }

    [Fact]
    public void A_replacement_takes_the_amount_and_what_was_a_share_of_the_old_is_a_share_of_the_new()
    {
        // 100 g oil, scent 2 % of oil = 2 g, white 10 % of scent = 0.2 g; Rose: the same with rose-scent.
        using var bench = Scented("2 % of oil", ("white", "10 % of plain-scent"));
        var recipe = bench.Workshop.Recipe("bar").Variant("rose");
        var lines = BatchFormula.Of(bench.Workshop, recipe).Lines;
        Assert.Equal([("oil", 100m), ("rose-scent", 2m), ("white", 0.2m)], lines.Select(l => (l.Material.Id, l.Mass.Grams)));
        Assert.Equal(("Rose", "12"), (recipe.Name, recipe.Item));
    }

    [Fact]
    public void A_variant_keeps_the_day_it_came_on_the_market()
    {
        using var bench =
            Scented(
                more: "variants:\n  - { name: New, on the market since: 2026-09-01, leave out: white }\n  - { name: Old, leave out: "
                    + "white, add: [ { use: red, amount: 1 g } ] }\non the market since: 2024-01-01\n", extra: [("white", "1 g")]);
        var recipe = bench.Workshop.Recipe("bar");
        Assert.Equal(new DateOnly(2026, 9, 1), recipe.Variant("New").OnMarketSince);
        Assert.Equal(new DateOnly(2024, 1, 1), recipe.Variant("Old").OnMarketSince);
    }

    [Theory]
    [InlineData("  - { name: A, replace: { plain-sent: rose-scent } }", 8, "\"plain-scent\"")]
    [InlineData("  - { name: A, leave out: wax }", 8, "It uses: oil, plain-scent")]
    [InlineData("  - { replace: { plain-scent: rose-scent } }", 8, "name")]
    [InlineData("  - { name: A, replace: { plain-scent: rose-scent } }\n  - { name: a, replace: { plain-scent: moss-scent } }", 9,
        "its own")]
    [InlineData("  - { name: A, item: \"1\", replace: { plain-scent: rose-scent } }\n  - { name: B, item: \"1\", replace: { plain-scent: "
        + "moss-scent } }", 9, "its own")]
    [InlineData("  - Rose", 8, "Write")]
    [InlineData("  - { name: A, leave out: [ oil, plain-scent ] }", 8, "Leave out less")]
    public void A_variant_that_cannot_be_read_is_refused_at_its_line(string variants, int line, string write)
    {
        using var bench = Scented(more: $"variants:\n{variants}\n");
        var problem = Assert.Throws<InputException>(() => bench.Workshop.Recipe("bar")).Problem;
        Assert.Equal(("recipes/bar.yaml", line + 1), (problem.File, problem.Line));
        Assert.Contains(write, problem.Write, StringComparison.Ordinal);
    }

    [Fact]
    public void A_variant_of_a_name_alone_is_the_recipe_as_it_stands()
    {
        using var bench = Scented(more: "variants: [ { name: Plain } ]\n");
        var recipe = bench.Workshop.Recipe("bar");
        Assert.Equal(recipe.Materials, recipe.Variant("plain").Materials);
    }

    [Fact]
    public void A_variant_that_is_not_there_is_refused_with_the_names_of_those_that_are()
    {
        using var bench = Scented();
        Assert.Contains("Rose, Moss", Assert.Throws<InputException>(() => bench.Workshop.Recipe("bar").Variant("Lily")).Problem.Write,
            StringComparison.Ordinal);
    }

    [Fact]
    public void A_recipe_without_variants_makes_no_assortment()
    {
        using var bench = Scented(more: "");
        Assert.Null(Declare(bench, Market.Us));
    }

    private static Assortment? Declare(MakerBench bench, Market market)
    {
        var recipe = bench.Workshop.Recipe("bar");
        return Assortment.Of(bench.Workshop, recipe, ProductKindOf.Recipe(recipe), market, new DateOnly(2026, 11, 25));
    }

    private static MakerBench Scented(string amount = "2 g", (string, string)? extraUse = null, string more = Scents,
        params (string, string)[] extra) => new MakerBench()
        .Material("oil", "oil", "Castor Oil")
        .Material("white", "colourant", "Titanium Dioxide")
        .Material("red", "colourant", "CI 77491")
        .Material("plain-scent", "fragrance", "Fragrance")
        .Material("rose-scent", "fragrance", "Fragrance", "allergens: { Citronellol: 5 % }\n")
        .Material("moss-scent", "fragrance", "Fragrance", "allergens: { oakmoss: 2 % }\n")
        .Recipe("soap-bar", more, [("oil", "100 g"), ("plain-scent", amount), .. extraUse is { } use ? new[] { use } : [], .. extra]);
}
