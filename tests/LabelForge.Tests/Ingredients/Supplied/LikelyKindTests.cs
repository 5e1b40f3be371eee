using LabelForge.Ingredients;
using LabelForge.Ingredients.Supplied;
using LabelForge.Recipes;

namespace LabelForge.Tests.Ingredients.Supplied;

public class LikelyKindTests
{
    private static readonly NameMatcher Matcher = new(IngredientDictionary.Shipped);

    [Theory]
    [InlineData("Mica", MaterialKind.Colourant)]
    [InlineData("Mica, Titanium Dioxide, Tin Oxide, CI 77491", MaterialKind.Colourant)]
    [InlineData("Synthetic Fluorphlogopite, Titanium Dioxide, Silica", MaterialKind.Colourant)]
    [InlineData("Kaolin", MaterialKind.Additive)]
    [InlineData("Castor Oil", MaterialKind.Oil)]
    [InlineData("Shea Butter, Tocopherol", MaterialKind.Oil)]
    [InlineData("Beeswax", MaterialKind.Oil)]
    [InlineData("Fragrance (Linalool, Limonene)", MaterialKind.Fragrance)]
    [InlineData("Lavandula Angustifolia (Lavender) Oil", MaterialKind.Fragrance)]
    [InlineData("Sodium Hydroxide", MaterialKind.Lye)]
    [InlineData("Distilled water", MaterialKind.Water)]
    [InlineData("Sodium Lactate", MaterialKind.Additive)]
    [InlineData("Glycerin, Water, Sodium Stearate, Propylene Glycol, Titanium Dioxide", MaterialKind.Base)]
    public void What_a_material_is_bought_as_is_proposed_from_its_names(string list, MaterialKind kind) =>
        Assert.Equal(kind, LikelyKind.Of(Matcher.Match(SuppliedText.Read(list, Matcher.Knows))));

    [Fact]
    public void A_name_that_is_not_known_leaves_the_kind_to_the_maker() =>
        Assert.Null(LikelyKind.Of(Matcher.Match(SuppliedText.Read("Mica, Blorbium", Matcher.Knows))));

    [Fact]
    public void A_slip_in_one_name_does_not_hide_that_it_is_a_colourant() =>
        Assert.Equal(MaterialKind.Colourant,
            LikelyKind.Of(Matcher.Match(SuppliedText.Read("Mica (and) Titanium Dioxid (and) Chromium Oxide Greens", Matcher.Knows))));
}
