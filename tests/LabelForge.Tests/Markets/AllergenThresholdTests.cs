using LabelForge.Markets;

namespace LabelForge.Tests.Markets;

public class AllergenThresholdTests
{
    /// <summary>The thresholds as the Annex III export of December 2025 words them, for instance for linalool (entry 84).</summary>
    [Theory]
    [InlineData("eu", "allergens.threshold-leave-on", "0.001")]
    [InlineData("eu", "allergens.threshold-rinse-off", "0.01")]
    [InlineData("uk", "allergens.threshold-leave-on", "0.001")]
    [InlineData("uk", "allergens.threshold-rinse-off", "0.01")]
    public void Leave_on_products_name_allergens_from_a_tenth_of_the_rinse_off_share(string market, string id, string percent)
    {
        var entry = Market.Named(market).On(new DateOnly(2026, 11, 25)).Figure(id);
        Assert.Equal(new LawFigure(decimal.Parse(percent, System.Globalization.CultureInfo.InvariantCulture), "%"), entry.Value);
    }
}
