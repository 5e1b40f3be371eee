using LabelForge.Declarations;
using LabelForge.Ingredients;
using LabelForge.Markets;

namespace LabelForge.Tests.Declarations;

public class AllergenDateTests
{
    // EU: Regulation (EU) 2023/1545, Annex, footnotes: the old list serves until 31 July 2026 for new products, 31 July 2028 for those on
    // the market. UK: Annex III as retained; the regulation of 2023 does not bind there.
    // Canada: Cosmetic Regulations as amended by SOR/2024-63: 12 April 2026, 1 August 2026, 1 August 2028.
    [Theory]
    [InlineData("eu", "2026-07-31", null, AllergenList.Short)]
    [InlineData("eu", "2026-08-01", null, AllergenList.Extended)]
    [InlineData("eu", "2026-08-01", "2026-07-31", AllergenList.Short)]
    [InlineData("eu", "2026-08-01", "2026-08-01", AllergenList.Extended)]
    [InlineData("eu", "2027-03-01", "2026-08-01", AllergenList.Extended)]
    [InlineData("eu", "2028-07-31", "2012-01-01", AllergenList.Short)]
    [InlineData("eu", "2028-08-01", "2012-01-01", AllergenList.Extended)]
    [InlineData("eu", "2026-07-31", "2027-01-01", AllergenList.Short)]
    [InlineData("uk", "2026-07-31", null, AllergenList.Short)]
    [InlineData("uk", "2029-01-01", null, AllergenList.Short)]
    [InlineData("ca", "2026-04-11", null, AllergenList.None)]
    [InlineData("ca", "2026-04-12", null, AllergenList.Short)]
    [InlineData("ca", "2026-04-12", "2020-01-01", AllergenList.Short)]
    [InlineData("ca", "2026-07-31", null, AllergenList.Short)]
    [InlineData("ca", "2026-08-01", null, AllergenList.Extended)]
    [InlineData("ca", "2026-08-01", "2026-07-31", AllergenList.Short)]
    [InlineData("ca", "2028-07-31", "2020-01-01", AllergenList.Short)]
    [InlineData("ca", "2028-08-01", "2020-01-01", AllergenList.Extended)]
    public void The_list_in_force_turns_on_the_day_and_on_how_long_the_product_has_been_sold(string market, string on, string? since,
        AllergenList list)
    {
        var rule = AllergenRule.For(Market.Named(market), Kind("soap-bar"), Day(on), since is null ? null : Day(since));
        Assert.Equal(list, rule!.List);
    }

    [Theory]
    [InlineData("soap-bar", "0.01")]
    [InlineData("lip-balm", "0.001")]
    public void Leave_on_products_name_allergens_from_a_tenth_of_the_rinse_off_share(string kind, string percent)
    {
        foreach (var market in new[] { Market.Eu, Market.Uk, Market.Ca })
            Assert.Equal(decimal.Parse(percent, System.Globalization.CultureInfo.InvariantCulture),
                AllergenRule.For(market, Kind(kind), Day("2026-11-25"))!.Threshold.Percent);
    }

    [Fact]
    public void The_United_States_have_no_list_yet() => Assert.Null(AllergenRule.For(Market.Us, Kind("soap-bar"), Day("2026-11-25")));

    private static ProductKind Kind(string id) => ProductKinds.Find(id).Value!;

    private static DateOnly Day(string text) => DateOnly.ParseExact(text, "yyyy-MM-dd", null);
}
