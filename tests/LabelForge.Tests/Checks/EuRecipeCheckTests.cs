using LabelForge.Checks;
using LabelForge.Markets;
using LabelForge.Measures;

namespace LabelForge.Tests.Checks;

/// <summary>The elements of Article 19(1) of Regulation (EC) No 1223/2009 on a recipe's label.</summary>
public class EuRecipeCheckTests
{
    private const string Workshop =
        "business: Test Bench\nplace: {{ street: 1 Example Lane, city: Fairport, postcode: \"00000\", country: {0} }}\ncontact: {{ phone: "
            + "\"555-0100\" }}\n";

    [Theory]
    [InlineData("IE", "eu", "", new string[0])]
    [InlineData("NO", "eu", "", new string[0])]
    [InlineData("GB", "uk", "", new string[0])]
    [InlineData("GB", "eu", "", new[] { "responsible-person.missing must", "origin.missing must" })]
    [InlineData("IE", "uk", "", new[] { "responsible-person.missing must", "origin.missing must" })]
    [InlineData("US", "eu", "warnings: [\"Responsible person: Example Ltd, 2 Example Quay, Dublin. Made in USA.\"]\n", new string[0])]
    [InlineData("Ireland", "eu", "", new[] { "responsible-person.missing should" })]
    public void A_business_outside_the_union_names_a_responsible_person_and_the_country_of_origin(string country, string market,
        string more, string[] findings)
    {
        using var recipe = new CheckedRecipe { More = more }
            .File("workshop.yaml", string.Format(System.Globalization.CultureInfo.InvariantCulture, Workshop, country))
            .Add(1000, "Glycerin");
        Assert.Equal(findings, recipe.Found(Market.Named(market), "responsible-person.missing", "origin.missing"));
    }

    [Theory]
    [InlineData("body-lotion", "", new[] { "durability.missing must" })]
    [InlineData("soap-bar", "", new[] { "durability.missing should" })]
    [InlineData("body-lotion", "directions: \"Best used before the end of: 05/2028\"\n", new string[0])]
    [InlineData("body-lotion", "directions: \"Rub in. 12M\"\n", new[] { "durability.sign note" })]
    public void A_label_says_how_long_the_product_keeps(string kind, string more, string[] findings)
    {
        using var recipe = new CheckedRecipe { Kind = kind, More = more }.Add(1000, "Glycerin");
        Assert.Equal(findings, recipe.Found(Market.Eu, "durability.missing", "durability.sign"));
    }

    [Fact]
    public void Without_a_batch_number_the_label_is_not_whole()
    {
        using var recipe = new CheckedRecipe().Add(1000, "Glycerin");
        Assert.Equal(["lot.missing must"], recipe.Found(Market.Eu, "lot.missing"));
        Assert.Equal(["lot.missing should"], recipe.Found(Market.Us, "lot.missing"));
    }

    [Fact]
    public void What_stands_outside_the_label_is_noted()
    {
        using var recipe = new CheckedRecipe().Add(1000, "Glycerin");
        Assert.Equal(["outside.safety-report note", "outside.product-file note", "outside.notification note"],
            recipe.Found(Market.Eu, "outside.safety-report", "outside.product-file", "outside.notification"));
    }

    // The keys that docs/files.md gives for them.
    [Theory]
    [InlineData("best before: 2028-05\n")]
    [InlineData("period after opening: 12 months\n")]
    public void What_the_recipe_says_of_keeping_is_seen(string more)
    {
        using var recipe = new CheckedRecipe { More = more }.Add(1000, "Glycerin");
        Assert.Empty(recipe.Found(Market.Eu, "durability.missing", "durability.sign"));
    }

    [Fact]
    public void A_responsible_person_and_an_origin_written_under_their_keys_are_seen()
    {
        var workshop = string.Format(System.Globalization.CultureInfo.InvariantCulture, Workshop,
            "US") + "responsible: { eu: \"Example Ltd, 2 Example Quay, Dublin, Ireland\" }\n";
        using var recipe = new CheckedRecipe { More = "origin: USA\n" }.File("workshop.yaml", workshop).Add(1000, "Glycerin");
        Assert.Empty(recipe.Found(Market.Eu, "responsible-person.missing", "origin.missing"));
    }

    [Fact]
    public void Every_rule_names_its_source_and_every_source_of_the_eu_book_its_article_or_annex() =>
        Assert.All(Market.Eu.OwnRules, r => Assert.Matches("Article|Annex|\\{[23]\\}", r.Source));

    // Common practice; ISO 29621:2017 names soap bars' alkalinity and low water among what keeps microbes from growing.
    [Theory]
    [InlineData("body-lotion", "Aqua", new[] { "preservative.missing should", "preservation.not-measured note" })]
    [InlineData("body-lotion", "Phenoxyethanol", new[] { "preservation.not-measured note" })]
    [InlineData("soap-bar", "Aqua", new string[0])]
    public void A_product_with_water_is_asked_how_it_keeps(string kind, string second, string[] findings)
    {
        using var recipe = new CheckedRecipe { Kind = kind }.Add(995, "Aqua, Glycerin").Add(5, second);
        Assert.Equal(findings, recipe.Found(Market.Us, "preservative.missing", "preservation.not-measured"));
        Assert.Equal(findings, recipe.Found(Market.Eu, "preservative.missing", "preservation.not-measured"));
    }

    [Fact]
    public void A_balm_without_water_is_not_asked()
    {
        using var recipe = new CheckedRecipe { Kind = "lip-balm" }.Add(600, "Ricinus Communis Seed Oil", "oil").Add(400, "Cera Alba");
        Assert.Empty(recipe.Found(Market.Eu, "preservative.missing", "preservation.not-measured"));
    }
}
