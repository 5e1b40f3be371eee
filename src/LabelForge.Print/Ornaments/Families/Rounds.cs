namespace LabelForge.Print.Ornaments.Families;

/// <summary>What turns about a middle: rings, rays, rosettes, slices, snow.</summary>
internal static class Rounds
{
    /// <summary>Rain on water: rings about Poisson discs, seen aslant, each nearer one covering those behind.</summary>
    public static void Rain(OrnamentField f, OrnamentPen pen)
    {
        var s = f.Size;
        const double Squeeze = 0.6;
        var far = f with { Height = f.Height / Squeeze };
        foreach (var p in PoissonDiscs.In(far, 5.2 * s, 3 * s).OrderBy(p => p.Y))
        {
            var (at, r) = (new Spot(p.X, p.Y * Squeeze), f.Chance.Between(3.1, 4.1) * s);
            pen.Fill(OrnamentInk.Ground, Outlines.Ellipse(at, r, r * Squeeze, 0));
            var rings = 4 + f.Chance.Below(2);
            for (var i = rings; i >= 1; i--)
                pen.Line(i == rings - 1 ? OrnamentInk.Second : OrnamentInk.First, (0.13 + 0.035 * i) * f.Weight * Math.Sqrt(s),
                    Outlines.Ellipse(at, r * i / rings, r * i / rings * Squeeze, 0));
            pen.Dot(OrnamentInk.First, at, 0.16 * s);
        }
    }

    /// <summary>A sun with rays, every other one cut off at lengths that follow the golden ratio;
    /// in a narrow strip suns stand one above the other.</summary>
    public static void Rays(OrnamentField f, OrnamentPen pen)
    {
        if (f.About)
        {
            AllRound(f, pen);
            return;
        }
        var suns = f.Height > 2.1 * f.Width ? Math.Max(1, (int)Math.Round(f.Height / (1.25 * f.Width))) : 1;
        var high = f.Height / suns;
        for (var sun = 0; sun < suns; sun++)
        {
            var (top, foot) = (sun * high, new Spot(f.Width / 2, (sun + 1) * high));
            pen.Fill(OrnamentInk.Ground, Outlines.Rectangle(0, top, f.Width, high + 0.01));
            var (r, reach) = (Math.Min(high * 0.36, f.Width * 0.2), new Spot(f.Width / 2, high).Length);
            var count = (int)Math.Round(15 * f.Density) * 2;
            for (var i = 0; i <= count; i++)
            {
                var angle = -Math.PI * i / count;
                var far = i % 2 == 0 ? 1 : 0.3 + 0.55 * (i * 0.618 % 1);
                var end = r * 1.28 + (reach - r) * far;
                // A ray keeps inside its own sun's box.
                end = Math.Min(end, Math.Sin(-angle) > 1e-6 ? high / Math.Sin(-angle) * 0.999 : reach);
                var half = Math.PI / count * (i % 2 == 0 ? 0.42 : 0.24) * f.Weight;
                pen.Fill(i % 4 == 1 ? OrnamentInk.Second : OrnamentInk.First,
                    Outlines.Polyline([foot + Spot.At(angle - half, r * 1.28), foot + Spot.At(angle - half, end),
                        foot + Spot.At(angle + half, end), foot + Spot.At(angle + half, r * 1.28)], closed: true));
            }
            pen.Fill(OrnamentInk.Second,
                $"M{Outlines.Of(foot - new Spot(r, 0))}A{Outlines.Number(r)} {Outlines.Number(r)} 0 0 1 {Outlines.Of(foot + new Spot(r, 0))}Z");
        }
    }

    private static void AllRound(OrnamentField f, OrnamentPen pen)
    {
        var (count, reach) = (2 * (int)Math.Round(24 * f.Density), Math.Max(f.Width, f.Height));
        for (var i = 0; i < count; i++)
        {
            var (angle, half) = (2 * Math.PI * i / count, Math.PI / count * (i % 2 == 0 ? 0.8 : 0.4) * f.Weight);
            pen.Fill(i % 4 == 1 ? OrnamentInk.Second : OrnamentInk.First,
                Outlines.Polyline([f.Middle, f.Middle + Spot.At(angle - half, reach), f.Middle + Spot.At(angle + half, reach)],
                    closed: true));
        }
    }

    /// <summary>A rosette of hypotrochoids and epitrochoids: a point on a circle that rolls
    /// inside or round another (Roemer 1674; the lathe work of guilloche).</summary>
    public static void Rosette(OrnamentField f, OrnamentPen pen)
    {
        var most = Math.Max(f.Width, f.Height) / 2 * 1.02;
        var (turns, petals) = (new[] { 5, 7, 8, 9 }[f.Chance.Below(4)], new[] { 14, 16, 18 }[f.Chance.Below(3)]);
        var index = 0;
        // From the rim inwards: bands of loops that touch one another.
        for (var outer = Math.Min(most, Math.Min(f.Width, f.Height) * 0.495); outer > 0.9; outer *= 0.6, index++)
        {
            var (inner, k) = (outer * 0.6, index % 2 == 0 ? petals : turns * 2);
            for (var phase = 0; phase < 3; phase++)
            {
                var shift = phase * 2 * Math.PI / (3 * k);
                var (middle, swing) = ((outer + inner) / 2, (outer - inner) / 2);
                // One trip is k loops of the rolling point; the curve closes after it.
                var points = Outlines.Points(k * 14 + 1,
                    t => f.Middle + Spot.At(t * 2 * Math.PI, middle) + Spot.At(-(k - 1) * t * 2 * Math.PI + k * shift, swing));
                pen.Line(index % 2 == 1 || phase == 2 ? OrnamentInk.Second : OrnamentInk.First, (0.17 + 0.004 * outer) * f.Weight,
                    Outlines.Smooth(points));
            }
        }
        pen.Dot(OrnamentInk.First, f.Middle, Math.Max(0.4, Math.Min(f.Width, f.Height) * 0.018));
    }

    /// <summary>Slices of citrus on a triangular lattice: rind, pith, and wedges with their
    /// corners rounded, each slice turned by chance.</summary>
    public static void Slices(OrnamentField f, OrnamentPen pen)
    {
        var r = 3.1 * f.Size;
        var (dx, dy) = (r * 2.3, r * 2.02);
        var start = f.Chance.Between(-1, 0);
        for (var row = 0; (row + start) * dy < f.Height + 2 * r; row++)
        {
            for (var column = -1; column * dx < f.Width + 2 * r; column++)
            {
                var at = new Spot((column + (row % 2 == 0 ? 0.2 : 0.7)) * dx,
                    (row + start + 0.6) * dy) + new Spot(f.Chance.Between(-0.2, 0.2), f.Chance.Between(-0.2, 0.2)) * r;
                Slice(pen, at, r * f.Chance.Between(0.9, 1.04), f.Chance.Unit() * 6.28, 8 + f.Chance.Below(3), f.Weight);
                // Pips between the slices.
                pen.Fill(OrnamentInk.Second,
                    Outlines.Leaf(at + new Spot(dx / 2, dy * 0.33), f.Chance.Unit() * 6.28, 0.85 * f.Size, 0.55 * f.Size, 0.5));
            }
        }
    }

    private static void Slice(OrnamentPen pen, Spot at, double r, double turn, int wedges, double weight)
    {
        pen.Line(OrnamentInk.Second, 0.3 * Math.Sqrt(r / 3) * weight, Outlines.Circle(at, r * 0.94));
        for (var i = 0; i < wedges; i++)
        {
            var (from, to) = (turn + i * 2 * Math.PI / wedges + 0.09, turn + (i + 1) * 2 * Math.PI / wedges - 0.09);
            var middle = (from + to) / 2;
            var (foot, a, b) = (at + Spot.At(middle, r * 0.17), at + Spot.At(from, r * 0.74), at + Spot.At(to, r * 0.74));
            var crown = at + Spot.At(middle, r * 0.85);
            pen.Fill(OrnamentInk.First,
                Outlines.Smooth([foot, Spot.Mix(foot, a, 0.55), a, Spot.Mix(a, crown, 0.55) + Spot.At(middle, r * 0.03), crown,
                    Spot.Mix(b, crown, 0.55) + Spot.At(middle, r * 0.03), b, Spot.Mix(foot, b, 0.55)], closed: true));
        }
    }

    /// <summary>Snow crystals: six like arms with side branches at 60 degrees, as Kepler saw them
    /// ("De nive sexangula", 1611), each crystal its own.</summary>
    public static void Snow(OrnamentField f, OrnamentPen pen)
    {
        var s = f.Size;
        var index = 0;
        foreach (var p in PoissonDiscs.In(f, 4.4 * s, s))
        {
            var (r, turn, line) = (f.Chance.Between(1.2, 2.35) * s, f.Chance.Unit(), 0.24 * s * f.Weight);
            var ink = index++ % 4 == 3 ? OrnamentInk.Second : OrnamentInk.First;
            var branches = Enumerable.Range(0, 2 + f.Chance.Below(3))
                .Select(i => (At: 0.3 + 0.2 * i + f.Chance.Between(-0.05, 0.05), Long: f.Chance.Between(0.2, 0.46) * (1 - 0.16 * i)))
                .ToArray();
            for (var arm = 0; arm < 6; arm++)
            {
                var angle = turn + arm * Math.PI / 3;
                pen.Line(ink, line, Outlines.Polyline([p, p + Spot.At(angle, r)]));
                foreach (var (at, reach) in branches)
                    foreach (var side in new[] { Math.PI / 3, -Math.PI / 3 })
                        pen.Line(ink, line * 0.8,
                            Outlines.Polyline([p + Spot.At(angle, r * at),
                                p + Spot.At(angle, r * at) + Spot.At(angle + side, r * reach)]));
                pen.Dot(ink, p + Spot.At(angle, r), line * 0.85);
            }
        }
    }
}
