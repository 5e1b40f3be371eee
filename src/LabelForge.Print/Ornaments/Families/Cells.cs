namespace LabelForge.Print.Ornaments.Families;

/// <summary>Cells side by side: pebbles, comb, bubbles.</summary>
internal static class Cells
{
    /// <summary>
    /// Pebbles: Voronoi cells (1908) of points evened out by Lloyd's relaxation (1982), in a space stretched sideways, drawn in from
    /// their edges, their corners cut three times (Chaikin 1974). Some are hatched.
    /// </summary>
    public static void Pebbles(OrnamentField f, OrnamentPen pen)
    {
        const double Stretch = 1.6;
        var s = f.Size;
        var flat = f with { Width = f.Width / Stretch };
        var sites = PoissonDiscs.In(flat, 2.15 * s, 2 * s);
        for (var pass = 0; pass < 2; pass++)
            sites = [.. sites.Select(p => Centre(Cell(p, sites, 4 * s)))];
        var index = 0;
        foreach (var site in sites)
        {
            var corners = Cell(site, sites, 4 * s).Select(c => new Spot(c.X * Stretch, c.Y)).ToList();
            var middle = Centre(corners);
            var shrink = 1 - (0.42 / Math.Sqrt(f.Weight)) * s / Math.Max(0.8 * s, corners.Average(c => c.To(middle)));
            corners = [.. corners.Select(c => middle + (c - middle) * shrink)];
            for (var i = 0; i < 3; i++)
                corners = Cut(corners);
            var kind = index++ % 10;
            if (kind is 3 or 8)
                Hatched(pen, corners, 0.42 * s, f.Weight);
            else
                pen.Fill(kind is 1 or 6 ? OrnamentInk.Second : OrnamentInk.First, Outlines.Polyline(corners, closed: true));
        }
    }

    /// <summary>Honeycomb: the hexagons that hold most for the least wall (Hales, "The honeycomb
    /// conjecture", 2001), some full, some empty, in drifts of noise.</summary>
    public static void Comb(OrnamentField f, OrnamentPen pen)
    {
        var (r, noise) = (1.75 * f.Size, new Noise(f.Chance));
        var (dx, dy) = (r * Math.Sqrt(3), r * 1.5);
        for (var row = -1; row * dy < f.Height + r; row++)
        {
            for (var column = -1; column * dx < f.Width + dx; column++)
            {
                var at = new Spot((column + (row % 2 == 0 ? 0 : 0.5)) * dx, row * dy);
                var full = noise.Rough(at.X / 9, at.Y / 9) + f.Chance.Between(-0.12, 0.12);
                if (full < -0.42)
                    continue;
                var outline = Hexagon(at, r * 0.86);
                if (full > 0.2)
                    pen.Fill(OrnamentInk.Second, outline);
                else if (full > -0.08)
                    pen.Fill(OrnamentInk.First, outline);
                else
                    pen.Line(OrnamentInk.First, 0.3 * f.Size * f.Weight, Hexagon(at, r * 0.8));
                if (full is > 0.2 and < 0.32)
                    pen.Dot(OrnamentInk.First, at, r * 0.3);
            }
        }
    }

    /// <summary>Bubbles: circles as large as what is there leaves room for, each touched by a
    /// small light; after the packings of Apollonius.</summary>
    public static void Bubbles(OrnamentField f, OrnamentPen pen)
    {
        var s = f.Size;
        var placed = new List<(Spot At, double R)>();
        for (var i = 0; i < 2600; i++)
        {
            var p = new Spot(f.Chance.Between(-2, f.Width + 2), f.Chance.Between(-2, f.Height + 2));
            var room = placed.Count == 0 ? 3.4 * s : placed.Min(b => b.At.To(p) - b.R);
            var most = (0.5 + 2.9 * Math.Pow(Math.Clamp(p.Y / f.Height, 0, 1), 1.4)) * s;
            if (room - 0.16 * s is var r && r > 0.3 * s)
                placed.Add((p, Math.Min(r, Math.Max(0.34 * s, most))));
        }
        foreach (var (at, r) in placed)
        {
            pen.Line(OrnamentInk.First, Math.Min(0.3, 0.12 + 0.07 * r) * f.Weight, Outlines.Circle(at, r));
            if (r > 0.7 * s)
                pen.Line(OrnamentInk.Second, 0.24 * s * f.Weight,
                    Outlines.Smooth(Outlines.Points(6, t => at + Spot.At(3.5 + 1.1 * t, r * 0.68))));
            else if (r < 0.42 * s)
                pen.Dot(OrnamentInk.Second, at, r * 0.62);
        }
    }

    private static string Hexagon(Spot at, double r) =>
        Outlines.Polyline([.. Enumerable.Range(0, 6).Select(i => at + Spot.At(Math.PI / 6 + i * Math.PI / 3, r))], closed: true);

    // The part of a square round a site that is nearer to it than to any other site.
    internal static List<Spot> Cell(Spot site, List<Spot> sites, double reach)
    {
        List<Spot> cell = [site + new Spot(-reach, -reach), site + new Spot(reach, -reach), site + new Spot(reach, reach),
            site + new Spot(-reach, reach)];
        foreach (var other in sites)
        {
            var way = other - site;
            if (way.Length < 1e-9 || way.Length > 2.9 * reach)
                continue;
            var middle = site + way * 0.5;
            double Beyond(Spot p) => (p.X - middle.X) * way.X + (p.Y - middle.Y) * way.Y;
            var kept = new List<Spot>();
            for (var i = 0; i < cell.Count; i++)
            {
                var (a, b) = (cell[i], cell[(i + 1) % cell.Count]);
                var (da, db) = (Beyond(a), Beyond(b));
                if (da <= 0)
                    kept.Add(a);
                if (da * db < 0)
                    kept.Add(Spot.Mix(a, b, da / (da - db)));
            }
            cell = kept;
        }
        return cell;
    }

    internal static Spot Centre(IReadOnlyList<Spot> corners)
    {
        double area = 0, x = 0, y = 0;
        for (var i = 0; i < corners.Count; i++)
        {
            var (a, b) = (corners[i], corners[(i + 1) % corners.Count]);
            var cross = a.X * b.Y - b.X * a.Y;
            (area, x, y) = (area + cross, x + (a.X + b.X) * cross, y + (a.Y + b.Y) * cross);
        }
        return Math.Abs(area) < 1e-9 ? corners[0] : new Spot(x / (3 * area), y / (3 * area));
    }

    private static List<Spot> Cut(List<Spot> corners) =>
        [
            .. corners.SelectMany((c,
                i) => new[] { Spot.Mix(c, corners[(i + 1) % corners.Count], 0.25), Spot.Mix(c, corners[(i + 1) % corners.Count], 0.75) })];

    private static void Hatched(OrnamentPen pen, List<Spot> corners, double apart, double weight)
    {
        for (var y = corners.Min(c => c.Y) + apart / 2; y < corners.Max(c => c.Y); y += apart)
        {
            var crossings = corners.Zip(corners.Skip(1).Append(corners[0]))
                .Where(e => (e.First.Y <= y) != (e.Second.Y <= y))
                .Select(e => Spot.Mix(e.First, e.Second, (y - e.First.Y) / (e.Second.Y - e.First.Y)).X).Order().ToList();
            if (crossings.Count == 2)
                pen.Line(OrnamentInk.First, 0.17 * weight, Outlines.Polyline([new(crossings[0], y), new(crossings[1], y)]));
        }
    }
}
