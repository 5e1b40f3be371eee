using SkiaSharp;

namespace LabelForge.Print.Output;

/// <summary>What all drawings share when they become files: the kind by the path's ending, and PNG from points.</summary>
internal static class DrawnFile
{
    private const double PointsPerInch = 72;

    /// <summary>Writes the kind of file that the path's ending asks for; it is whole or it is not there.</summary>
    /// <param name="path">Where: .pdf, .svg or .png.</param>
    /// <param name="what">What is written, as a refusal names it: <c>A label</c>.</param>
    /// <param name="pdf">Writes it as PDF.</param>
    /// <param name="svg">Writes it as SVG.</param>
    /// <param name="png">Writes it as PNG.</param>
    /// <exception cref="InputException">The ending is none of the three, or the file cannot be written.</exception>
    public static void Write(string path, string what, Action<Stream> pdf, Action<Stream> svg, Action<Stream> png) =>
        AtomicFile.Write(path, Path.GetExtension(path).ToLowerInvariant() switch
        {
            ".pdf" => pdf,
            ".svg" => svg,
            ".png" => png,
            var other => throw new InputException(path, 0, "output.picture-kind", ("what", what), ("other", other)),
        });

    /// <summary>Writes a PNG on white.</summary>
    /// <param name="stream">Where to.</param>
    /// <param name="width">The width in points.</param>
    /// <param name="height">The height in points.</param>
    /// <param name="dotsPerInch">Dots to the inch.</param>
    /// <param name="paint">Paints in points.</param>
    public static void WritePng(Stream stream, double width, double height, int dotsPerInch, Action<SKCanvas> paint) =>
        WriteScaledPng(stream, width, height, dotsPerInch / PointsPerInch, paint);

    /// <summary>Writes a PNG on white.</summary>
    /// <param name="stream">Where to.</param>
    /// <param name="width">The width in points.</param>
    /// <param name="height">The height in points.</param>
    /// <param name="scale">Dots to the point.</param>
    /// <param name="paint">Paints in points.</param>
    public static void WriteScaledPng(Stream stream, double width, double height, double scale, Action<SKCanvas> paint)
    {
        using var surface = SKSurface.Create(new SKImageInfo((int)Math.Ceiling(width * scale - 1e-6),
            (int)Math.Ceiling(height * scale - 1e-6), SKColorType.Rgba8888, SKAlphaType.Opaque));
        surface.Canvas.Clear(SKColors.White);
        surface.Canvas.Scale((float)scale);
        paint(surface.Canvas);
        using var image = surface.Snapshot();
        using var data = image.Encode(SKEncodedImageFormat.Png, 100);
        data.SaveTo(stream);
    }
}
