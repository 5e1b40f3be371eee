namespace LabelForge.Print.Scans;

/// <summary>Finds the four edges of a light sheet on a darker ground, near where they should be.</summary>
internal static class SheetEdges
{
    // Nobody's print stands farther off than this on its sheet, in millimetres.
    private const double Reach = 24;

    private const double Step = 0.1;
    private const int Places = 90;

    // Dark to light over an edge, of 255; a sheet on a white lid has none.
    private const double LeastStep = 30;

    // So many places must show the edge.
    private const double LeastSeen = 0.5;

    /// <summary>The sheet's corners in the plane of the print: top left, top right, bottom right,
    /// bottom left, in millimetres; null where an edge cannot be seen.</summary>
    /// <param name="toPicture">From the plane of the print to the picture.</param>
    /// <param name="width">The sheet's width in millimetres.</param>
    public static (double X, double Y)[]? Corners(ScannedPicture picture, PlaneMap toPicture, double width, double height)
    {
        // Each edge as a function: how far it lies from where it should be, along it.
        var top = Edge(width, (s, d) => (s, d));
        var left = Edge(height, (s, d) => (d, s));
        var bottom = Edge(width, (s, d) => (s, height - d));
        var right = Edge(height, (s, d) => (width - d, s));
        if (top is not { } t || left is not { } l || bottom is not { } b || right is not { } r)
            return null;
        return
        [
            Crossing(y => l.At + l.Slope * y, x => t.At + t.Slope * x),
            Crossing(y => width - r.At - r.Slope * y, x => t.At + t.Slope * x),
            Crossing(y => width - r.At - r.Slope * y, x => height - b.At - b.Slope * x),
            Crossing(y => l.At + l.Slope * y, x => height - b.At - b.Slope * x),
        ];

        (double At, double Slope)? Edge(double length, Func<double, double, (double, double)> place)
        {
            var seen = new List<(double S, double D)>();
            for (var i = 0; i < Places; i++)
            {
                var s = length * (0.05 + 0.9 * i / (Places - 1));
                if (Across(d => toPicture.Apply(place(s, d)) is var (x, y) ? picture.At(x, y) : null) is { } d)
                    seen.Add((s, d));
            }
            return seen.Count < LeastSeen * Places ? null : Line(seen);
        }
    }

    // From outside inward, the first place from which it is light for a while; where exactly, by what lies half between dark and light.
    private static double? Across(Func<double, double?> brightness)
    {
        var profile = new List<(double D, double Light)>();
        for (var d = -Reach; d <= Reach; d += Step)
        {
            if (brightness(d) is { } light)
                profile.Add((d, light));
        }
        if (profile.Count < 40 || profile[^1].D < 1)
            return null;
        var dark = Median(profile.Take(12));
        var light2 = profile.Skip(profile.Count / 2).Select(p => p.Light).Order().ElementAt(profile.Count / 4);
        if (light2 - dark < LeastStep)
            return null;
        var half = (dark + light2) / 2;
        const int Stays = 12;
        for (var i = 1; i + Stays < profile.Count; i++)
        {
            if (profile[i - 1].Light < half && profile.Skip(i).Take(Stays).All(p => p.Light >= half))
                return profile[i - 1].D + Step * (half - profile[i - 1].Light) / (profile[i].Light - profile[i - 1].Light);
        }
        return null;
    }

    private static double Median(IEnumerable<(double D, double Light)> some) =>
        some.Select(p => p.Light).Order().ToList() is var all ? all[all.Count / 2] : 0;

    // The line that most agree on: least squares, what lies farthest off left out a few times.
    private static (double At, double Slope) Line(List<(double S, double D)> seen)
    {
        var kept = seen;
        var line = (At: 0.0, Slope: 0.0);
        for (var pass = 0; pass < 6; pass++)
        {
            line = Squares(kept);
            var off = kept.Select(p => Math.Abs(p.D - line.At - line.Slope * p.S)).Order().ToList();
            var most = Math.Max(0.08, 2.5 * off[off.Count / 2]);
            kept = [.. seen.Where(p => Math.Abs(p.D - line.At - line.Slope * p.S) <= most)];
            if (kept.Count < seen.Count / 2)
                kept = [.. seen.OrderBy(p => Math.Abs(p.D - line.At - line.Slope * p.S)).Take(seen.Count / 2 + 1)];
        }
        return line;
    }

    private static (double At, double Slope) Squares(List<(double S, double D)> points)
    {
        var (at, slope) = MathNet.Numerics.Fit.Line([.. points.Select(p => p.S)], [.. points.Select(p => p.D)]);
        return (at, slope);
    }

    // Where an upright edge crosses a level one; both nearly straight along an axis, so that a few rounds settle it.
    private static (double X, double Y) Crossing(Func<double, double> x, Func<double, double> y)
    {
        var point = (X: 0.0, Y: 0.0);
        for (var round = 0; round < 20; round++)
            point = (x(point.Y), y(point.X));
        return point;
    }
}
