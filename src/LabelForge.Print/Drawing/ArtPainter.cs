using LabelForge.Print.Designs;
using LabelForge.Print.Lettering;
using SkiaSharp;

namespace LabelForge.Print.Drawing;

/// <summary>Draws what stands under a label's letters: its ground with bleed, symbols and art.</summary>
internal static class ArtPainter
{
    public static SKColor Of(Colour colour) => new(colour.Red, colour.Green, colour.Blue);

    public static void PaintUnder(SKCanvas canvas, LabelLayout label, double left, double top)
    {
        if (label.Design.HasGround)
            PaintGround(canvas, label.Design, left, top);
        foreach (var drawing in label.Drawings)
            Paint(canvas, drawing, left, top);
        foreach (var image in label.Images)
            Paint(canvas, image, left, top);
        foreach (var shape in label.Shapes)
            Paint(canvas, shape, left, top);
    }

    private static void PaintGround(SKCanvas canvas, LabelDesign design, double left, double top)
    {
        using var ground = new SKPaint { Color = Of(design.Ground), IsAntialias = design.Round };
        var bleed = Points.Of(design.Bleed);
        var area = SKRect.Create((float)(left - bleed), (float)(top - bleed), (float)(Points.Of(design.Width) + 2 * bleed),
            (float)(Points.Of(design.Height) + 2 * bleed));
        if (design.Round)
            canvas.DrawOval(area, ground);
        else
            canvas.DrawRect(area, ground);
    }

    private static void Paint(SKCanvas canvas, PlacedDrawing drawing, double left, double top)
    {
        var state = canvas.Save();
        canvas.Translate((float)(left + drawing.X), (float)(top + drawing.Y));
        canvas.Scale((float)(drawing.Turned ? -drawing.Scale : drawing.Scale));
        if (drawing.Clip is { } outline)
        {
            using var clip = SKPath.ParseSvgPathData(outline);
            canvas.ClipPath(clip, SKClipOperation.Intersect, antialias: true);
        }
        foreach (var part in drawing.Paths)
        {
            using var path = SKPath.ParseSvgPathData(part.Data);
            Paint(canvas, path, part.Fill, part.Stroke, part.StrokeWidth);
        }
        canvas.RestoreToCount(state);
    }

    private static void Paint(SKCanvas canvas, SKPath path, Colour? fill, Colour? stroke, double strokeWidth)
    {
        if (fill is { } inside)
        {
            using var paint = new SKPaint { Color = Of(inside), IsAntialias = true };
            canvas.DrawPath(path, paint);
        }
        if (stroke is { } line)
        {
            using var paint = new SKPaint
            {
                Color = Of(line),
                IsAntialias = true,
                Style = SKPaintStyle.Stroke,
                StrokeWidth = (float)strokeWidth,
                StrokeJoin = SKStrokeJoin.Round,
                StrokeCap = SKStrokeCap.Round,
            };
            canvas.DrawPath(path, paint);
        }
    }

    private static void Paint(SKCanvas canvas, PlacedShape shape, double left, double top)
    {
        using var path = SKPath.ParseSvgPathData(shape.Path);
        if (path is null)
            return;
        var state = canvas.Save();
        canvas.Translate((float)(left + shape.X), (float)(top + shape.Y));
        canvas.Scale((float)(shape.Turned ? -shape.Scale : shape.Scale));
        Paint(canvas, path, shape.Fill, shape.Stroke, shape.StrokeWidth);
        canvas.RestoreToCount(state);
    }

    private static void Paint(SKCanvas canvas, PlacedImage image, double left, double top)
    {
        using var bitmap = SKImage.FromEncodedData(image.Bytes.AsSpan());
        var state = canvas.Save();
        if (image.Clip is { } clip)
        {
            using var outline = SKPath.ParseSvgPathData(clip.Outline);
            outline.Transform(SKMatrix.CreateScaleTranslation((float)clip.Scale, (float)clip.Scale, (float)(left + clip.X),
                (float)(top + clip.Y)));
            canvas.ClipPath(outline, SKClipOperation.Intersect, antialias: true);
        }
        if (image.Turned)
            canvas.RotateDegrees(180, (float)(left + image.X + image.Width / 2), (float)(top + image.Y + image.Height / 2));
        canvas.DrawImage(bitmap, SKRect.Create((float)(left + image.X), (float)(top + image.Y), (float)image.Width, (float)image.Height),
            new SKSamplingOptions(SKCubicResampler.Mitchell));
        canvas.RestoreToCount(state);
    }
}
