using LabelForge.Checks;
using LabelForge.Composition;
using LabelForge.Declarations;
using LabelForge.Markets;
using LabelForge.Measures;

namespace LabelForge.Tests.Declarations;

public class MarketDeclarationTests
{
    // Worked by hand. 1000 g: 600 g base (Glycerin 50, Water 30, Sodium Stearate 19.9, Benzyl Alcohol 0.1), 350 g coconut oil, 30 g
    // titanium dioxide, 12 g fragrance (Linalool 5 %, Citral 0.5 %), 8 g vitamin E.
    //   Coconut oil 35 %; Glycerin 30 %; Water 18 %; Sodium Stearate 11.94 %; CI 77891 3 %; Fragrance 1.2 %;
    //   Tocopheryl Acetate 0.8 %; Benzyl Alcohol 0.06 %; Linalool 0.06 %; Citral 0.006 %.
    // Over 1 %, descending: coconut oil, glycerin, water, stearate, fragrance. The colour goes last though it is 3 %.
    // Rinse-off threshold 0.01 %: Linalool is named, Citral is not. Leave-on threshold 0.001 %: both are.
    [Theory]
    [InlineData("us", "soap-bar",
        "Ingredients: Cocos Nucifera (Coconut) Oil, Glycerin, Water, Sodium Stearate, Fragrance, Tocopheryl Acetate, Benzyl Alcohol, "
            + "Titanium Dioxide.")]
    [InlineData("eu", "soap-bar",
        "Ingredients: Cocos Nucifera Oil, Glycerin, Aqua, Sodium Stearate, Parfum, Tocopheryl Acetate, Benzyl Alcohol, "
            + "Linalool, CI 77891.")]
    [InlineData("eu", "body-butter",
        "Ingredients: Cocos Nucifera Oil, Glycerin, Aqua, Sodium Stearate, Parfum, Tocopheryl Acetate, Benzyl Alcohol, Linalool, "
            + "Citral, CI 77891.")]
    [InlineData("uk", "soap-bar",
        "Ingredients: Cocos Nucifera Oil, Glycerin, Aqua, Sodium Stearate, Parfum, Tocopheryl Acetate, Benzyl Alcohol, "
            + "Linalool, CI 77891.")]
    [InlineData("ca", "soap-bar",
        "Ingredients/Ingrédients: Cocos Nucifera Oil, Glycerin, Aqua/Water/Eau, Sodium Stearate, Parfum, Tocopheryl Acetate, Benzyl "
            + "Alcohol, Linalool, CI 77891.")]
    public void One_bar_is_declared_as_each_market_words_it(string market, string product, string statement)
    {
        using var bench = Bar(product);
        var declaration = bench.Declare(Market.Named(market));
        Assert.Equal(statement, declaration.Statement);
        Assert.True(declaration.IsProved);
    }

    [Fact]
    public void One_label_for_several_markets_gives_both_names()
    {
        using var bench = Bar("soap-bar");
        Assert.Equal(
            "Ingredients: Cocos Nucifera (Coconut) Oil, Glycerin, Aqua (Water), Sodium Stearate, Parfum (Fragrance), Tocopheryl Acetate, "
                + "Benzyl Alcohol, Linalool, CI 77891 (Titanium Dioxide).",
            bench.Declare(Market.Us, style: NameStyle.Dual).Statement);
    }

    [Fact]
    public void One_label_for_several_markets_names_what_the_strictest_wants_named()
    {
        // Linalyl Acetate is on the extended list only: the EU and Canada want it in 2026, the UK and the US do not.
        using var bench = new MakerBench()
            .Material("plain", "base", "[ Glycerin: 60 %, Water: 40 % ]")
            .Material("scent", "fragrance", "Fragrance", "allergens: { Linalyl Acetate: 10 % }\n")
            .Recipe("soap-bar", "", ("plain", "99 g"), ("scent", "1 g"));
        Assert.DoesNotContain("Linalyl", bench.Declare(Market.Uk).Statement, StringComparison.Ordinal);
        Assert.EndsWith("Parfum (Fragrance), Linalyl Acetate.", bench.Declare(Market.Uk, style: NameStyle.Dual).Statement,
            StringComparison.Ordinal);
    }

    [Fact]
    public void And_other_ingredients_is_never_written()
    {
        using var bench = Bar("soap-bar");
        foreach (var market in MarketBook.Shipped.All)
            Assert.DoesNotContain("other ingredients", bench.Declare(market).Statement, StringComparison.OrdinalIgnoreCase);
    }

    [Theory]
    [InlineData("eu", "Zinc Oxide", "CI 77947 [nano]")]
    [InlineData("uk", "Zinc Oxide", "CI 77947 [nano]")]
    [InlineData("us", "Zinc Oxide", "Zinc Oxide")]
    [InlineData("ca", "Zinc Oxide", "CI 77947")]
    public void A_nanomaterial_is_marked_where_the_law_asks_for_it(string market, string substance, string name)
    {
        using var bench = new MakerBench()
            .Material("oil", "oil", "Castor Oil")
            .Material("zinc", "additive", $"{substance} [nano]")
            .Recipe("body-butter", "", ("oil", "95 g"), ("zinc", "5 g"));
        Assert.Equal(name, bench.Declare(Market.Named(market)).Ingredients[1].Name);
        Assert.Empty(bench.Declare(Market.Named(market)).Findings);
    }

    [Fact]
    public void The_same_substance_in_both_sizes_stands_twice_in_europe_and_once_in_the_united_states()
    {
        using var bench = new MakerBench()
            .Material("oil", "oil", "Castor Oil")
            .Material("zinc", "additive", "[ Zinc Oxide (nano): 60 %, Zinc Oxide: 40 % ]")
            .Recipe("body-butter", "", ("oil", "95 g"), ("zinc", "5 g"));
        Assert.Equal(["CI 77947 [nano]", "CI 77947"], bench.Declare(Market.Eu).Ingredients.Skip(1).Select(i => i.Name));
        var american = bench.Declare(Market.Us).Ingredients;
        Assert.Equal(("Zinc Oxide", 5m, 5m, 5m), (american[1].Name, american[1].Low, american[1].High, american[1].Estimate));
    }

    [Fact]
    public void An_active_drug_ingredient_stands_apart_and_first_in_the_united_states()
    {
        // 21 CFR 701.3(d): 10 g zinc oxide in 100 g is 10 %, less than the oil, yet it stands first.
        using var bench = new MakerBench()
            .Material("oil", "oil", "Castor Oil")
            .Material("wax", "oil", "Beeswax")
            .Material("zinc", "additive", "Zinc Oxide")
            .Recipe("body-butter", "active drug ingredients: [ zinc oxide ]\n", ("oil", "70 g"), ("wax", "20 g"), ("zinc", "10 g"));
        var declaration = bench.Declare(Market.Us);
        Assert.Equal("Active ingredient: Zinc Oxide 10 %. Inactive ingredients: Ricinus Communis (Castor) Seed Oil, Beeswax.",
            declaration.Statement);
        Assert.True(declaration.Ingredients[0].IsActive);
        Assert.Contains(declaration.Findings, f => f.Rule == "active.drug-facts");
        var european = bench.Declare(Market.Eu);
        Assert.Equal("Ingredients: Ricinus Communis Seed Oil, Cera Alba, CI 77947.", european.Statement);
        Assert.Contains(european.Findings, f => f.Rule == "active.other-market");
    }

    [Fact]
    public void An_active_whose_strength_is_not_known_is_a_must()
    {
        using var bench = new MakerBench()
            .Material("oil", "oil", "[ Castor Oil: 80-90 %, Salicylic Acid ]")
            .Recipe("body-butter", "active drug ingredients: Salicylic Acid\n", ("oil", "70 g"));
        var declaration = bench.Declare(Market.Us);
        Assert.StartsWith("Active ingredient: Salicylic Acid. Inactive", declaration.Statement, StringComparison.Ordinal);
        Assert.Equal(Severity.Must, declaration.Findings.Single(f => f.Rule == "active.strength-unknown").Severity);
    }

    [Fact]
    public void An_active_that_nothing_contains_is_refused_at_its_line()
    {
        using var bench = new MakerBench().Material("oil", "oil", "Castor Oil")
            .Recipe("body-butter", "active drug ingredients: Menthol\n", ("oil", "70 g"));
        var problem = Assert.Throws<InputException>(() => bench.Declare(Market.Us)).Problem;
        Assert.Equal(("recipes/bar.yaml", 7, "\"Menthol\" is called an active drug ingredient, but nothing in the batch contains it."),
            (problem.File, problem.Line, problem.Wrong));
        Assert.Contains("an ingredient of the batch", problem.Write, StringComparison.Ordinal);
    }

    [Fact]
    public void Two_active_drug_ingredients_stand_apart_with_their_strengths_and_in_no_doubt()
    {
        using var bench = new MakerBench()
            .Material("oil", "oil", "Castor Oil")
            .Material("zinc", "additive", "[ Zinc Oxide: 10-90 %, Beeswax ]")
            .Material("salicylic", "additive", "Salicylic Acid")
            .Recipe("body-butter", "active drug ingredients: [ zinc oxide, Salicylic Acid ]\n", ("oil", "88 g"), ("zinc", "10 g"),
                ("salicylic", "2 g"));
        var declaration = bench.Declare(Market.Us);
        Assert.Equal(
            "Active ingredients: Salicylic Acid 2 %, Zinc Oxide. Inactive ingredients: Ricinus Communis (Castor) Seed Oil, Beeswax.",
            declaration.Statement);
        // Whether zinc oxide weighs more than beeswax is not known, and does not matter: the actives stand first by law.
        Assert.Empty(declaration.Unsettled);
        var european = bench.Declare(Market.Eu);
        Assert.NotEmpty(european.Unsettled);
        var other = european.Findings.Single(f => f.Rule.StartsWith("active.", StringComparison.Ordinal));
        Assert.StartsWith("The recipe calls zinc oxide, Salicylic Acid an active drug ingredient; in the market eu", other.Message,
            StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("us", "21 CFR 701.3(c)")]
    [InlineData("eu", "Regulation (EC) No 1223/2009, Articles 19(6) and 33")]
    [InlineData("uk", "Regulation (EC) No 1223/2009 as retained, Articles 19(6) and 33")]
    [InlineData("ca", "Cosmetic Regulations, C.R.C., c. 869, s. 21.2(1)")]
    public void A_name_that_the_dictionary_lacks_is_told_with_the_law_that_asks_for_the_standard_one(string market, string source)
    {
        using var bench = new MakerBench().Material("oil", "oil", "Elixir of Nothing").Recipe("soap-bar", "", ("oil", "97 g"));
        var finding = bench.Declare(Market.Named(market)).Findings.Single(f => f.Rule == "ingredients.name-unknown");
        Assert.Equal(source, finding.Source);
        Assert.StartsWith("\"Elixir of Nothing\" is not in the dictionary", finding.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void An_unknown_name_is_a_must_until_the_maker_settles_it_as_a_name_of_their_own()
    {
        using var left = new MakerBench().Material("oil", "oil", "Elixir of Nothing").Recipe("soap-bar", "", ("oil", "97 g"));
        using var settled = new MakerBench().Material("oil", "oil", "Elixir of Nothing", "own names: [elixir of nothing]\n")
            .Recipe("soap-bar", "", ("oil", "97 g"));

        Assert.Equal(LabelForge.Checks.Severity.Must,
            Assert.Single(left.Declare(Market.Us).Findings, f => f.Rule == "ingredients.name-unknown").Severity);
        Assert.Equal(LabelForge.Checks.Severity.Note,
            Assert.Single(settled.Declare(Market.Us).Findings, f => f.Rule == "ingredients.name-unknown").Severity);
        using var other = new MakerBench().Material("oil", "oil", "Castor Oil", "own names: [Elixir of Nothing]\n")
            .Recipe("soap-bar", "", ("oil", "97 g"));
        Assert.Throws<InputException>(() => other.Declare(Market.Us));
    }

    [Fact]
    public void Two_names_of_one_ingredient_in_one_list_are_refused_at_the_second()
    {
        using var bench = new MakerBench()
            .Write("materials/oil.yaml", "name: Oil\nkind: oil\ncontains:\n  - Castor Oil: 60 %\n  - Ricinus Communis Seed Oil: 40 %\n")
            .Recipe("soap-bar", "", ("oil", "97 g"));
        var problem = Assert.Throws<InputException>(() => bench.Declare(Market.Us)).Problem;
        Assert.Equal(("materials/oil.yaml", 5), (problem.File, problem.Line));
        Assert.StartsWith("\"Castor Oil\" and \"Ricinus Communis Seed Oil\" are the same ingredient, ", problem.Wrong,
            StringComparison.Ordinal);
        Assert.Equal("Name it once.", problem.Write);
    }

    [Fact]
    public void A_colour_that_some_batches_hold_stands_under_the_sign_and_the_words_where_one_label_serves_all_markets()
    {
        using var bench = new MakerBench().Material("oil", "oil", "Castor Oil")
            .Recipe("soap-bar", "may contain: [ Mica ]\n", ("oil", "97 g"));
        var declaration = bench.Declare(Market.Us, style: NameStyle.Dual);
        Assert.Equal("Ingredients: Ricinus Communis (Castor) Seed Oil, [+/- May contain: CI 77019 (Mica)].", declaration.Statement);
        Assert.Equal(3, declaration.Findings.Count(f => f.Rule == "colour.may-contain-not-permitted"));
    }

    [Theory]
    [InlineData("us", "soap-bar", "Ingredients: Ricinus Communis (Castor) Seed Oil, Titanium Dioxide, May contain: Iron Oxides, Mica.", 0)]
    [InlineData("eu", "soap-bar", "Ingredients: Ricinus Communis Seed Oil, CI 77891, [+/- CI 77491, CI 77019].", 1)]
    [InlineData("eu", "tinted-lip-balm", "Ingredients: Ricinus Communis Seed Oil, CI 77891, [+/- CI 77491, CI 77019].", 0)]
    [InlineData("ca", "soap-bar", "Ingredients/Ingrédients: Ricinus Communis Seed Oil, CI 77891, [+/- CI 77491, CI 77019].", 1)]
    public void Colours_that_only_some_batches_hold_follow_may_contain_where_that_is_lawful(string market, string product,
        string statement, int musts)
    {
        using var bench = new MakerBench()
            .Material("oil", "oil", "Castor Oil")
            .Material("white", "colourant", "Titanium Dioxide")
            .Recipe(product, "may contain: [ Iron Oxides (CI 77491), Mica, Titanium Dioxide ]\n", ("oil", "97 g"), ("white", "3 g"));
        var declaration = bench.Declare(Market.Named(market));
        Assert.Equal(statement, declaration.Statement);
        Assert.Equal(musts, declaration.Findings.Count(f => f.Rule == "colour.may-contain-not-permitted" && f.Severity == Severity.Must));
    }

    [Fact]
    public void Only_a_colour_may_stand_under_may_contain()
    {
        using var bench = new MakerBench().Material("oil", "oil", "Castor Oil")
            .Recipe("soap-bar", "may contain: [ Beeswax ]\n", ("oil", "97 g"));
        var problem = Assert.Throws<InputException>(() => bench.Declare(Market.Us)).Problem;
        Assert.Contains("\"Beeswax\" is not a colour, and only a colour", problem.Wrong, StringComparison.Ordinal);
        Assert.Contains("among the materials", problem.Write, StringComparison.Ordinal);
    }

    [Fact]
    public void A_flavour_of_a_lip_product_is_named_as_such()
    {
        using var bench = new MakerBench()
            .Material("oil", "oil", "Castor Oil")
            .Material("mint", "fragrance", "Flavor", "allergens: { Menthol: 20 % }\n")
            .Recipe("lip-balm", "", ("oil", "99 g"), ("mint", "1 g"));
        Assert.Equal("Ingredients: Ricinus Communis (Castor) Seed Oil, Flavor.", bench.Declare(Market.Us).Statement);
        Assert.Equal("Ingredients: Ricinus Communis Seed Oil, Aroma, Menthol.", bench.Declare(Market.Eu).Statement);
    }

    [Fact]
    public void Parts_say_which_ingredients_can_exceed_one_percent()
    {
        using var bench = Bar("soap-bar");
        var parts = bench.Declare(Market.Eu).Ingredients.ToDictionary(i => i.Name, i => i.Part);
        Assert.Equal((Part.Main, Part.Minor, Part.Minor, Part.Colour),
            (parts["Parfum"], parts["Tocopheryl Acetate"], parts["Linalool"], parts["CI 77891"]));
    }

    private static MakerBench Bar(string product) => new MakerBench()
        .Material("white", "base", "[ Glycerin: 50 %, Water: 30 %, Sodium Stearate: 19.9 %, Benzyl Alcohol: 0.1 % ]")
        .Material("coconut", "oil", "Coconut Oil")
        .Material("titan", "colourant", "Titanium Dioxide")
        .Material("scent", "fragrance", "Fragrance", "allergens: { Linalool: 5 %, Citral: 0.5 % }\n")
        .Material("e", "additive", "Tocopheryl Acetate")
        .Recipe(product, "", ("white", "600 g"), ("coconut", "350 g"), ("titan", "30 g"), ("scent", "12 g"), ("e", "8 g"));
}
