using SkiaSharp;

namespace LabelForge.Print;

/// <summary>Pictures that come from outside: a logo, a scan, a photograph of a barcode. PNG or JPEG.</summary>
public static class GivenPicture
{
    /// <summary>Decodes a picture. Its head is read first: what that claims decides whether the rest is decoded at all.</summary>
    /// <param name="bytes">The file.</param>
    /// <param name="mostDots">How many dots it may claim.</param>
    /// <param name="file">The file as messages name it; null where it has no name.</param>
    /// <returns>The dots as they are stored, and how they are to be turned.</returns>
    /// <exception cref="InputException">It is neither, claims too many dots, or is cut short.</exception>
    public static (SKBitmap Dots, SKEncodedOrigin Origin) Decode(byte[] bytes, long mostDots, string? file)
    {
        using var data = SKData.CreateCopy(bytes);
        using var codec = SKCodec.Create(data);
        if (codec is null || codec.EncodedFormat is not (SKEncodedImageFormat.Png or SKEncodedImageFormat.Jpeg))
            throw new InputException(file, 0, "art.not-a-png-or-jpeg");
        if ((long)codec.Info.Width * codec.Info.Height is var dots && (dots == 0 || dots > mostDots))
            throw new InputException(file, 0, "art.too-many-dots", ("width", codec.Info.Width), ("height", codec.Info.Height),
                ("most", mostDots / 1_000_000));
        return (SKBitmap.Decode(codec) ?? throw new InputException(file, 0, "art.undecodable"), codec.EncodedOrigin);
    }
}
