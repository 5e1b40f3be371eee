using LabelForge.Print.Lettering;
using SkiaSharp;

namespace LabelForge.Print.Drawing;

/// <summary>Draws text and bars on a Skia canvas whose unit is the point.</summary>
internal static class LabelPainter
{
    public static void Paint(SKCanvas canvas, LabelLayout label, double left, double top, DrawnFaces? faces = null)
    {
        ArtPainter.PaintUnder(canvas, label, left, top);
        using var ink = new SKPaint { Color = ArtPainter.Of(label.Design.Ink), IsAntialias = true };
        using var bars = new SKPaint { IsAntialias = false };
        foreach (var bar in label.Bars)
        {
            bars.Color = ArtPainter.Of(bar.Ink ?? label.Design.Ink);
            canvas.DrawRect(SKRect.Create((float)(left + bar.X), (float)(top + bar.Y), (float)bar.Width, (float)bar.Height), bars);
        }
        foreach (var line in label.Lines)
        {
            ink.Color = ArtPainter.Of(line.Ink ?? label.Design.Ink);
            if (line.Radius != 0)
            {
                PaintOnCircle(canvas, line, left, top, ink, faces);
                continue;
            }
            var state = canvas.Save();
            if (line.Turned || line.Upright)
                canvas.RotateDegrees(line.Turned ? 180 : -90, (float)(left + line.X), (float)(top + line.Y));
            Paint(canvas, line.Text, left + line.X, top + line.Y, ink, faces);
            canvas.RestoreToCount(state);
        }
    }

    public static void Paint(SKCanvas canvas, MeasuredText text, double x, double baseline, SKPaint ink, DrawnFaces? faces = null)
    {
        if (text.Shape.Glyphs.IsEmpty)
            return;
        using var font = FontOf(text.Face, text.Size, faces);
        using var builder = new SKTextBlobBuilder();
        var places = text.Shape.Offsets.Select(o => new SKPoint((float)(o * text.Size), 0)).ToArray();
        builder.AddPositionedRun(text.Shape.Glyphs.AsSpan(), font, places);
        using var blob = builder.Build();
        canvas.DrawText(blob, (float)x, (float)baseline, ink);
    }

    private static void PaintOnCircle(SKCanvas canvas, PlacedLine line, double left, double top, SKPaint ink, DrawnFaces? faces)
    {
        using var font = FontOf(line.Text.Face, line.Text.Size, faces);
        foreach (var (glyph, x, y, degrees) in line.OnCircle())
        {
            var state = canvas.Save();
            canvas.Translate((float)(left + x), (float)(top + y));
            canvas.RotateDegrees((float)degrees);
            using var builder = new SKTextBlobBuilder();
            builder.AddPositionedRun([line.Text.Shape.Glyphs[glyph]], font, [SKPoint.Empty]);
            using var blob = builder.Build();
            canvas.DrawText(blob, 0, 0, ink);
            canvas.RestoreToCount(state);
        }
    }

    public static SKFont FontOf(TypeFace face, double size, DrawnFaces? faces = null) =>
        new(faces is null ? face.Typeface : faces[face], (float)size)
        {
            Hinting = SKFontHinting.None,
            Subpixel = true,
            LinearMetrics = true,
            Edging = SKFontEdging.Antialias,
        };
}
