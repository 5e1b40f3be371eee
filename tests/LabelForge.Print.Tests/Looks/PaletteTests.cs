using CsCheck;
using LabelForge.Print.Designs;
using LabelForge.Print.Palettes;

namespace LabelForge.Print.Tests.Looks;

public class PaletteTests
{
    private static readonly Gen<(double Hue, double Strength)> Any = Gen.Select(Gen.Double[0, 360], Gen.Double[0, 1.3]);

    [Fact] // WCAG 2.2, success criteria 1.4.6 (7 to 1) and 1.4.3 (4.5 to 1).
    public void What_must_be_read_is_read_on_every_ground_of_every_palette() => Any.Sample(p =>
    {
        var palette = Palette.Of(p.Hue, p.Strength);
        Assert.True(Colour.Contrast(palette.Ink, palette.Paper) >= Palette.RequiredContrast);
        Assert.True(Colour.Contrast(palette.Ink, palette.Tint) >= Palette.RequiredContrast);
        Assert.True(Colour.Contrast(palette.Deep, palette.Paper) >= Palette.RequiredContrast);
        Assert.True(Colour.Contrast(palette.OnPlate, palette.Plate) >= Palette.DisplayContrast);
        Assert.True(Colour.Contrast(palette.Deep, palette.Tint) >= Palette.DisplayContrast);
    });

    [Fact]
    public void A_laser_printer_of_one_toner_keeps_the_contrast() => Any.Sample(p =>
    {
        var grey = Palette.Of(p.Hue, p.Strength).InGrey();
        Assert.True(grey.Ink.Red == grey.Ink.Green && grey.Ink.Green == grey.Ink.Blue);
        Assert.True(Colour.Contrast(grey.Ink, grey.Paper) >= Palette.RequiredContrast * 0.98);
        Assert.True(Colour.Contrast(grey.OnPlate, grey.Plate) >= Palette.DisplayContrast * 0.98);
    });

    [Theory] // Kraft, cream, clear film over honey: by eye from common stock.
    [InlineData("#c9a77c")]
    [InlineData("#f1e7cf")]
    [InlineData("#e2b04e")]
    public void On_stock_that_shows_through_what_is_read_is_measured_as_it_is_seen_there(string stock) => Any.Sample(p =>
    {
        var paper = Colour.Parse(stock)!.Value;
        var palette = Palette.Of(p.Hue, p.Strength, paper: paper);
        Assert.False(palette.Covers);
        // Nothing printed is white to the printer, and the stock to the eye.
        Assert.Equal((Colour.White, paper), (palette.Paper, palette.Seen(palette.Paper)));
        Assert.True(Colour.Contrast(palette.Seen(palette.Ink), paper) >= Palette.RequiredContrast);
        Assert.True(Colour.Contrast(palette.Seen(palette.Ink), palette.Seen(palette.Tint)) >= Palette.RequiredContrast);
        Assert.True(Colour.Contrast(palette.Seen(palette.Deep), paper) >= Palette.RequiredContrast);
        Assert.True(Colour.Contrast(palette.Seen(palette.OnPlate), palette.Seen(palette.Plate)) >= Palette.DisplayContrast);
        Assert.True(palette.Seen(palette.Accent).Luminance <= paper.Luminance + 0.001, "No ink is lighter than what it is printed on.");
    });

    [Theory] // Clear film over amber, black card.
    [InlineData("#7a4a1e")]
    [InlineData("#1c1c1e")]
    public void Dark_stock_is_printed_light_over_white_ink(string stock) => Any.Sample(p =>
    {
        var paper = Colour.Parse(stock)!.Value;
        Assert.True(Palette.NeedsWhite(paper));
        var palette = Palette.Of(p.Hue, p.Strength, paper: paper, whiteInk: true);
        // A stock in the middle bears neither black nor white at seven to one; then as much as it can bear.
        var most = Math.Max(Colour.Contrast(Colour.Black, paper), Colour.Contrast(Colour.White, paper));
        Assert.True(Colour.Contrast(palette.Ink, paper) >= Math.Min(Palette.RequiredContrast, most * 0.97));
        Assert.True(Colour.Contrast(palette.OnPlate, palette.Plate) >= Palette.DisplayContrast);
    });

    [Fact] // CSS Color Module Level 4, section 9: red is oklch(62.796% 0.25768 29.234).
    public void Oklch_of_red_is_the_published_one()
    {
        var red = Oklch.Of(new Colour(255, 0, 0));
        Assert.Equal(0.62796, red.Lightness, 0.0002);
        Assert.Equal(0.25768, red.Chroma, 0.0002);
        Assert.Equal(29.234, red.Hue, 0.05);
        Assert.Equal(1, Oklch.Of(Colour.White).Lightness, 0.0001);
    }

    [Fact]
    public void A_colour_comes_back_from_Oklch_as_it_was() => Gen.Select(Gen.Byte, Gen.Byte, Gen.Byte).Sample((r, g, b) =>
    {
        var back = Oklch.Of(new Colour(r, g, b)).ToColour();
        Assert.True(Math.Abs(back.Red - r) <= 1 && Math.Abs(back.Green - g) <= 1 && Math.Abs(back.Blue - b) <= 1, $"{r} {g} {b}: {back}");
    });

    [Fact]
    public void Yellows_and_oranges_keep_their_colour_under_dark_letters()
    {
        Assert.All(new[] { 45.0, 76, 104 }, h => Assert.True(Palette.Of(h).PlateIsLight));
        Assert.All(new[] { 0.0, 150, 212, 300 }, h => Assert.False(Palette.Of(h).PlateIsLight));
    }
}
