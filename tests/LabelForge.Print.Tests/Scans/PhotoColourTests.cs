using LabelForge.Print.Palettes;
using LabelForge.Print.Scans;
using SkiaSharp;

namespace LabelForge.Print.Tests.Scans;

public class PhotoColourTests
{
    private static readonly Colour Soap = new(0x8a, 0x5a, 0xa0);

    [Fact]
    public void The_colour_round_a_place_is_taken_and_glints_and_shadows_are_not()
    {
        var photo = Photo((x, y) => (x + y) % 9 == 0
            ? SKColors.White
            : (x + y) % 9 == 1
            ? SKColors.Black
            : new SKColor(Soap.Red, Soap.Green, Soap.Blue));
        Assert.True(Oklch.Distance(Soap, PhotoColour.Of(photo, PicturePlace.Middle)) < 0.004);
    }

    // The light of a bulb, channel by channel: what is white is seen as it.
    [Fact]
    public void A_white_sheet_in_the_same_light_takes_the_light_out()
    {
        (double R, double G, double B) bulb = (0.95, 0.75, 0.45);
        SKColor Lit(Colour colour)
        {
            var lit = Oklch.FromLinear(Colour.Linear(colour.Red) * bulb.R, Colour.Linear(colour.Green) * bulb.G,
                Colour.Linear(colour.Blue) * bulb.B);
            return new SKColor(lit.Red, lit.Green, lit.Blue);
        }
        // Paper that reflects nine tenths.
        var sheet = Oklch.FromLinear(0.9, 0.9, 0.9);
        var photo = Photo((x, _) => Lit(x < 40 ? sheet : Soap));
        Assert.True(Oklch.Distance(Soap, PhotoColour.Of(photo, new(80, 50))) > 0.05);
        Assert.True(Oklch.Distance(Soap, PhotoColour.Of(photo, new(80, 50), new(10, 50))) < 0.01);
    }

    [Theory]
    [InlineData("50,50", true)]
    [InlineData("12.5 %, 80 %", true)]
    [InlineData("50", false)]
    [InlineData("50,101", false)]
    [InlineData("-1,20", false)]
    [InlineData("a,b", false)]
    public void A_place_is_two_figures_from_0_to_100(string text, bool isOne) => Assert.Equal(isOne, PicturePlace.Parse(text) is not null);

    private static ColourPicture Photo(Func<int, int, SKColor> dot)
    {
        using var bitmap = new SKBitmap(120, 90);
        for (var y = 0; y < 90; y++)
            for (var x = 0; x < 120; x++)
                bitmap.SetPixel(x, y, dot(x, y));
        using var file = bitmap.Encode(SKEncodedImageFormat.Png, 100);
        return ColourPicture.Of(file.ToArray(), "soap.png");
    }
}
