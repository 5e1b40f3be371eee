using CsCheck;
using LabelForge.Lots;
using LabelForge.Measures;
using LabelForge.Print.Barcodes;
using SkiaSharp;

namespace LabelForge.Print.Tests.Barcodes;

/// <summary>Our own symbols, as a camera sees them: small in the picture, turned, not quite sharp, with noise and things around.</summary>
public sealed class SymbolReaderTests
{
    private static readonly Gs1ElementString Piece = Gs1ElementString.ForItem(Gtin.FromPrefix("9521321", 1).Value!, lot: "26R25-072",
        serial: "12").Value!;

    public static TheoryData<BarcodeKind, string, string> Symbols => new()
    {
        { BarcodeKind.Gs1DataMatrix, Piece.HumanReadable, Piece.Message },
        { BarcodeKind.Gs1Code128, Piece.HumanReadable, Piece.Message },
        { BarcodeKind.Code128, "26R25-072", "26R25-072" },
        { BarcodeKind.Qr, "https://id.example.com/01/09521321000018/10/26R25-072",
            "https://id.example.com/01/09521321000018/10/26R25-072" },
        { BarcodeKind.Ean13, "9521321000018", "9521321000018" },
    };

    [Theory]
    [MemberData(nameof(Symbols))]
    public void A_symbol_of_ours_is_read_in_a_cameras_picture(BarcodeKind kind, string data, string read)
    {
        var block = Barcode.Draw(kind, data).Value!;
        var turns = kind is BarcodeKind.Gs1DataMatrix or BarcodeKind.Qr ? new[] { 0f, 7f, -12f } : [0f, 2f];
        foreach (var turn in turns)
        {
            var (grey, width, height) = Frame(block, turn);
            Assert.Equal(read, SymbolReader.Read(grey, width, height));
        }
    }

    [Fact]
    public void What_is_read_of_a_piece_leads_to_its_lot()
    {
        var (grey, width, height) = Frame(Barcode.Draw(BarcodeKind.Gs1DataMatrix, Piece).Value!, 5);
        Assert.Equal("26R25-072", PieceCode.LotOf(SymbolReader.Read(grey, width, height)!).Value.ToString());
    }

    [Fact]
    public void A_photograph_is_read_and_what_is_none_is_refused()
    {
        using var photo = Picture(Barcode.Draw(BarcodeKind.Gs1DataMatrix, Piece).Value!, 4, 3200, 2400);
        using var jpeg = photo.Encode(SKEncodedImageFormat.Jpeg, 80);
        Assert.Equal(Piece.Message, SymbolReader.ReadPicture(jpeg.ToArray()));
        Assert.Contains("no picture", Assert.Throws<InputException>(() => SymbolReader.ReadPicture("%PDF-1.7"u8.ToArray())).Message,
            StringComparison.Ordinal);
    }

    // Whatever stands before the camera, nothing is made up: a code is read as it was drawn, or not at all.
    [Fact]
    public void A_picture_without_a_code_says_nothing() =>
        Gen.Select(Gen.Int[2, 90], Gen.Int[2, 90], Gen.Int).Sample((width, height, seed) =>
        {
            var grey = new byte[width * height];
            new Random(seed).NextBytes(grey);
            Assert.Null(SymbolReader.Read(grey, width, height));
        }, iter: 60);

    [Theory]
    [InlineData(0)]
    [InlineData(255)]
    public void A_lens_that_is_covered_or_blinded_says_nothing(byte all)
    {
        foreach (var (width, height) in new[] { (20, 20), (640, 480) })
            Assert.Null(SymbolReader.Read([.. Enumerable.Repeat(all, width * height)], width, height));
    }

    [Theory]
    [InlineData(10, 10, 99)]
    [InlineData(0, 10, 0)]
    [InlineData(2000, 2000, 4_000_000)]
    public void So_many_bytes_are_no_picture_of_that_size(int width, int height, int bytes) =>
        Assert.Throws<ArgumentException>(() => SymbolReader.Read(new byte[bytes], width, height));

    private static (byte[] Grey, int Width, int Height) Frame(Print.Drawing.InkBlock block, float turn)
    {
        using var picture = Picture(block, turn, 1280, 720);
        return ([.. picture.Pixels.Select(p => p.Red)], picture.Width, picture.Height);
    }

    // On a pale label on a darker table, blurred by a pixel, with noise and light that falls from one side.
    private static SKBitmap Picture(Print.Drawing.InkBlock block, float turn, int width, int height)
    {
        using var symbol = Decoders.Raster(block, 300);
        var frame = new SKBitmap(new SKImageInfo(width, height, SKColorType.Bgra8888, SKAlphaType.Opaque));
        using (var canvas = new SKCanvas(frame))
        {
            canvas.Clear(new SKColor(120, 110, 100));
            canvas.Translate(width / 2f, height / 2f);
            canvas.RotateDegrees(turn);
            var scale = Math.Min(width * (symbol.Width > 2 * symbol.Height ? 0.8f : 0.4f) / symbol.Width, height * 0.5f / symbol.Height);
            using var label = new SKPaint { Color = new SKColor(236, 232, 222) };
            canvas.DrawRect(SKRect.Create(-width * 0.42f, -height * 0.42f, width * 0.84f, height * 0.84f), label);
            canvas.Scale(scale);
            using var blur = new SKPaint
            {
                ImageFilter = SKImageFilter.CreateBlur(1.1f / scale, 1.1f / scale),
                BlendMode = SKBlendMode.Multiply,
            };
            using var image = SKImage.FromBitmap(symbol);
            canvas.DrawImage(image, -symbol.Width / 2f, -symbol.Height / 2f, new SKSamplingOptions(SKFilterMode.Linear), blur);
        }
        var random = new Random(7);
        var pixels = frame.Pixels;
        for (var i = 0; i < pixels.Length; i++)
        {
            var light = 0.75 + 0.25 * (i % width) / width;
            var grey = (byte)Math.Clamp(pixels[i].Green * light + random.Next(-9, 10), 0, 255);
            pixels[i] = new SKColor(grey, grey, grey);
        }
        frame.Pixels = pixels;
        return frame;
    }
}
