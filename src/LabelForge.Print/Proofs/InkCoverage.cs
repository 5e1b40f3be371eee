using LabelForge.Print.Drawing;
using LabelForge.Print.Lettering;
using SkiaSharp;

namespace LabelForge.Print.Proofs;

/// <summary>
/// How much ink a label takes, as shares of its area. A colour's share is worked out from its reflectance as Murray and Davies do
/// (dot area is what is not reflected), with inks taken as perfect and what cyan, magenta and yellow have in common printed black:
/// good for holding one design against another, and no promise of what a cartridge yields.
/// </summary>
/// <param name="Cyan">Percent of the label's area as solid cyan.</param>
/// <param name="Magenta">The same in magenta.</param>
/// <param name="Yellow">The same in yellow.</param>
/// <param name="Black">The same in black.</param>
public sealed record InkCoverage(double Cyan, double Magenta, double Yellow, double Black)
{
    // Fine enough that letters of a millimetre are counted within a few hundredths of the whole: 4 dots to the point, 288 to the inch.
    private const float DotsPerPoint = 4;

    /// <summary>All inks together, from 0 to 300 percent.</summary>
    public double Percent => Cyan + Magenta + Yellow + Black;

    /// <summary>What the label takes. White is not printed, nor is the stock's own colour.</summary>
    public static InkCoverage Of(LabelLayout label)
    {
        var (width, height) = (Points.Of(label.Design.Width), Points.Of(label.Design.Height));
        using var bitmap = new SKBitmap(new SKImageInfo((int)Math.Ceiling(width * DotsPerPoint), (int)Math.Ceiling(height * DotsPerPoint),
            SKColorType.Rgba8888, SKAlphaType.Premul));
        using (var canvas = new SKCanvas(bitmap))
        {
            canvas.Clear(SKColors.White);
            canvas.Scale(DotsPerPoint);
            LabelPainter.Paint(canvas, label, 0, 0);
        }
        var absorbed = Enumerable.Range(0, 256).Select(v => 1 - Colour.Linear((byte)v)).ToArray();
        double cyan = 0, magenta = 0, yellow = 0, black = 0;
        var pixels = bitmap.GetPixelSpan();
        for (var at = 0; at < pixels.Length; at += 4)
        {
            var (c, m, y) = (absorbed[pixels[at]], absorbed[pixels[at + 1]], absorbed[pixels[at + 2]]);
            var common = Math.Min(c, Math.Min(m, y));
            (cyan, magenta, yellow, black) = (cyan + c - common, magenta + m - common, yellow + y - common, black + common);
        }
        // A round label's corners are no part of it; its area is smaller than the picture's.
        var dots = (label.Design.Round ? Math.PI / 4 : 1) * width * height * DotsPerPoint * DotsPerPoint;
        return new InkCoverage(100 * cyan / dots, 100 * magenta / dots, 100 * yellow / dots, 100 * black / dots);
    }
}
