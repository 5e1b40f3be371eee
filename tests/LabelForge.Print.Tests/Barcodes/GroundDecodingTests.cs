using LabelForge.Lots;
using LabelForge.Markets;
using LabelForge.Print.Barcodes;
using LabelForge.Print.Designs;
using LabelForge.Print.Drawing;
using LabelForge.Print.Fitting;
using LabelForge.Print.Lettering;
using LabelForge.Print.Ornaments;
using LabelForge.Print.Output;
using LabelForge.Print.Palettes;
using LabelForge.Print.Tests.Looks;
using SkiaSharp;

namespace LabelForge.Print.Tests.Barcodes;

/// <summary>A lot's code is read on the whole label as it is seen: in coloured ink, on coloured and dark stock, on dark.</summary>
public sealed class GroundDecodingTests : IDisposable
{
    private const string Lot = "26R25-01E";

    private static readonly Gs1ElementString Item = Gs1ElementString.ForItem(Gtin.FromPrefix("9521321", 1).Value!, lot: Lot).Value!;

    private readonly string _folder = Directory.CreateTempSubdirectory("labelforge").FullName;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    /// <summary>Hues all round on white; kraft; a pale and a dark film; black stock with white ink.</summary>
    public static TheoryData<int, string, bool> Grounds =>
    [
        (20, "#ffffff", false), (74, "#ffffff", false), (104, "#ffffff", false), (160, "#ffffff", false), (246, "#ffffff", false),
        (318, "#ffffff", false), (42, "#c9a77c", false), (200, "#e8e0c8", false), (20, "#1c1c1e", true), (246, "#5a4632", true),
    ];

    [Theory, MemberData(nameof(Grounds))]
    public void A_lot_is_read_from_every_ground(int hue, string stock, bool white)
    {
        var look = FrontTests.Of("colour-block", "bookish", OrnamentFamily.All[2], null, hue) with
        {
            Palette = Palette.Of(hue, paper: Colour.Parse(stock), whiteInk: white),
            WhiteInk = white,
        };
        Read(LabelDesign.Load("bottle-wrap-3.333x4").In(look));
    }

    [Theory]
    [InlineData("dark"), InlineData("light")]
    public void A_lot_is_read_from_a_plain_design_of_either_tone(string tone) =>
        Read(LabelDesign.Load($"bottle-wrap-3.333x4+bookish+{tone}"));

    [Theory]
    [InlineData("bar-band"), InlineData("bar-back-2x2.625")]
    public void A_lot_is_read_where_it_had_to_be_turned(string design)
    {
        InstalledProgram.OrSkip("zbarimg");
        var layout = LabelFitter.Fit(LabelDesign.Load(design).In(FrontTests.Of("stack", "bookish", OrnamentFamily.All[2], null, 20)),
            SmallRoomTests.Full, Barcode.Draw(BarcodeKind.Code128, Lot, new BarcodeOptions()).OrRefuse()).OrRefuse();
        Assert.All(layout.Bars, b => Assert.True(b.Width > b.Height));
        var path = Path.Combine(_folder, "label.png");
        LabelFile.Write(path, layout.OnStock(), Samples.Info, 300);
        Assert.Equal("CODE-128:" + Lot, Decoders.ZbarPicture(path));
    }

    private void Read(LabelDesign design)
    {
        InstalledProgram.OrSkip("zbarimg");
        InstalledProgram.OrSkip("dmtxread");
        var layout = LabelFitter.Fit(design, FrontTests.Usual(Market.Us),
            Barcode.Draw(BarcodeKind.Code128, Lot, new BarcodeOptions()).OrRefuse()).OrRefuse();
        var path = Path.Combine(_folder, "label.png");
        LabelFile.Write(path, layout.OnStock(), Samples.Info, 300);
        Assert.Equal("CODE-128:" + Lot, Decoders.ZbarPicture(path));
        var marked = LabelFitter.Fit(design, FrontTests.Usual(Market.Us), Barcode.Draw(BarcodeKind.Gs1DataMatrix, Item).OrRefuse())
            .OrRefuse();
        Assert.Equal("~" + Item.Message, Decoders.DmtxPicture(Close(marked)));
    }

    // As a scanner is held to it: the symbol with what lies round it, three millimetres each way.
    private string Close(LabelLayout label)
    {
        const int Dpi = 300;
        const double Around = 3 * 72 / 25.4;
        using var file = new MemoryStream();
        LabelFile.WritePng(file, label.OnStock(), Dpi);
        using var picture = SKBitmap.Decode(file.ToArray());
        int Dots(double points) => (int)(points * Dpi / 72);
        var bars = label.Bars.Where(b => b.Height < Points.Of(label.Design.Height) / 2).ToList();
        using var close = new SKBitmap();
        Assert.True(picture.ExtractSubset(close, new SKRectI(Dots(bars.Min(b => b.X) - Around), Dots(bars.Min(b => b.Y) - Around),
            Math.Min(picture.Width, Dots(bars.Max(b => b.X + b.Width) + Around)),
            Math.Min(picture.Height, Dots(bars.Max(b => b.Y + b.Height) + Around)))));
        var path = Path.Combine(_folder, "close.png");
        using var written = File.Create(path);
        close.Encode(written, SKEncodedImageFormat.Png, 100);
        return path;
    }
}
