using LabelForge.Measures;
using LabelForge.Recipes;
using LabelForge.Recipes.Files;

namespace LabelForge.Tests.Recipes;

/// <summary>Times are kept in universal time and shown in the maker's zone.</summary>
public class BusinessZoneTests
{
    private static Business Read(string zone) =>
        Business.Read(YamlFile.ReadText($"business: Rooksedge Bodycare\nzone: {zone}\n", "workshop.yaml"), MarketBook.Shipped);

    [Theory]
    // Summer time ends in New York on the first Sunday of November: four hours behind before it, five after.
    [InlineData("2026-10-31 02:30:00Z", "2026-10-30 22:30:00 -04:00")]
    [InlineData("2026-11-28 02:30:00Z", "2026-11-27 21:30:00 -05:00")]
    public void A_moment_is_shown_in_the_zone_with_what_it_is_apart(string written, string shown) =>
        Assert.Equal(shown, Business.InZone(Read("America/New_York").Zone, written, "yyyy-MM-dd HH:mm:ss'Z'"));

    [Fact]
    public void A_zone_that_is_not_known_is_refused_with_how_one_is_written() =>
        Assert.Contains("America/New_York", Assert.Throws<InputException>(() => Read("Fairport")).Message, StringComparison.Ordinal);
}
