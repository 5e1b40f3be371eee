using LabelForge.Print.Designs;
using LabelForge.Print.Drawing;
using LabelForge.Print.Lettering;
using SkiaSharp;

namespace LabelForge.Print.Tests.Looks;

/// <summary>Measures whether ornaments keep away from words: they stand beside them, never under them.</summary>
internal static class OrnamentClearance
{
    /// <summary>Whether every ornament keeps so far from a text.</summary>
    /// <param name="layout">The label.</param>
    /// <param name="text">One of its texts.</param>
    /// <param name="distance">In points.</param>
    /// <remarks>A plain ground set over an ornament hides it: what is inside such a ground is clear of what lies under it.</remarks>
    public static bool Keeps(LabelLayout layout, PlacedText text, double distance)
    {
        using var words = Region(layout, text, distance);
        for (var i = 0; i < layout.Drawings.Length; i++)
        {
            var drawing = layout.Drawings[i];
            if (drawing.IsGround || drawing.Clip is null || layout.Drawings.Skip(i + 1).Any(d => d.IsGround && Holds(d.Box, text)))
                continue;
            using var window = SKPath.ParseSvgPathData(drawing.Clip);
            var scale = (float)(drawing.Turned ? -drawing.Scale : drawing.Scale);
            window.Transform(SKMatrix.CreateScaleTranslation(scale, scale, (float)drawing.X, (float)drawing.Y));
            if (!words.Bounds.IntersectsWith(window.Bounds))
                continue;
            using var common = words.Op(window, SKPathOp.Intersect);
            if (common is { IsEmpty: false } && common.TightBounds is { Width: > 0.01f, Height: > 0.01f })
                return false;
        }
        return true;
    }

    // The box of straight lines; of a line on a circle, the box of each letter.
    private static SKPath Region(LabelLayout layout, PlacedText text, double distance)
    {
        var d = (float)distance;
        using var region = new SKPathBuilder();
        var round = layout.Lines.Where(l => l.Role == text.Role && l.Radius != 0).ToList();
        foreach (var line in round)
        {
            foreach (var (_, x, y, degrees) in line.OnCircle())
            {
                var (wide, high) = ((float)(line.Text.Width / line.Text.Shape.Glyphs.Length),
                    (float)(line.Text.Face.CapitalHeight * line.Text.Size));
                using var letter = new SKPathBuilder();
                letter.AddRect(new SKRect(-d, -high - d, wide + d, d));
                using var box = letter.Detach();
                box.Transform(SKMatrix.CreateRotationDegrees((float)degrees).PostConcat(SKMatrix.CreateTranslation((float)x, (float)y)));
                region.AddPath(box);
            }
        }
        if (round.Count == 0)
            region.AddRect(SKRect.Create((float)Points.Of(text.X) - d, (float)Points.Of(text.Y) - d, (float)Points.Of(text.Width) + 2 * d,
                (float)Points.Of(text.Height) + 2 * d));
        return region.Detach();
    }

    private static bool Holds((double Left, double Top, double Width, double Height) box, PlacedText text)
    {
        var (l, t) = (Points.Of(text.X), Points.Of(text.Y));
        return l >= box.Left - 0.1
            && t >= box.Top - 0.1
            && l + Points.Of(text.Width) <= box.Left + box.Width + 0.1
            && t + Points.Of(text.Height) <= box.Top + box.Height + 0.1;
    }
}
