using SkiaSharp;

namespace LabelForge.Print.Drawing;

/// <summary>Draws a picture on a Skia canvas whose unit is the point.</summary>
internal static class PicturePainter
{
    public const string GreyInHex = "#808080";

    private static readonly SKColor Grey = SKColor.Parse(GreyInHex);

    public static void Paint(SKCanvas canvas, Picture picture, DrawnFaces? faces = null)
    {
        using var pen = new SKPaint { Style = SKPaintStyle.Stroke, IsAntialias = true };
        foreach (var o in picture.Outlines)
        {
            (pen.StrokeWidth, pen.Color) = ((float)o.Thickness, Of(o.Tint));
            var box = SKRect.Create((float)o.X, (float)o.Y, (float)o.Width, (float)o.Height);
            if (o.Ellipse)
                canvas.DrawOval(box, pen);
            else
                canvas.DrawRoundRect(box, (float)o.Corner, (float)o.Corner, pen);
        }
        foreach (var s in picture.Strokes)
        {
            (pen.StrokeWidth, pen.Color) = ((float)s.Thickness, Of(s.Tint));
            canvas.DrawLine((float)s.X1, (float)s.Y1, (float)s.X2, (float)s.Y2, pen);
        }
        using var ink = new SKPaint { Color = SKColors.Black, IsAntialias = true };
        foreach (var line in picture.Lines)
            LabelPainter.Paint(canvas, line.Text, line.X, line.Y, ink, faces);
    }

    private static SKColor Of(Tint tint) => tint == Tint.Grey ? Grey : SKColors.Black;
}
