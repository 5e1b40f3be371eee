using LabelForge.Markets;
using LabelForge.Measures;
using LabelForge.Quantities;

namespace LabelForge.Tests.Quantities;

public class PanelTests
{
    private static readonly DateOnly Day = new(2026, 11, 25);

    [Theory]
    [InlineData("2.5x3.5in", 63.5, 88.9)]
    [InlineData("2.5 x 3.5 in", 63.5, 88.9)]
    [InlineData("2.5in x 3.5in", 63.5, 88.9)]
    [InlineData("2.5\" × 3.5\"", 63.5, 88.9)]
    [InlineData("63.5x38.1mm", 63.5, 38.1)]
    [InlineData("6 by 4 CM", 60, 40)]
    [InlineData("25.4 mm x 1 in", 25.4, 25.4)]
    [InlineData("2 inches x 3 inches", 50.8, 76.2)]
    [InlineData("10000x1 mm", 10000, 1)]
    public void A_panel_is_read_width_first(string text, double width, double height)
    {
        var panel = Panel.Parse(text).Value!;
        Assert.Equal(((decimal)width, (decimal)height), (panel.Width!.Value.Millimetres, panel.Height!.Value.Millimetres));
    }

    [Theory]
    [InlineData("")]
    [InlineData("2.5x3.5")]
    [InlineData("2.5in")]
    [InlineData("0x3in")]
    [InlineData("-2x3in")]
    [InlineData("2,5x3,5in")]
    [InlineData("10000.1x3mm")]
    [InlineData("394x3in")]   // more than ten metres, though the figure is small
    [InlineData("99999999999999999999999999999999999x3in")]
    public void What_is_not_a_panel_is_refused_with_an_example(string text)
    {
        var refused = Panel.Parse(text);
        Assert.False(refused.IsValue);
        Assert.StartsWith($"\"{text}\"", refused.Wrong);
        Assert.NotEmpty(refused.Write);
    }

    [Fact]
    public void A_cylinder_shows_40_percent_of_height_times_circumference() // 21 CFR 701.10(b)
        => Assert.Equal(14.4m, Panel.Cylinder(Length.FromInches(4m), Length.FromInches(9m), Market.Us.On(Day)).Area.SquareInches);

    [Fact]
    public void Another_shape_shows_40_percent_of_its_surface() // 21 CFR 701.10(c)
        =>
        Assert.Equal(40m,
            Panel.OtherShape(Area.OfRectangle(Length.FromInches(10m), Length.FromInches(10m)), Market.Us.On(Day)).Area.SquareInches);
}
