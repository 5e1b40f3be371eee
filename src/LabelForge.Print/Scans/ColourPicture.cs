using SkiaSharp;

namespace LabelForge.Print.Scans;

/// <summary>A photo's dots in colour.</summary>
public sealed class ColourPicture
{
    private readonly byte[] _dots;

    private ColourPicture(int width, int height, byte[] dots) => (Width, Height, _dots) = (width, height, dots);

    /// <summary>Dots across.</summary>
    public int Width { get; }

    /// <summary>Dots down.</summary>
    public int Height { get; }

    /// <summary>The colour of a dot.</summary>
    public Colour At(int x, int y) => new(_dots[4 * (y * Width + x)], _dots[4 * (y * Width + x) + 1], _dots[4 * (y * Width + x) + 2]);

    /// <summary>The photo as a JPEG of at most so many dots across or down.</summary>
    public byte[] Small(int most)
    {
        using var whole = new SKBitmap(new SKImageInfo(Width, Height, SKColorType.Rgba8888, SKAlphaType.Opaque));
        _dots.CopyTo(whole.GetPixelSpan());
        var scale = Math.Min(1, most / (double)Math.Max(Width, Height));
        using var small = whole.Resize(new SKImageInfo(Math.Max(1, (int)(Width * scale)), Math.Max(1, (int)(Height * scale))),
            new SKSamplingOptions(SKFilterMode.Linear, SKMipmapMode.Linear));
        using var file = small.Encode(SKEncodedImageFormat.Jpeg, 85);
        return file.ToArray();
    }

    /// <summary>Reads a PNG or a JPEG.</summary>
    /// <exception cref="InputException">There is no such file, or it is no picture that can be read.</exception>
    public static ColourPicture Read(string path) => Of(PictureDots.BytesOf(path), path);

    /// <summary>Reads a PNG or a JPEG that somebody gave.</summary>
    /// <param name="bytes">The file.</param>
    /// <param name="shownAs">Its name, for messages.</param>
    /// <exception cref="InputException">It is no picture that can be read.</exception>
    public static ColourPicture Of(byte[] bytes, string shownAs)
    {
        using var bitmap = PictureDots.Decoded(bytes, shownAs);
        return new ColourPicture(bitmap.Width, bitmap.Height, bitmap.GetPixelSpan().ToArray());
    }
}

/// <summary>Decodes pictures that somebody took, within limits: what the head claims decides whether the rest is decoded at all.</summary>
internal static class PictureDots
{
    private const long LargestFile = 60_000_000;

    // A sheet at 600 dots to the inch has 34 million.
    private const long MostDots = 80_000_000;

    public static byte[] BytesOf(string path)
    {
        if (!File.Exists(path))
            throw new InputException(path, 0, "scan.no-such-file");
        if (new FileInfo(path).Length > LargestFile)
            throw new InputException(path, 0, "scan.too-large");
        return File.ReadAllBytes(path);
    }

    public static SKBitmap Decoded(byte[] bytes, string path)
    {
        var (bitmap, origin) = GivenPicture.Decode(bytes, MostDots, path);
        using var stored = bitmap;
        return Upright(stored, origin);
    }

    // Cameras lay their pictures on the side and say so.
    private static SKBitmap Upright(SKBitmap bitmap, SKEncodedOrigin origin)
    {
        var degrees = origin switch
        {
            SKEncodedOrigin.BottomRight => 180,
            SKEncodedOrigin.RightTop => 90,
            SKEncodedOrigin.LeftBottom => 270,
            _ => 0,
        };
        var (width, height) = degrees is 90 or 270 ? (bitmap.Height, bitmap.Width) : (bitmap.Width, bitmap.Height);
        var turned = new SKBitmap(width, height, SKColorType.Rgba8888, SKAlphaType.Premul);
        using var canvas = new SKCanvas(turned);
        canvas.Clear(SKColors.White);
        canvas.Translate(width / 2f, height / 2f);
        canvas.RotateDegrees(degrees);
        canvas.DrawBitmap(bitmap, -bitmap.Width / 2f, -bitmap.Height / 2f, new SKSamplingOptions(SKFilterMode.Nearest));
        return turned;
    }
}
