using LabelForge.Ingredients;
using LabelForge.Markets;

namespace LabelForge.Tests.Ingredients;

public class IngredientNameTests
{
    private static readonly IngredientDictionary Dictionary = IngredientDictionary.Shipped;

    [Theory]
    [InlineData("Water", "Water")]
    [InlineData("AQUA", "Water")]
    [InlineData("Water (Aqua)", "Water")]
    [InlineData("Aqua (Water)", "Water")]
    [InlineData("Aqua/Water/Eau", "Water")]
    [InlineData("distilled  water", "Water")]
    [InlineData("castor oil", "Ricinus Communis (Castor) Seed Oil")]
    [InlineData("Ricinus Communis Seed Oil", "Ricinus Communis (Castor) Seed Oil")]
    [InlineData("Ricinus Communis (Castor) Seed Oil*", "Ricinus Communis (Castor) Seed Oil")]
    [InlineData("RICINUS COMMUNIS (CASTOR BEAN) SEED OIL", "Ricinus Communis (Castor) Seed Oil")]
    [InlineData("Butyrospermum Parkii (Shea) Butter", "Butyrospermum Parkii (Shea) Butter")]
    [InlineData("shea butter", "Butyrospermum Parkii (Shea) Butter")]
    [InlineData("vitamin E", "Tocopherol")]
    [InlineData("sea salt", "Sea Salt")]
    [InlineData("Maris Sal", "Sea Salt")]
    [InlineData("Parfum", "Fragrance")]
    [InlineData("Parfum (Fragrance)", "Fragrance")]
    [InlineData("CI 77891", "Titanium Dioxide")]
    [InlineData("Titanium Dioxide (CI 77891)", "Titanium Dioxide")]
    [InlineData("Mica [CI 77019]", "Mica")]
    [InlineData("FD&C Red No. 40", "Red 40")]
    [InlineData("CI 19140 (Yellow 5 Lake)", "Yellow 5 Lake")]
    [InlineData("MCT oil (Caprylic/Capric Triglyceride)", "Caprylic/Capric Triglyceride")]
    [InlineData("Glycerine", "Glycerin")]
    [InlineData("ci77891", "Titanium Dioxide")]
    [InlineData("Iron Oxides (CI 77499)", "Iron Oxides")]
    [InlineData("FD&C Red 40", "Red 40")]
    [InlineData("Aqua / Water / Eau", "Water")]
    public void An_ingredient_answers_to_any_of_its_names(string written, string name) =>
        Assert.Equal(name, Dictionary.Find(written)?.Us);

    [Theory]
    [InlineData("Iron Oxides", "CI 77491/CI 77492/CI 77499")]
    [InlineData("Iron Oxides (CI 77499)", "CI 77499")]
    [InlineData("CI 77492", "CI 77492")]
    [InlineData("red iron oxide", "CI 77491")]
    public void A_colour_name_that_several_pigments_share_is_narrowed_by_its_number(string written, string eu) =>
        Assert.Equal(eu, Dictionary.Find(written)?.Eu);

    [Theory]
    [InlineData("")]
    [InlineData("Water/Glycerin")]
    [InlineData("Water (Glycerin)")]
    [InlineData("Sodium Chloride (Potassium Chloride)")]
    [InlineData("Moonshine Dust")]
    public void What_is_unknown_or_two_things_at_once_is_never_guessed(string written) =>
        Assert.Null(Dictionary.Find(written));

    [Theory]
    [InlineData("Glyserin", "Glycerin")]
    [InlineData("Sodium Laureth Sulphate", "Sodium Laureth Sulfate")]
    [InlineData("Buterospermum Parkii Butter", "Butyrospermum Parkii (Shea) Butter")]
    public void A_misspelt_name_brings_the_right_one_among_three(string written, string name)
    {
        Assert.Null(Dictionary.Find(written));
        var offered = Dictionary.Suggest(written);
        Assert.Contains(offered, i => i.Us == name);
        Assert.InRange(offered.Length, 1, 3);
    }

    [Fact]
    public void Nothing_is_offered_for_a_name_that_is_near_to_none() =>
        Assert.Empty(Dictionary.Suggest("zzzzzzzzqqqqqqqqxxxxxxxx"));

    [Theory]
    [InlineData("water", "us", "Water")]
    [InlineData("water", "eu", "Aqua")]
    [InlineData("water", "uk", "Aqua")]
    [InlineData("water", "ca", "Aqua/Water/Eau")]
    [InlineData("fragrance", "eu", "Parfum")]
    [InlineData("red iron oxide", "us", "Iron Oxides")]
    [InlineData("red iron oxide", "eu", "CI 77491")]
    [InlineData("coconut oil", "us", "Cocos Nucifera (Coconut) Oil")]
    [InlineData("coconut oil", "eu", "Cocos Nucifera Oil")]
    [InlineData("beeswax", "eu", "Cera Alba")]
    public void Each_market_has_its_own_name(string written, string market, string name) =>
        Assert.Equal(name, Dictionary.Find(written)!.NameIn(Market.Named(market)));
}
