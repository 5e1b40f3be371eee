using LabelForge.Print.Designs;
using LabelForge.Print.Drawing;
using LabelForge.Print.Lettering;

namespace LabelForge.Print.Looks;

/// <summary>Measures how far an ornament keeps from words: it has to stand beside them, never under them.</summary>
public static class OrnamentClearance
{
    /// <summary>The least distance, in points, from a text's ink to an ornament, a ring's or a frame's box; below zero where one lies under it.</summary>
    /// <remarks>A plain ground set over an ornament hides it: what is inside such a ground counts as clear of what lies under it.</remarks>
    public static double Of(LabelLayout layout, PlacedText text)
    {
        var (l, t) = (Points.Of(text.X), Points.Of(text.Y));
        var (r, b) = (l + Points.Of(text.Width), t + Points.Of(text.Height));
        var least = double.PositiveInfinity;
        for (var i = 0; i < layout.Drawings.Length; i++)
        {
            var drawing = layout.Drawings[i];
            if (drawing.IsGround || drawing.Clip is null || layout.Drawings.Skip(i + 1).Any(d => d.IsGround && Holds(d.Box, l, t, r, b)))
                continue;
            var box = drawing.Box;
            var (dx, dy) = (Math.Max(box.Left - r, l - box.Left - box.Width), Math.Max(box.Top - b, t - box.Top - box.Height));
            least = Math.Min(least, dx < 0 && dy < 0 ? Math.Max(dx, dy) : Math.Sqrt(Math.Pow(Math.Max(0, dx), 2) + Math.Pow(Math.Max(0, dy), 2)));
        }
        return least;
    }

    private static bool Holds((double Left, double Top, double Width, double Height) box, double l, double t, double r, double b) =>
        l >= box.Left - 0.1 && t >= box.Top - 0.1 && r <= box.Left + box.Width + 0.1 && b <= box.Top + box.Height + 0.1;
}
