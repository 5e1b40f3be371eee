using LabelForge.Quantities;

namespace LabelForge.Tests.Quantities;

/// <summary>Figures that are cut and never rounded up.</summary>
public class RoundedDownTests
{
    [Theory]
    [InlineData("0.0176370", 2, 6, "0.017")]   // the zeros before the first other digit measure nothing
    [InlineData("0.0999", 1, 6, "0.09")]
    [InlineData("0.1", 1, 6, "0.1")]
    [InlineData("0.999", 2, 6, "0.99")]
    [InlineData("0.0176370", 2, 3, "0.017")]
    [InlineData("0.0176370", 2, 2, "0.01")]    // no more places than are asked for
    [InlineData("1.999", 3, 6, "1.99")]
    [InlineData("10.99", 3, 6, "10.9")]
    [InlineData("1234.5", 2, 6, "1234")]       // whole units are always kept
    [InlineData("0", 3, 2, "0")]
    public void Significant_figures_are_counted_from_the_first_that_is_not_zero(string figure, int significant, int places, string cut) =>
        Assert.Equal(cut,
            RoundedDown.Text(RoundedDown.To(decimal.Parse(figure, System.Globalization.CultureInfo.InvariantCulture), significant,
                places)));

    [Fact]
    public void A_figure_is_written_without_zeros_that_say_nothing() =>
        Assert.Equal(["1.5", "4", "0.03", "100"], new[] { 1.50m, 4.00m, 0.030m, 100m }.Select(RoundedDown.Text));
}
