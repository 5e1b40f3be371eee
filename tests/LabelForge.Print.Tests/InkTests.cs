using LabelForge.Markets;
using LabelForge.Print.Designs;
using LabelForge.Print.Drawing;
using LabelForge.Print.Fitting;
using LabelForge.Print.Ornaments;
using LabelForge.Print.Proofs;
using LabelForge.Print.Tests.Looks;

namespace LabelForge.Print.Tests;

public class InkTests
{
    private static readonly LabelLayout Plain = LabelFitter.Fit(LabelDesign.Load("bar-2x4"), Samples.Bar, Samples.Block()).OrRefuse();

    private static readonly LabelLayout Looked = LabelFitter.Fit(LabelDesign.Load("bar-2x4")
        .In(FrontTests.Of("colour-block", "bookish", OrnamentFamily.All[0], null, 350)), FrontTests.Usual(Market.Us), Samples.Block())
        .OrRefuse();

    private static LabelLayout Empty => Plain with { Lines = [], Bars = [], Drawings = [], Shapes = [], Images = [] };

    [Fact]
    public void A_bar_takes_as_much_ink_as_it_is_large()
    {
        // 4 x 2 in are 288 x 144 points.
        var black = InkCoverage.Of(Empty with { Bars = [new PlacedBar(72, 36, 144, 72, Colour.Black)] });
        Assert.Equal(25, black.Black, 0.01);
        Assert.Equal(25, black.Percent, 0.01);
        var red = InkCoverage.Of(Empty with { Bars = [new PlacedBar(0, 0, 288, 144, new Colour(255, 0, 0))] });
        Assert.Equal((0, 100, 100, 0),
            (Math.Round(red.Cyan, 6), Math.Round(red.Magenta, 6), Math.Round(red.Yellow, 6), Math.Round(red.Black, 6)));
    }

    [Fact] // IEC 61966-2-1: the value 188 reflects 50.3 percent of the light.
    public void A_grey_of_half_the_light_is_half_a_solid() =>
        Assert.Equal(49.7, InkCoverage.Of(Empty with { Bars = [new PlacedBar(0, 0, 288, 144, new Colour(188, 188, 188))] }).Black, 0.1);

    [Fact]
    public void White_and_the_colour_of_the_stock_take_none()
    {
        var kraft = Empty with
        {
            Design = Empty.Design with { Ground = Colour.Parse("#c9a77c")!.Value, GroundIsStock = true },
            Bars = [new PlacedBar(0, 0, 100, 100, Colour.White)],
        };
        Assert.Equal(0, InkCoverage.Of(kraft).Percent, 1e-9);
    }

    [Fact]
    public void A_solid_plate_takes_more_than_letters_alone()
    {
        var (letters, plate) = (InkCoverage.Of(Plain).Percent, InkCoverage.Of(Looked).Percent);
        Assert.InRange(letters, 2, 15);
        Assert.True(plate > 2 * letters, $"{plate} and {letters}");
    }

    [Fact]
    public void In_grey_every_contrast_stays_what_it_was()
    {
        Assert.True(GreyLabel.HasColour(Looked));
        var grey = GreyLabel.Of(Looked);
        Assert.False(GreyLabel.HasColour(grey));
        foreach (var (line, was) in grey.Lines.Zip(Looked.Lines))
        {
            var (now, before) = (Colour.Contrast(line.Ink ?? grey.Design.Ink, line.Ground ?? grey.Design.Ground),
                Colour.Contrast(was.Ink ?? Looked.Design.Ink, was.Ground ?? Looked.Design.Ground));
            // A stored value is one of 256.
            Assert.InRange(now / before, 0.96, 1.04);
        }
    }
}
