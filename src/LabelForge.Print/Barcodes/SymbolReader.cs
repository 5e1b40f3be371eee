using SkiaSharp;
using ZXing;
using ZXing.Common;

namespace LabelForge.Print.Barcodes;

/// <summary>Reads the kinds of barcode that are printed here, from a camera's picture or a photograph.</summary>
/// <remarks>
/// What is read is the text as a scanner gives it: an element string begins with no symbology identifier, and its FNC1
/// between elements is the separator (GS1 General Specifications, 7.8.5.2, from memory).
/// </remarks>
public static class SymbolReader
{
    /// <summary>The largest picture that is looked at, in pixels: what a camera of 1920 by 1080 gives.</summary>
    public const int MostPixels = 1920 * 1080;

    // No code of a piece is shorter; of nothing but black or noise a few characters may be read.
    private const int Shortest = 6;

    // A square symbol is looked for from the middle of a picture outwards: what lies around the label hides it, and a part of
    // the picture is looked at again by itself.
    private static readonly ImmutableArray<(double Part, bool Local)> Looks = [(1, true), (0.7, true), (0.45, true), (1, false),
        (0.7, false)];

    private static readonly BarcodeFormat[] Formats = [BarcodeFormat.DATA_MATRIX, BarcodeFormat.QR_CODE, BarcodeFormat.CODE_128,
        BarcodeFormat.EAN_13, BarcodeFormat.UPC_A];

    /// <summary>Reads a picture in shades of grey.</summary>
    /// <param name="grey">A byte a pixel, row by row, 0 for black.</param>
    /// <param name="width">Pixels in a row.</param>
    /// <param name="height">Rows.</param>
    /// <returns>What the symbol says; null where none is read.</returns>
    /// <exception cref="ArgumentException">So many bytes are no picture of that size, or it is too large.</exception>
    public static string? Read(byte[] grey, int width, int height)
    {
        ArgumentNullException.ThrowIfNull(grey);
        if (width < 1 || height < 1 || (long)width * height > MostPixels || grey.Length != width * height)
            throw new ArgumentException("So many bytes are no picture of that size.", nameof(grey));
        var whole = new RGBLuminanceSource(grey, width, height, RGBLuminanceSource.BitmapFormat.Gray8);
        return Looks.Select(l => Read(l.Part == 1 ? whole : Middle(whole, l.Part), l.Local)).FirstOrDefault(t => t is not null);
    }

    /// <summary>Reads a photograph: PNG or JPEG.</summary>
    /// <returns>What the symbol says; null where none is read.</returns>
    /// <exception cref="InputException">The bytes are no picture.</exception>
    public static string? ReadPicture(byte[] picture)
    {
        ArgumentNullException.ThrowIfNull(picture);
        using var whole = GivenPicture.Decode(picture, 100_000_000, null).Dots;
        // A telephone's photograph is looked at in several sizes: a small code needs its pixels, a large one less noise.
        return new[] { 1600, 900, 480 }.Where(s => s < 1600 || Math.Max(whole.Width, whole.Height) > 900).Select(s => ReadAt(whole, s))
            .FirstOrDefault(t => t is not null);
    }

    private static string? ReadAt(SKBitmap whole, int longest)
    {
        var scale = Math.Min(1.0, (double)longest / Math.Max(whole.Width, whole.Height));
        var (width, height) = (Math.Max(1, (int)(whole.Width * scale)), Math.Max(1, (int)(whole.Height * scale)));
        using var grey = new SKBitmap(new SKImageInfo(width, height, SKColorType.Gray8, SKAlphaType.Opaque));
        using (var canvas = new SKCanvas(grey))
        using (var image = SKImage.FromBitmap(whole))
        {
            canvas.Clear(SKColors.White);
            canvas.DrawImage(image, new SKRect(0, 0, width, height), new SKSamplingOptions(SKFilterMode.Linear, SKMipmapMode.Linear));
        }
        var rows = new byte[width * height];
        for (var y = 0; y < height; y++)
            grey.GetPixelSpan().Slice(y * grey.RowBytes, width).CopyTo(rows.AsSpan(y * width));
        return (long)width * height > MostPixels ? null : Read(rows, width, height);
    }

    private static LuminanceSource Middle(LuminanceSource whole, double part)
    {
        var (width, height) = (Math.Max(1, (int)(whole.Width * part)), Math.Max(1, (int)(whole.Height * part)));
        return whole.crop((whole.Width - width) / 2, (whole.Height - height) / 2, width, height);
    }

    private static string? Read(LuminanceSource picture, bool local)
    {
        var reader = new MultiFormatReader
        {
            Hints = new Dictionary<DecodeHintType, object>
            {
                [DecodeHintType.POSSIBLE_FORMATS] = Formats.ToList(),
                [DecodeHintType.TRY_HARDER] = true,
                [DecodeHintType.ASSUME_GS1] = true,
            },
        };
        var bitmap = new BinaryBitmap(local ? new HybridBinarizer(picture) : new GlobalHistogramBinarizer(picture));
        return reader.decodeWithState(bitmap)?.Text is { } text && Element(text) is { Length: >= Shortest } read ? read : null;
    }

    // The reader of Code 128 writes an identifier before the first element, as it stands in scanners' output.
    private static string Element(string text) => text.StartsWith("]C1", StringComparison.Ordinal) ? text[3..] : text.TrimStart((char)29);
}
