using LabelForge.Measures;

namespace LabelForge.Tests.Measures;

public class AmountTests
{
    // Exact factors: NIST Handbook 44, Appendix C, General Tables of Units of Measurement.
    [Theory]
    [InlineData("3,5 oz")]
    [InlineData("1,000 g")]
    public void A_comma_in_a_figure_is_refused_with_how_it_is_written(string text) =>
        Assert.Contains("with a point", Assert.Throws<InputException>(() => Amount.Parse(text).OrRefuse()).Message);

    [Theory]
    [InlineData("900 g", "900")]
    [InlineData("1.2 kg", "1200")]
    [InlineData("250 mg", "0.25")]
    [InlineData("1 oz", "28.349523125")]
    [InlineData("4 oz", "113.3980925")]
    [InlineData("1 lb", "453.59237")]
    [InlineData("1 1/2 lb", "680.388555")]
    [InlineData("1/2 lb", "226.796185")]
    [InlineData("900g", "900")]
    [InlineData(".5 lb", "226.796185")]
    public void Mass_amounts_read_exactly(string text, string grams) =>
        Assert.Equal(decimal.Parse(grams), Amount.Parse(text).Value!.AsMass().Grams);

    [Theory]
    [InlineData("15 mL", "15")]
    [InlineData("1 L", "1000")]
    [InlineData("1 fl oz", "29.5735295625")]
    [InlineData("1 gal", "3785.411784")]
    [InlineData("1 qt", "946.352946")]
    [InlineData("1 pint", "473.176473")]
    [InlineData("2 tbsp", "29.5735295625")]
    [InlineData("6 tsp", "29.5735295625")]
    [InlineData("40 drops", "2")]
    public void Volume_amounts_read_exactly(string text, string millilitres) =>
        Assert.Equal(decimal.Parse(millilitres), Amount.Parse(text).Value!.AsVolume().Millilitres);

    [Theory]
    [InlineData("1.5 % of batch", "1.5", "batch")]
    [InlineData("2% of clear-shea-base", "2", "clear-shea-base")]
    public void A_percentage_says_of_what(string text, string figure, string of)
    {
        var amount = Amount.Parse(text).Value!;
        Assert.Equal((decimal.Parse(figure), AmountUnit.PercentOf, of), (amount.Figure, amount.Unit, amount.Of));
    }

    [Theory]
    [InlineData("1.5 %", "a percentage of what?")]
    [InlineData("0 g", "not more than nothing")]
    [InlineData("-3 g", "not more than nothing")]
    [InlineData("3", "no unit")]
    [InlineData("3 cups", "not a unit")]
    [InlineData("some", "not an amount")]
    [InlineData("", "not an amount")]
    [InlineData("1/0 lb", "not a figure")]
    [InlineData("120 % of batch", "more than the whole")]
    [InlineData("1,5 g", "not an amount")]
    public void What_is_not_an_amount_is_refused_with_what_to_write(string text, string wrong)
    {
        var parsed = Amount.Parse(text);
        Assert.False(parsed.IsValue);
        Assert.Contains(wrong, parsed.Wrong);
        Assert.NotEmpty(parsed.Write);
    }

    [Theory]
    [InlineData("5 %", 5, 5)]
    [InlineData("10-30 %", 10, 30)]
    [InlineData("10 % - 30 %", 10, 30)]
    [InlineData("<= 1 %", 0, 1)]
    [InlineData("<1%", 0, 1)]
    [InlineData(">= 2 %", 2, 100)]
    public void Suppliers_shares_read_as_ranges(string text, int low, int high)
    {
        var range = ShareText.Parse(text).Value;
        Assert.Equal((low, high), (range.Low.Percent, range.High.Percent));
    }

    [Theory]
    [InlineData("30-10 %")]
    [InlineData("101 %")]
    [InlineData("5")]
    [InlineData("<= 10-30 %")]
    public void A_share_that_cannot_be_is_refused(string text) => Assert.False(ShareText.Parse(text).IsValue);
}
