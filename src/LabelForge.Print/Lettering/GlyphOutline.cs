using SkiaSharp;

namespace LabelForge.Print.Lettering;

/// <summary>A glyph's outline in the face's own units, y downwards, as SVG path data that can begin anywhere: all of it but its first
/// point is said from the point before (SVG 2, 9.3).</summary>
/// <param name="X">Where it begins.</param>
/// <param name="Y">How far down it begins.</param>
/// <param name="Rest">The path data that follow.</param>
internal sealed record GlyphOutline(double X, double Y, string Rest)
{
    /// <summary>The outline with the glyph's own origin so far to the right.</summary>
    public string At(double right) => Invariant($"M{X + right:0.##} {Y:0.##}{Rest}");

    /// <summary>The outline of a path; null where it is empty, as of a space.</summary>
    /// <remarks>Points of a face lie on whole units, and between two curves of one on halves (OpenType, the glyf table); the engine
    /// that scales them is off by an eighth, so the nearest half is the face's own.</remarks>
    public static GlyphOutline? Of(SKPath? path)
    {
        if (path is null || path.IsEmpty)
            return null;
        var rest = new StringBuilder();
        var (begin, start, pen, last) = (default((double X, double Y)?), (X: 0.0, Y: 0.0), (X: 0.0, Y: 0.0), ' ');
        var points = new SKPoint[4];
        using var steps = path.CreateRawIterator();
        for (var step = steps.Next(points); step != SKPathVerb.Done; step = steps.Next(points))
        {
            switch (step)
            {
                case SKPathVerb.Move:
                    start = (Half(points[0].X), Half(points[0].Y));
                    if (begin is null)
                        begin = pen = start;
                    else
                        Say('m', start);
                    break;
                case SKPathVerb.Line:
                    Say('l', At(1));
                    break;
                case SKPathVerb.Quad:
                    Say('q', At(1), At(2));
                    break;
                case SKPathVerb.Cubic:
                    Say('c', At(1), At(2), At(3));
                    break;
                case SKPathVerb.Close:
                    rest.Append('z');
                    (pen, last) = (start, 'z');
                    break;
                default:
                    throw new InvalidDataException($"A glyph's outline has {step}, which no face has.");
            }
        }
        return begin is { } at ? new GlyphOutline(at.X, at.Y, rest.ToString()) : null;

        (double X, double Y) At(int index) => (Half(points[index].X), Half(points[index].Y));

        void Say(char how, params ReadOnlySpan<(double X, double Y)> to)
        {
            if (how != last)
                rest.Append(how);
            foreach (var point in to)
            {
                Put(point.X - pen.X);
                Put(point.Y - pen.Y);
            }
            (pen, last) = (to[^1], how);
        }

        // A sign parts two numbers as well as a space does.
        void Put(double number)
        {
            if (number >= 0 && rest.Length > 0 && !char.IsAsciiLetter(rest[^1]))
                rest.Append(' ');
            rest.Append(CultureInfo.InvariantCulture, $"{number:0.#}");
        }
    }

    private static double Half(float value) => Math.Round(value * 2.0) / 2;
}
