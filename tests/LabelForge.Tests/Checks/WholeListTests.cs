using LabelForge.Checks;
using LabelForge.Ingredients;
using LabelForge.Markets;

namespace LabelForge.Tests.Checks;

/// <summary>A list that was not read to its end is said to go on; praise of a plant after a list is not.</summary>
public sealed class WholeListTests
{
    [Theory]
    [InlineData("Ingredients: Aqua, Glycerin, Frobnicated Moss\nSodium Benzoate - Citric Acid - Sodium Chloride", true)]
    [InlineData("Ingredients: Aqua, Glycerin, Parfum.\n\nPhenoxyethanol; Citric Acid; Sodium Chloride", true)]
    [InlineData("Ingredients: Aqua, Glycerin, Parfum.\n\nWith shea butter, honey and oats. Avoid the eyes.", false)]
    [InlineData("Ingredients: Aqua, Glycerin, Parfum.\n\nWork up a lather with water, then rinse.", false)]
    public void A_list_that_goes_on_unread_is_told(string label, bool told)
    {
        foreach (var market in Market.All)
        {
            Assert.Equal(told,
                CheckedLabel.Found(label, market).Any(f => f is { Rule: "ingredients.list-goes-on", Severity: Severity.Must }));
        }
    }
}
