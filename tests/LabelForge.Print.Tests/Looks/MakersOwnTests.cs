using LabelForge.Declarations;
using LabelForge.Markets;
using LabelForge.Measures;
using LabelForge.Print.Arrangements;
using LabelForge.Print.Designs;
using LabelForge.Print.Drawing;
using LabelForge.Print.Fitting;
using LabelForge.Print.Lettering;
using LabelForge.Print.Ornaments;
using LabelForge.Print.Palettes;
using LabelForge.Print.Proofs;
using LabelForge.Print.Sheets;
using SkiaSharp;

namespace LabelForge.Print.Tests.Looks;

/// <summary>What a maker adds to a front and moves on it: a claim, a picture for each product, sizes, the stock's own colour.</summary>
public sealed class MakersOwnTests
{
    private static readonly string[] Shapes = ["bar-front-2x2", "bottle-front-2x2.625", "jar-side-2x8", "front-round-2in"];

    public static TheoryData<string> Arrangements => [.. ArrangementFile.Known];

    [Theory, MemberData(nameof(Arrangements))]
    public void A_claim_stands_on_the_front_or_is_said_to_be_left_out(string arrangement)
    {
        foreach (var shape in Shapes)
        {
            var layout = Fitted(shape, arrangement, c => c with { Claim = "Leaves skin feeling soft" });
            FrontTests.Lawful(layout, $"{arrangement}, {shape}");
            Assert.True(layout.Texts
                .Any(t => t.Role == Role.Claim) != layout.LeftOut.Any(l => l.Contains("claim", StringComparison.Ordinal)),
                $"{arrangement}, {shape}");
        }
    }

    [Theory, MemberData(nameof(Arrangements))]
    public void A_products_own_photo_fills_the_window_or_is_said_to_be_left_out(string arrangement)
    {
        foreach (var shape in Shapes)
        {
            var layout = Fitted(shape, arrangement, art: Photo(300, 200));
            FrontTests.Lawful(layout, $"{arrangement}, {shape}");
            Assert.True(layout.Images.Length == 1 != layout.LeftOut.Any(l => l.Contains("picture", StringComparison.Ordinal)),
                $"{arrangement}, {shape}");
            if (layout.Images.IsEmpty)
                continue;
            var image = layout.Images[0];
            using var window = SKPath.ParseSvgPathData(image.Clip!.Outline);
            window.Transform(SKMatrix.CreateScaleTranslation((float)image.Clip.Scale, (float)image.Clip.Scale, (float)image.Clip.X,
                (float)image.Clip.Y));
            var box = window.Bounds;
            // Its own proportions, no edge of it inside the window, and no word on it.
            Assert.Equal(1.5, image.Width / image.Height, 3);
            Assert.True(image.X <= box.Left + 0.1
                && image.Y <= box.Top + 0.1
                && image.X + image.Width >= box.Right - 0.1
                && image.Y + image.Height >= box.Bottom - 0.1, $"{arrangement}, {shape}");
            Assert.All(layout.Lines.Where(l => !l.Upright && l.Radius == 0),
                l => Assert.False(l.X < box.Right
                    && l.X + l.Text.Width > box.Left
                    && l.Y > box.Top + 0.5
                    && l.Y - l.Text.Face.SmallLetterHeight * l.Text.Size < box.Bottom - 0.5,
                    $"{arrangement}, {shape}: {l.Text.Text} stands on the photo"));
        }
    }

    [Fact]
    public void A_drawing_stands_whole_in_the_window()
    {
        var leaf = new ArtBlock(10, 20) { Paths = [new ArtPath("M0 0H10V20H0Z", Colour.Black, null, 0, true)] };
        var layout = Fitted("bar-front-2x2", "stack", art: leaf);
        var (drawn, plate) = (layout.Shapes.Single(), layout.Drawings.Single(d => d.IsGround).Box);
        Assert.Equal(layout.Design.Look!.Palette.PlateFirst, drawn.Fill);
        Assert.True(drawn.X >= plate.Left
            && drawn.Y >= plate.Top
            && drawn.X + 10 * drawn.Scale <= plate.Left + plate.Width
            && drawn.Y + 20 * drawn.Scale <= plate.Top + plate.Height);
    }

    [Fact]
    public void A_photo_is_stored_once_however_many_labels_show_it()
    {
        var label = Fitted("bar-front-2x2", "stack", art: Photo(400, 400, noisy: true));
        long Size(int count)
        {
            var path = Path.GetTempFileName();
            SheetWriter.WritePdf(path, label,
                LabelStock.Load("us-letter-12-square-2in"), Samples.Info, count: count);
            var size = new FileInfo(path).Length;
            File.Delete(path);
            return size;
        }
        var (one, many) = (Size(1), Size(240));
        Assert.True(many - one < 40_000, $"{one} and {many}");
    }

    [Theory, MemberData(nameof(Arrangements))]
    public void A_name_is_made_smaller_and_never_smaller_than_its_least(string arrangement)
    {
        decimal Name(double size) =>
        Fitted("bar-front-2x2", arrangement, look: l => l with { NameSize = size }).Texts.Single(t => t.Role == Role.Name) is var name
            && name.LetterHeight.Millimetres >= name.RequiredFloor.Millimetres - 0.0002m
                ? name.LetterHeight.Millimetres : throw new InvalidDataException("below its least");
        var (whole, three, half) = (Name(1), Name(0.75), Name(0.5));
        Assert.True(half <= three && three < whole, $"{half}, {three}, {whole}");
    }

    [Theory, MemberData(nameof(Arrangements))]
    public void A_larger_ornament_leaves_the_name_its_proper_size(string arrangement)
    {
        foreach (var size in new[] { 0.5, 1, 1.4, 2 })
        {
            var layout = Fitted("bar-front-2x2", arrangement, look: l => l with { OrnamentSize = size });
            FrontTests.Lawful(layout, $"{arrangement} at {size}");
            var (name, net) = (layout.Texts.Single(t => t.Role == Role.Name), layout.Texts.Single(t => t.Role == Role.NetQuantity));
            Assert.True(name.LetterHeight.Millimetres >= 1.55m * net.LetterHeight.Millimetres,
                $"{arrangement} at {size}: {name.LetterHeight} over {net.LetterHeight}");
        }
    }

    [Fact]
    public void An_ornament_that_is_asked_for_larger_is_higher() =>
        Assert.True(
            Window(Fitted("bar-front-2x2", "ranged-left",
                look: l => l with { OrnamentSize = 1.4 })) > Window(Fitted("bar-front-2x2", "ranged-left",
                    look: l => l with { OrnamentSize = 0.6, NameSize = 1 })));

    [Theory]
    [InlineData("stack"), InlineData("colour-block"), InlineData("ranged-left")]
    public void The_ornament_is_moved_above_the_name_and_below_it(string arrangement)
    {
        foreach (var above in new[] { true, false })
        {
            var layout = Fitted("bar-front-2x2", arrangement, look: l => l with { OrnamentAbove = above });
            FrontTests.Lawful(layout, $"{arrangement}, {above}");
            var name = layout.Texts.Single(t => t.Role == Role.Name);
            var window = layout.Drawings.Last(d => !d.IsGround).Box;
            Assert.Equal(above, window.Top + window.Height / 2 < Points.Of(name.Y) + Points.Of(name.Height) / 2);
        }
    }

    [Theory]
    [InlineData("#c9a77c", false, true)]
    [InlineData("#1c1c1e", false, false)]
    [InlineData("#1c1c1e", true, true)]
    public void Stock_of_its_own_colour_is_shown_and_measured_and_dark_stock_without_white_ink_is_warned_of(string colour, bool white,
        bool isQuiet)
    {
        var stock = Colour.Parse(colour)!.Value;
        var layout = Fitted("bar-front-2x2", "colour-block",
            look: l => l with { Palette = Palette.Of(20, paper: stock, whiteInk: white), WhiteInk = white });
        Assert.Equal(isQuiet, !layout.LeftOut.Any(l => l.Contains("white ink", StringComparison.Ordinal)));
        Assert.All(layout.Constraints.Where(c => c.Required), c => Assert.True(c.Kept, c.Broken.Wrong));
        // To the printer the stock is nothing; to the eye it is what everything stands on.
        Assert.False(layout.Design.HasGround);
        var seen = layout.OnStock();
        Assert.True(seen.Design.HasGround);
        Assert.Equal(stock, seen.Design.Ground);
        foreach (var (line, printed) in seen.Lines.Zip(layout.Lines))
        {
            var contrast = Colour.Contrast(line.Ink ?? seen.Design.Ink, line.Ground ?? seen.Design.Ground);
            Assert.True(contrast >= (line.Role is Role.Identity or Role.NetQuantity ? Palette.RequiredContrast : Palette.DisplayContrast),
                $"{line.Text.Text}: {contrast:0.0}");
            Assert.Equal(layout.Design.Seen(printed.Ink ?? layout.Design.Ink), line.Ink ?? seen.Design.Ink);
        }
    }

    [Theory, MemberData(nameof(Arrangements))]
    public void White_ink_lies_under_all_that_is_printed_and_where_the_stock_shows_there_is_none(string arrangement)
    {
        var stock = Colour.Parse("#1c1c1e")!.Value;
        foreach (var shape in Shapes)
        {
            var layout = Fitted(shape, arrangement, art: Photo(60, 40),
                look: l => l with { Palette = Palette.Of(20, paper: stock, whiteInk: true), WhiteInk = true });
            using var seen = Pixels(layout, stock);
            using var plate = Pixels(WhitePlate.Of(layout), Colour.White);
            var (laid, bare, wide) = (0, 0, seen.Width);
            var (here, white) = (seen.Pixels, plate.Pixels);
            var dark = new SKColor(stock.Red, stock.Green, stock.Blue);
            for (var at = wide; at < here.Length - wide; at++)
            {
                // Where ink and stock meet, a dot is partly of both.
                if (at % wide == 0 || at % wide == wide - 1 || here[at - 1] != here[at] || here[at + 1] != here[at]
                    || here[at - wide] != here[at] || here[at + wide] != here[at])
                    continue;
                var shows = here[at] == dark;
                if (white[at] != (shows ? SKColors.White : SKColors.Black))
                    Assert.Fail($"{arrangement}, {shape} at {at % wide}, {at / wide}");
                (laid, bare) = (laid + (shows ? 0 : 1), bare + (shows ? 1 : 0));
            }
            Assert.True(laid > 500 && bare > 500, $"{arrangement}, {shape}: {laid} laid, {bare} bare");
        }
    }

    [Theory]
    [InlineData("#ffffff", true), InlineData("#c9a77c", false)]
    public void Where_no_white_is_laid_there_is_no_plate_of_it(string colour, bool white)
    {
        var layout = Fitted("bar-front-2x2", "stack",
            look: l => l with { Palette = Palette.Of(20, paper: Colour.Parse(colour), whiteInk: white), WhiteInk = white });
        Assert.False(WhitePlate.Has(layout));
        Assert.Equal("label.no-white-plate", Assert.Throws<InputException>(() => WhitePlate.Of(layout)).Problem.Code);
    }

    private static SKBitmap Pixels(LabelLayout layout, Colour ground)
    {
        const float Dots = 2;
        var bitmap = new SKBitmap((int)(Points.Of(layout.Design.Width) * Dots), (int)(Points.Of(layout.Design.Height) * Dots));
        using var canvas = new SKCanvas(bitmap);
        canvas.Clear(new SKColor(ground.Red, ground.Green, ground.Blue));
        canvas.Scale(Dots);
        LabelPainter.Paint(canvas, layout, 0, 0);
        return bitmap;
    }

    private static double Window(LabelLayout layout) => layout.Drawings.Last(d => !d.IsGround).Box.Height;

    private static LabelLayout Fitted(string shape, string arrangement, Func<LabelContent, LabelContent>? content = null,
        ArtBlock? art = null, Func<Look, Look>? look = null)
    {
        var says = content?.Invoke(FrontTests.Usual(Market.Us)) ?? FrontTests.Usual(Market.Us);
        var design = LabelDesign.Load(shape);
        var wanted = FrontTests.Of(arrangement, "bookish", OrnamentFamily.All[0], null, 20);
        wanted = look?.Invoke(wanted) ?? wanted;
        var extras = art is null ? LabelExtras.None : LabelExtras.None with { Art = LabelExtras.None.Art.Add(LabelExtras.Picture, art) };
        return LabelFitter.Fit(design.In(RangeFit.Over(design, wanted, [says], Samples.Block(), extras)), says, Samples.Block(), extras)
            .OrRefuse();
    }

    private static ArtBlock Photo(int width, int height, bool noisy = false)
    {
        using var bitmap = new SKBitmap(width, height);
        bitmap.Erase(SKColors.SteelBlue);
        for (var i = 0; noisy && i < width * height; i++)
            bitmap.SetPixel(i % width, i / width, new SKColor((byte)(i * 31), (byte)(i * 17 / 3), (byte)(i * 7)));
        using var file = bitmap.Encode(SKEncodedImageFormat.Jpeg, 90);
        return new ArtBlock(width, height) { Image = [.. file.ToArray()] };
    }
}
