using LabelForge.Ingredients;
using LabelForge.Ingredients.Supplied;

namespace LabelForge.Tests.Ingredients.Supplied;

public class NameMatcherTests
{
    private static readonly NameMatcher Matcher = new(IngredientDictionary.Shipped);

    private static NameMatch Match(string name) => Assert.Single(Matcher.Match(SuppliedText.Read(name, Matcher.Knows)));

    [Theory]
    [InlineData("GLYCERIN", MatchKind.Exact, "Glycerin")]
    [InlineData("Aqua", MatchKind.Exact, "Water")]
    [InlineData("Water (Aqua)", MatchKind.Exact, "Water")]
    [InlineData("Butyrospermum Parkii Butter", MatchKind.Exact, "Butyrospermum Parkii (Shea) Butter")]
    [InlineData("Castor oil", MatchKind.Everyday, "Ricinus Communis (Castor) Seed Oil")]
    [InlineData("vitamin e", MatchKind.Everyday, "Tocopherol")]
    [InlineData("CI 77891", MatchKind.Exact, "Titanium Dioxide")]
    [InlineData("Fragrance (Linalool, Limonene)", MatchKind.Exact, "Fragrance")]
    public void A_name_is_found_by_what_it_is_called(string name, MatchKind kind, string us) =>
        Assert.Equal((kind, us), (Match(name).Kind, Match(name).Found?.Us));

    [Theory]
    [InlineData("Sodium Stearatte", "Sodium Stearate")]
    [InlineData("Glycerine vegetal", "Glycerin")]
    [InlineData("Butyrospermun Parkii Buter", "Butyrospermum Parkii (Shea) Butter")]
    public void A_near_spelling_is_offered_and_never_taken(string name, string offered)
    {
        var match = Match(name);
        Assert.Equal((MatchKind.Unknown, null), (match.Kind, match.Found));
        Assert.InRange(match.Nearest.Length, 1, 3);
        Assert.Contains(offered, match.Nearest.Select(n => n.Us));
    }

    [Fact]
    public void A_list_inside_a_name_is_not_taken_for_the_name_before_it()
    {
        Assert.Equal(MatchKind.Unknown, Match("Glycerin (Sodium Stearate, Water)").Kind);
        Assert.Equal(MatchKind.Unknown, Match("Soap Base (Sodium Palmate, Water)").Kind);
    }

    [Fact]
    public void A_CAS_number_brings_its_ingredient_to_the_front_of_the_offers() =>
        Assert.Equal("Glycerin", Match("Propane-triol 56-81-5").Nearest[0].Us);

    // Wrappers in capitals leave accents out.
    [Theory]
    [InlineData("BEURRE DE KARITE", "Butyrospermum Parkii (Shea) Butter")]
    [InlineData("Beurre de karité", "Butyrospermum Parkii (Shea) Butter")]
    [InlineData("ACIDE STEARIQUE", "Stearic Acid")]
    public void A_name_is_known_with_its_accents_and_without(string written, string key) =>
        Assert.Equal(key, Matcher.Find(written)?.Key);
}
