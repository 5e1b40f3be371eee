using UglyToad.PdfPig.Core;
using UglyToad.PdfPig.Graphics.Colors;

namespace LabelForge.Print.Reading;

/// <summary>An area bounded by lines, curves among them as short lines; what is inside is told by the rule it is filled by.</summary>
internal sealed class PaintedArea
{
    private const int StepsOfCurve = 8;

    // A path of more is an outline of letters or a drawing, which hides no line of text.
    private const int MostPoints = 4_000;

    private readonly List<List<PdfPoint>> rings = [];
    private IReadOnlyList<PaintedArea> cut = [];
    private int points;
    private (double Left, double Bottom, double Right,
        double Top) box = (double.MaxValue, double.MaxValue, double.MinValue, double.MinValue);

    /// <summary>Whether it is filled by the even-odd rule; else by the nonzero winding rule (ISO 32000-1, 8.5.3.3).</summary>
    public bool EvenOdd { get; set; }

    /// <summary>Where the last ring begins.</summary>
    public PdfPoint? Start => rings is [.., [var first, ..]] ? first : null;

    /// <summary>Begins a ring.</summary>
    public void Move(PdfPoint to)
    {
        rings.Add([]);
        Add(to);
    }

    /// <summary>A straight line.</summary>
    public void Line(PdfPoint to)
    {
        if (rings.Count > 0)
            Add(to);
    }

    /// <summary>A cubic curve.</summary>
    public void Curve(PdfPoint from, PdfPoint one, PdfPoint two, PdfPoint to)
    {
        for (var i = 1; i <= StepsOfCurve && rings.Count > 0; i++)
        {
            var t = i / (double)StepsOfCurve;
            var (a, b, c, d) = ((1 - t) * (1 - t) * (1 - t), 3 * t * (1 - t) * (1 - t), 3 * t * t * (1 - t), t * t * t);
            Add(new PdfPoint((a * from.X) + (b * one.X) + (c * two.X) + (d * to.X),
                (a * from.Y) + (b * one.Y) + (c * two.Y) + (d * to.Y)));
        }
    }

    /// <summary>The same area, apart from this.</summary>
    public PaintedArea Copy()
    {
        var copy = new PaintedArea { EvenOdd = EvenOdd, cut = cut, points = points, box = box };
        copy.rings.AddRange(rings.Select(r => r.ToList()));
        return copy;
    }

    /// <summary>Cuts it to others.</summary>
    public void CutTo(IEnumerable<PaintedArea> others) => cut = [.. others];

    /// <summary>Whether a point is inside, as far as that is known of a clip: a drawing too large to be followed cuts nothing.</summary>
    public bool Lets(PdfPoint at) => points is 0 or > MostPoints || Holds(at);

    /// <summary>Whether a point is inside; of a drawing too large to be followed none is.</summary>
    public bool Holds(PdfPoint at)
    {
        if (points > MostPoints || at.X < box.Left || at.X > box.Right || at.Y < box.Bottom || at.Y > box.Top)
            return false;
        var (winding, crossings) = (0, 0);
        foreach (var ring in rings)
        {
            for (var i = 0; i < ring.Count; i++)
            {
                var (a, b) = (ring[i], ring[(i + 1) % ring.Count]);
                if (a.Y > at.Y == b.Y > at.Y || at.X >= a.X + ((at.Y - a.Y) / (b.Y - a.Y) * (b.X - a.X)))
                    continue;
                crossings++;
                winding += b.Y > a.Y ? 1 : -1;
            }
        }
        return (EvenOdd ? crossings % 2 == 1 : winding != 0) && cut.All(c => c.Lets(at));
    }

    private void Add(PdfPoint point)
    {
        if (++points <= MostPoints)
            rings[^1].Add(point);
        box = (Math.Min(box.Left, point.X), Math.Min(box.Bottom, point.Y), Math.Max(box.Right, point.X), Math.Max(box.Top, point.Y));
    }
}

/// <summary>A colour as far as contrast goes: its relative luminance, 0 to 1.</summary>
internal readonly record struct Shade(double Luminance)
{
    /// <summary>Below this ratio letters are taken as not there. WCAG 2 asks 4.5 of text; this is
    /// far below what is read with ease.</summary>
    public const double LeastContrast = 2;

    /// <summary>White paper.</summary>
    public static Shade Paper => new(1);

    /// <summary>A colour laid on white with an alpha; null where it has no one colour, as a pattern.</summary>
    public static Shade? Of(IColor? colour, double alpha)
    {
        try
        {
            if (colour is null or PatternColor)
                return null;
            var (r, g, b) = colour.ToRGBValues();
            return new(Relative(On(r, alpha), On(g, alpha), On(b, alpha)));
        }
        catch (Exception e) when (e is InvalidOperationException or NotSupportedException or ArgumentException)
        {
            return null;
        }
    }

    /// <summary>The contrast with another (WCAG 2, contrast ratio): 1 to 21.</summary>
    public double Contrast(Shade other) => (Math.Max(Luminance, other.Luminance) + 0.05) / (Math.Min(Luminance, other.Luminance) + 0.05);

    private static double On(double part, double alpha) => 1 - (alpha * (1 - Math.Clamp(part, 0, 1)));

    private static double Relative(double r, double g, double b) => (0.2126 * Linear(r)) + (0.7152 * Linear(g)) + (0.0722 * Linear(b));

    private static double Linear(double part) => part <= 0.04045 ? part / 12.92 : Math.Pow((part + 0.055) / 1.055, 2.4);
}
