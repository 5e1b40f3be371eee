using System.Buffers.Binary;
using SkiaSharp;

namespace LabelForge.Print.Scans;

/// <summary>A scan or a photo as brightness: one value a dot, 0 black to 255 white, as the file stores it.</summary>
public sealed class ScannedPicture
{
    private readonly byte[] _grey;

    /// <summary>A picture of dots, row by row from the top.</summary>
    /// <param name="width">Dots across.</param>
    /// <param name="height">Dots down.</param>
    /// <param name="grey">The dots.</param>
    /// <param name="dotsPerInch">As the scanner says; null where nothing says it.</param>
    public ScannedPicture(int width, int height, byte[] grey, double? dotsPerInch)
    {
        ArgumentOutOfRangeException.ThrowIfNotEqual(grey.Length, width * height);
        (Width, Height, _grey, DotsPerInch) = (width, height, grey, dotsPerInch);
    }

    /// <summary>Dots across.</summary>
    public int Width { get; }

    /// <summary>Dots down.</summary>
    public int Height { get; }

    /// <summary>Dots to the inch, as the file says; null where it does not.</summary>
    public double? DotsPerInch { get; }

    internal byte[] Grey => _grey;

    /// <summary>Reads a PNG or a JPEG.</summary>
    /// <param name="path">The file.</param>
    /// <param name="dotsPerInch">Dots to the inch where the file does not say them or says them wrongly; null to take the file's.</param>
    /// <exception cref="InputException">There is no such file, or it is no picture that can be read.</exception>
    public static ScannedPicture Read(string path, double? dotsPerInch = null)
    {
        var bytes = PictureDots.BytesOf(path);
        using var upright = PictureDots.Decoded(bytes, path);
        return Of(upright, dotsPerInch ?? PictureDensity.Of(bytes));
    }

    /// <summary>A bitmap's brightness by the weights of ITU-R BT.601.</summary>
    public static ScannedPicture Of(SKBitmap bitmap, double? dotsPerInch)
    {
        using var plain = bitmap.Copy(SKColorType.Rgba8888);
        var grey = new byte[plain.Width * plain.Height];
        var dots = plain.GetPixelSpan();
        for (var i = 0; i < grey.Length; i++)
            grey[i] = (byte)((299 * dots[4 * i] + 587 * dots[4 * i + 1] + 114 * dots[4 * i + 2] + 500) / 1000);
        return new ScannedPicture(plain.Width, plain.Height, grey, dotsPerInch);
    }

    /// <summary>The brightness between dots, the middle of the first dot at 0.5; null outside the picture.</summary>
    internal double? At(double x, double y)
    {
        (x, y) = (x - 0.5, y - 0.5);
        var (left, top) = ((int)Math.Floor(x), (int)Math.Floor(y));
        if (left < 0 || top < 0 || left + 1 >= Width || top + 1 >= Height)
            return null;
        var (dx, dy, at) = (x - left, y - top, top * Width + left);
        return (_grey[at] * (1 - dx) + _grey[at + 1] * dx) * (1 - dy) + (_grey[at + Width] * (1 - dx) + _grey[at + Width + 1] * dx) * dy;
    }

    /// <summary>A part of it, cut at the edges.</summary>
    internal (byte[] Grey, int Width, int Height) Part(int left, int top, int width, int height)
    {
        (width, height) = (Math.Min(width, Width - left), Math.Min(height, Height - top));
        var part = new byte[width * height];
        for (var row = 0; row < height; row++)
            Array.Copy(_grey, (top + row) * Width + left, part, row * width, width);
        return (part, width, height);
    }
}

/// <summary>Dots to the inch, as picture files say them: PNG's pHYs chunk (ISO/IEC 15948,
/// 11.3.5.3), JPEG's JFIF segment (ITU-T T.871, 10.1).</summary>
internal static class PictureDensity
{
    public static double? Of(ReadOnlySpan<byte> file)
    {
        if (file.Length > 8 && file[1..4].SequenceEqual("PNG"u8))
        {
            var at = file.IndexOf("pHYs"u8);
            return at > 0 && at + 13 <= file.Length && file[at + 12] == 1
                ? Known(BinaryPrimitives.ReadUInt32BigEndian(file[(at + 4)..]) * 0.0254)
                : null;
        }
        var head = file.IndexOf("JFIF\0"u8);
        if (head is < 0 or > 64 || head + 12 > file.Length)
            return null;
        var dots = BinaryPrimitives.ReadUInt16BigEndian(file[(head + 8)..]);
        return file[head + 7] switch { 1 => Known(dots), 2 => Known(dots * 2.54), _ => null };
    }

    // 72 and 96 are what cameras and editors write where they know nothing.
    private static double? Known(double dots) => Math.Round(dots) is 72 or 96 or < 100 or > 4800 ? null : dots;
}
