using LabelForge.Composition;
using LabelForge.Declarations;
using LabelForge.Markets;

namespace LabelForge.Tests.Declarations;

/// <summary>What carries one name on a label is one ingredient: its weight counts together before its place is decided.</summary>
public class OneNameOneIngredientTests
{
    // 890 g of water, 50 g of glycerin, 30 g of each of two oils that the EU calls by one name: 6 % of it before 5 %.
    [Theory]
    [InlineData("eu", "Ingredients: Aqua, Lavandula Oil/Extract, Glycerin.")]
    [InlineData("ca", "Ingredients/Ingrédients: Aqua/Water/Eau, Lavandula Oil/Extract, Glycerin.")]
    [InlineData("us", "Ingredients: Water, Glycerin, Lavandula Angustifolia (Lavender) Oil, Lavandula Hybrida Oil.")]
    public void Two_oils_of_one_name_stand_by_what_they_weigh_together(string market, string statement)
    {
        using var bench = Lavender("30 g", "30 g");
        var declaration = bench.Declare(Market.Named(market));
        Assert.Equal(statement, declaration.Statement);
        Assert.True(declaration.IsProved);
        Assert.Equal(100m, declaration.Ingredients.Sum(i => i.High));
    }

    [Fact]
    public void Two_of_less_than_one_percent_that_come_to_more_stand_by_their_weight()
    {
        // 0.8 % each, 1.6 % together: before the 1.2 % of citric acid.
        using var bench = Lavender("8 g", "8 g", ("citric", "12 g")).Material("citric", "additive", "Citric Acid");
        var declaration = bench.Declare(Market.Eu);
        Assert.Equal("Ingredients: Aqua, Glycerin, Lavandula Oil/Extract, Citric Acid.", declaration.Statement);
        Assert.Equal(Part.Main, declaration.Ingredients.Single(i => i.Name.StartsWith("Lavandula", StringComparison.Ordinal)).Part);
    }

    [Theory]
    [InlineData("us", "Ingredients: Water, Silica, Glycerin.")]
    [InlineData("eu", "Ingredients: Aqua, Glycerin, Silica, Silica [nano].")]
    public void Both_sizes_of_a_substance_count_together_where_the_market_does_not_tell_them_apart(string market, string statement)
    {
        using var bench = new MakerBench()
            .Material("water", "water", "Water").Material("glycerin", "additive", "Glycerin")
            .Material("coarse", "additive", "Silica").Material("fine", "additive", "Silica [nano]")
            .Recipe("body-butter", "", ("water", "890 g"), ("glycerin", "50 g"), ("coarse", "31 g"), ("fine", "29 g"));
        Assert.Equal(statement, bench.Declare(Market.Named(market)).Statement);
    }

    [Fact]
    public void Two_of_one_list_that_carry_one_name_are_one_with_the_bounds_of_their_sum()
    {
        // The blend's two lavender oils are 30 to 70 % of it each, whatever each is; together all of it but 10 %.
        using var bench = new MakerBench()
            .Material("water", "water", "Water").Material("glycerin", "additive", "Glycerin")
            .Material("blend", "oil", "[ Lavandula Angustifolia Oil: 30-70 %, Lavandula Hybrida Oil: 20-60 %, Castor Oil: 10 % ]",
                "listed: none\n")
            .Recipe("body-butter", "", ("water", "850 g"), ("glycerin", "80 g"), ("blend", "100 g"));
        var declaration = bench.Declare(Market.Eu);
        Assert.Equal("Ingredients: Aqua, Lavandula Oil/Extract, Glycerin, Ricinus Communis Seed Oil.", declaration.Statement);
        var lavender = declaration.Ingredients[1];
        Assert.Equal(90m / 1030 * 100, lavender.Low, 12);
        Assert.Equal(90m / 1030 * 100, lavender.High, 12);
        Assert.True(declaration.IsProved);
    }

    // 5 % of a known oil; 3 % and 3 % of one that no dictionary lists, spelled by two suppliers: 6 % before 5 %.
    [Theory]
    [InlineData("Wild Moor Extract", "WILD MOOR EXTRACT")]
    [InlineData("Wild Moor Extract", "wild  moor extract*")]
    [InlineData("wild moor extract.", "Wild Moor Extract")]
    public void An_unknown_name_in_another_case_or_spacing_is_the_same_ingredient(string one, string other)
    {
        using var bench = new MakerBench()
            .Material("water", "water", "Water").Material("castor", "oil", "Castor Oil")
            .Material("one", "additive", $"\"{one}\"").Material("other", "additive", $"\"{other}\"")
            .Recipe("body-butter", "loss: 1 g " + other + "\n", ("water", "890 g"), ("castor", "50 g"), ("one", "30 g"),
                ("other", "31 g"));
        foreach (var market in MarketBook.Shipped.All)
        {
            var ingredients = bench.Declare(market).Ingredients;
            Assert.Equal(one, ingredients[1].Name);
            Assert.Equal(6m, ingredients[1].High, 12);
            Assert.Equal(3, ingredients.Length);
        }
    }

    [Fact]
    public void A_soap_in_other_letters_than_a_base_writes_is_the_same_soap()
    {
        using var bench = new MakerBench()
            .Material("water", "water", "Water")
            .Material("fat", "oil", "Wild Moor Butter", "saponification: 190 mg KOH/g\nsoap name: sodium moorate\n")
            .Material("base", "base", "[ Glycerin: 60 %, Sodium Moorate: 40 % ]")
            .Material("lye", "lye", "Sodium Hydroxide", "purity: 100 %\n")
            .Recipe("soap-bar", "superfat: 5 %\ndeclare as: formed\n", ("fat", "100 g"), ("water", "30 g"), ("lye", "by superfat"),
                ("base", "100 g"));
        Assert.Single(bench.Declare(Market.Us).Ingredients, i => i.Name.Equals("sodium moorate", StringComparison.OrdinalIgnoreCase));
    }

    // Both names where one label serves all markets; each of these oils is an entry of Annex III itself.
    [Theory]
    [InlineData("Lavender Oil")]
    [InlineData("Lemongrass Oil")]
    [InlineData("Rosa Damascena Flower Oil")]
    [InlineData("Clove Leaf Oil")]
    [InlineData("Peppermint Oil")]
    [InlineData("Orange Oil")]
    [InlineData("Ylang Ylang Oil")]
    public void An_oil_that_is_itself_a_listed_allergen_is_declared_once_under_both_names(string oil)
    {
        using var bench = new MakerBench()
            .Material("water", "water", "Water").Material("oil", "oil", oil)
            .Recipe("body-butter", "", ("water", "980 g"), ("oil", "20 g"));
        foreach (var style in Enum.GetValues<NameStyle>())
        {
            var declaration = bench.Declare(Market.Eu, style: style);
            Assert.Equal(2, declaration.Ingredients.Length);
            Assert.Equal(100m, declaration.Ingredients.Sum(i => i.High));
        }
    }

    [Fact]
    public void An_ingredient_that_the_scent_holds_too_stands_by_both_together()
    {
        // Benzyl alcohol: 9 g by itself and 20 g of the scent's 100 in 1000: 2.9 %, before 2 % of castor oil; the scent weighs 10 %.
        using var bench = new MakerBench()
            .Material("water", "water", "Water").Material("castor", "oil", "Castor Oil").Material("benzyl", "additive", "Benzyl Alcohol")
            .Material("scent", "fragrance", "Fragrance", "allergens: { Benzyl Alcohol: 20 % }\n")
            .Recipe("body-butter", "", ("water", "871 g"), ("scent", "100 g"), ("castor", "20 g"), ("benzyl", "9 g"));
        var declaration = bench.Declare(Market.Eu);
        Assert.Equal("Ingredients: Aqua, Parfum, Benzyl Alcohol, Ricinus Communis Seed Oil.", declaration.Statement);
        var benzyl = declaration.Ingredients[2];
        Assert.Equal((2.9m, new PercentRange(0.9m, 0.9m), new PercentRange(2m, 2m)), (benzyl.High, benzyl.Itself, benzyl.Besides));
        Assert.Equal(Part.Main, benzyl.Part);
        Assert.False(benzyl.IsAllergen);
        var why = declaration.Findings.Single(f => f.Rule == "allergen.counted-together");
        Assert.Contains("0.9 % of the product) and a part of a fragrance or an oil (2 %)", why.Message, StringComparison.Ordinal);
        Assert.Equal("Ingredients: Water, Fragrance, Ricinus Communis (Castor) Seed Oil, Benzyl Alcohol.",
            bench.Declare(Market.Us).Statement);
    }

    [Fact]
    public void What_is_provably_not_there_is_not_declared()
    {
        using var bench = new MakerBench()
            .Material("milk", "base", "[ Glycerin: 80 %, Water: 20 %, Castor Oil: 0 % ]")
            .Recipe("body-butter", "loss: 20 % water\n", ("milk", "100 g"));
        var declaration = bench.Declare(Market.Us);
        Assert.Equal("Ingredients: Glycerin.", declaration.Statement);
        Assert.Equal([("Ricinus Communis (Castor) Seed Oil", false), ("Water", true)],
            declaration.Composition!.Proof.Absent.Select(a => (a.Name, a.IsLost)).OrderBy(a => a.Name));
    }

    [Theory]
    [InlineData("1.5 %", Part.Minor)]
    [InlineData("1.500000000000001 %", Part.Main)]
    public void One_percent_in_thirds_of_a_batch_is_one_percent_and_the_least_more_is_more(string castor, Part expected)
    {
        using var bench = new MakerBench()
            .Material("base", "base", $"[ Glycerin: 98-99 %, Castor Oil: {castor} ]").Material("water", "water", "Water")
            .Recipe("body-butter", "", ("base", "2 g"), ("water", "1 g"));
        Assert.Equal(expected,
            bench.Declare(Market.Us).Ingredients.Single(i => i.Name.StartsWith("Ricinus", StringComparison.Ordinal)).Part);
    }

    [Fact]
    public void After_a_loss_of_two_waters_what_both_hold_is_said_to_be_bounded_not_tightly()
    {
        const string Milk = "[ Glycerin: 20-60 %, Water: 10-60 %, Castor Oil: 10-60 % ]";
        using var bench = new MakerBench()
            .Material("one", "base", Milk).Material("other", "base", Milk).Material("salt", "additive", "Sodium Chloride")
            .Recipe("body-butter", "loss: 38 g water\n", ("one", "50 g"), ("other", "50 g"), ("salt", "10 g"));
        var proof = bench.Declare(Market.Us).Composition!.Proof;
        Assert.Equal([("Glycerin", false), ("Ricinus Communis (Castor) Seed Oil", false), ("Sodium Chloride", true), ("Water", true)],
            proof.Ingredients.Select(i => (i.Name, i.IsTight)).OrderBy(i => i.Name, StringComparer.Ordinal));
    }

    private static MakerBench Lavender(string one, string other, params (string, string)[] more) => new MakerBench()
        .Material("water", "water", "Water").Material("glycerin", "additive", "Glycerin")
        .Material("one", "oil", "Lavandula Angustifolia Oil").Material("other", "oil", "Lavandula Hybrida Oil")
        .Recipe("body-butter", "", [("water", "890 g"), ("glycerin", "50 g"), ("one", one), ("other", other), .. more]);
}
