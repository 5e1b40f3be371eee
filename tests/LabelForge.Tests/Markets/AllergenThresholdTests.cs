using LabelForge.Markets;

namespace LabelForge.Tests.Markets;

public class AllergenThresholdTests
{
    /// <summary>The thresholds as the Annex III export of December 2025 words them, for instance for linalool (entry 84).</summary>
    [Theory]
    [InlineData("allergens.threshold-leave-on.eu", "0.001")]
    [InlineData("allergens.threshold-rinse-off.eu", "0.01")]
    [InlineData("allergens.threshold-leave-on.uk", "0.001")]
    [InlineData("allergens.threshold-rinse-off.uk", "0.01")]
    public void Leave_on_products_name_allergens_from_a_tenth_of_the_rinse_off_share(string id, string percent)
    {
        var entry = LawBook.Shipped.Get(id, new DateOnly(2026, 11, 25));
        Assert.Equal(new LawFigure(decimal.Parse(percent, System.Globalization.CultureInfo.InvariantCulture), "%"), entry.Value);
    }
}
