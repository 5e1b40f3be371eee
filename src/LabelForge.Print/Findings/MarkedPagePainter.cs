using LabelForge.Checks;
using LabelForge.Print.Drawing;
using LabelForge.Print.Lettering;
using SkiaSharp;

namespace LabelForge.Print.Findings;

/// <summary>Draws a marked page on a canvas.</summary>
internal static class MarkedPagePainter
{
    public static void Paint(SKCanvas canvas, MarkedPage page)
    {
        using var frame = new SKPaint
        {
            Color = new SKColor(0x99, 0x99, 0x99),
            Style = SKPaintStyle.Stroke,
            StrokeWidth = 0.5f,
            IsAntialias = true,
        };
        canvas.DrawRect(0, 0, (float)page.Width, (float)page.Height, frame);
        if (page.Label is { } label)
            LabelPainter.Paint(canvas, label, 0, 0);
        using var grey = new SKPaint { Color = new SKColor(0x33, 0x33, 0x33), IsAntialias = true };
        foreach (var word in page.Words)
            Word(canvas, word, grey);
        foreach (var place in page.Marks.GroupBy(m => (m.X, m.Y, m.Width, m.Height)))
        {
            using var line = new SKPaint
            {
                Color = Colour(place.Min(m => m.Severity)),
                Style = SKPaintStyle.Stroke,
                StrokeWidth = 0.7f,
                IsAntialias = true,
            };
            canvas.DrawRect((float)place.Key.X - 1, (float)place.Key.Y - 1, (float)place.Key.Width + 2, (float)place.Key.Height + 2, line);
        }
        foreach (var first in page.Marks.GroupBy(m => m.Number).Select(g => g.First()).GroupBy(m => (m.X, m.Y)))
        {
            using var ink = new SKPaint { Color = Colour(first.Min(m => m.Severity)), IsAntialias = true };
            LabelPainter.Paint(canvas,
                MeasuredText.OfWords(BundledFaces.SemiBold, 6, [string.Join(' ', first.Select(m => m.Number))], 0, false), first.Key.X - 1,
                first.Key.Y - 2, ink);
        }
    }

    // A bar stands for a word whose letters the bundled type does not have.
    private static void Word(SKCanvas canvas, DrawnWord word, SKPaint ink)
    {
        if (word.Text.All(BundledFaces.Regular.Has) && word.Height >= 1)
            LabelPainter.Paint(canvas, MeasuredText.OfWords(BundledFaces.Regular, word.Height * 0.95, [word.Text], 0, false), word.X,
                word.Y + (word.Height * 0.82), ink);
        else
            canvas.DrawRect((float)word.X, (float)word.Y, (float)word.Width, (float)word.Height, ink);
    }

    private static SKColor Colour(Severity severity) => severity switch
    {
        Severity.Must => new SKColor(0xb0, 0x00, 0x20),
        Severity.Should => new SKColor(0xb3, 0x6b, 0x00),
        _ => new SKColor(0x4a, 0x60, 0x78),
    };
}
