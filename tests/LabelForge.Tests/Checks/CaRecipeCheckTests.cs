using LabelForge.Markets;

namespace LabelForge.Tests.Checks;

/// <summary>What Canada asks of a recipe's label: Cosmetic Regulations, C.R.C., c. 869; Consumer
/// Packaging and Labelling Regulations, C.R.C., c. 417.</summary>
public sealed class CaRecipeCheckTests
{
    private const string Bilingual = "in:\n  fr: { identity: Lotion pour le corps }\n";

    // C.R.C., c. 869, s. 18: both official languages.
    [Theory]
    [InlineData("", new[] { "identity.one-language must" })]
    [InlineData(Bilingual, new string[0])]
    public void What_the_product_is_stands_in_both_languages(string more, string[] findings)
    {
        using var recipe = new CheckedRecipe { More = more }.Add(1000, "Glycerin");
        Assert.Equal(findings, recipe.Found(Market.Ca, "identity.one-language"));
    }

    [Theory]
    [InlineData("warnings: [\"For external use only.\"]\n", new[] { "warning.one-language must" })]
    [InlineData("warnings: [\"standard: external-only\"]\n", new string[0])]
    public void A_warning_stands_in_both_languages(string more, string[] findings)
    {
        using var recipe = new CheckedRecipe { More = more }.Add(1000, "Glycerin");
        Assert.Equal(findings, recipe.Found(Market.Ca, "warning.one-language"));
    }

    [Theory]
    [InlineData("CA", new string[0])]
    [InlineData("US", new[] { "importer.missing should" })]
    public void A_product_from_abroad_names_an_importer_or_where_it_was_made(string country, string[] findings)
    {
        using var recipe = new CheckedRecipe { More = Bilingual }
            .File("workshop.yaml",
                $"business: Test Bench\nplace: {{ street: 1 Example Lane, city: Fairport, postcode: "
                    + $"\"00000\", country: {country} }}\ncontact: {{ phone: \"555-0100\" }}\n").Add(1000, "Glycerin");
        Assert.Equal(findings, recipe.Found(Market.Ca, "importer.missing", "contact.missing", "business-place.missing"));
    }

    [Fact]
    public void Notification_and_hotlist_are_noted()
    {
        using var recipe = new CheckedRecipe().Add(1000, "Glycerin");
        Assert.Equal(["outside.notification note", "outside.hotlist note"],
            recipe.Found(Market.Ca, "outside.notification", "outside.hotlist"));
    }

    // SOR/2024-63 brings fragrance allergens to new products on 2026-04-12 (Law, allergens.list-new-products.ca).
    [Theory]
    [InlineData(2026, 4, 11, 0)]
    [InlineData(2026, 4, 12, 1)]
    public void A_scent_without_papers_is_asked_for_its_allergens_from_the_day_they_bind(int year, int month, int day, int count)
    {
        using var recipe = new CheckedRecipe { On = new(year, month, day) }.Add(990, "Glycerin").Add(10, "Fragrance", "fragrance");
        Assert.Equal(count, recipe.Found(Market.Ca, "allergen.undeclared").Length);
    }

    [Fact]
    public void Words_that_treat_make_it_a_drug()
    {
        using var recipe = new CheckedRecipe { More = "claims: [\"Treats eczema\"]\n" }.Add(1000, "Glycerin");
        Assert.Contains("claim.drug must", recipe.Found(Market.Ca, "claim.drug"));
    }
}
