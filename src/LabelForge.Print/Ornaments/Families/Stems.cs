namespace LabelForge.Print.Ornaments.Families;

/// <summary>
/// Plants that stand side by side, each a bent axis with organs at regular nodes: after the plant models of Prusinkiewicz and
/// Lindenmayer, "The algorithmic beauty of plants" (1990), chapters 1 and 3.
/// </summary>
internal static class Stems
{
    // The places of plants: across the box by turns tall and short, so that heads do not hide one another.
    private static IEnumerable<(Spot Foot, double Height, double Lean, int Index)> Places(OrnamentField f, double apart, double[] heights)
    {
        var count = Math.Max(1, (int)Math.Round(f.Width / apart));
        var shift = f.Chance.Below(heights.Length);
        // The short ones first: the tall stand behind nothing and the short in front would be cut by them.
        return [.. Enumerable.Range(0, count).Select(i => (
            new Spot((i + 0.5 + f.Chance.Between(-0.22, 0.22)) * f.Width / count, f.Height + 0.5),
            heights[(i + shift) % heights.Length] * f.Height * f.Chance.Between(0.94, 1.04), f.Chance.Between(-0.16, 0.16), i))];
    }

    private static List<Spot> Axis(Spot foot, double height, double lean) =>
        Outlines.Points(18, t => foot + new Spot(lean * height * Math.Pow(t, 1.9), -height * t));

    public static void Fern(OrnamentField f, OrnamentPen pen)
    {
        var s = f.Size;
        foreach (var (foot, height, lean, index) in Places(f, 5.4 * s, [0.95, 0.62, 0.82, 0.5]))
        {
            var ink = index % 3 == 1 ? OrnamentInk.Second : OrnamentInk.First;
            var axis = Axis(foot, height, lean * 2.2);
            pen.Fill(ink, Outlines.Tapered(axis, t => (0.42 - 0.3 * t) * f.Weight * s));
            var pinnae = Math.Max(9, (int)(height / (0.78 * s)));
            for (var i = 2; i < pinnae; i++)
            {
                var t = i / (double)pinnae;
                var (at, way) = Along(axis, t);
                var length = Math.Min(0.27 * height, 4.4 * s) * Math.Pow(Math.Sin(Math.PI * (0.14 + 0.85 * t)), 0.85);
                foreach (var side in new[] { 1.12, -1.12 })
                    pen.Fill(ink, Outlines.Leaf(at, way + side * (1 - 0.35 * t), length, 0.62 * s * Math.Sqrt(f.Weight), 0.35));
            }
        }
    }

    public static void Meadow(OrnamentField f, OrnamentPen pen)
    {
        var s = f.Size;
        for (var i = 0; i < f.Width / (1.5 * s); i++)
        {
            var foot = new Spot(f.Chance.Unit() * f.Width, f.Height + 0.5);
            var blade = Axis(foot, f.Height * f.Chance.Between(0.18, 0.48), f.Chance.Between(-0.5, 0.5));
            pen.Fill(i % 4 == 0 ? OrnamentInk.Second : OrnamentInk.First, Outlines.Tapered(blade, t => 0.36 * (1 - t) * f.Weight * s));
        }
        foreach (var (foot, height, lean, index) in Places(f, 3.7 * s, [0.94, 0.66, 0.84, 0.56]))
        {
            var axis = Axis(foot, height * 0.96, lean + (index % 2 == 0 ? 0.18 : 0.05));
            pen.Fill(OrnamentInk.First, Outlines.Tapered(axis, t => (0.3 - 0.12 * t) * f.Weight * s));
            var ink = index % 3 == 0 ? OrnamentInk.Second : OrnamentInk.First;
            const int Grains = 11;
            for (var i = 0; i < Grains; i++)
            {
                var (at, way) = Along(axis, 0.66 + 0.34 * i / (Grains - 1.0));
                var side = i % 2 == 0 ? 0.42 : -0.42;
                var size = (1.75 - 0.06 * i) * s;
                pen.Fill(ink, Outlines.Leaf(at, way + side, size, 0.72 * s, 0.45));
                pen.Line(ink, 0.1 * f.Weight,
                    Outlines.Polyline([at + Spot.At(way + side, size * 0.9), at + Spot.At(way + side * 0.5, size * 2.1)]));
            }
        }
    }

    /// <summary>Umbels: rays from one point to a dome, each with a head of dots set by the golden angle (Vogel 1979).</summary>
    public static void Umbels(OrnamentField f, OrnamentPen pen)
    {
        var s = f.Size;
        foreach (var (foot, height, lean, index) in Places(f, 5.3 * s, [0.82, 0.44, 0.7, 0.36]))
        {
            // Heads are wide: they stand over their feet, so that two do not run into each other.
            var axis = Axis(foot, height, lean * 0.45);
            pen.Fill(OrnamentInk.First, Outlines.Tapered(axis, t => (0.42 - 0.2 * t) * f.Weight * s));
            foreach (var t in new[] { 0.28, 0.5 })
            {
                var (at, way) = Along(axis, t);
                pen.Fill(OrnamentInk.First, Outlines.Leaf(at, way + (t < 0.4 ? 0.7 : -0.7), 2.4 * s, 0.75 * s, 0.35));
            }
            var (top, up) = Along(axis, 1);
            var (spread, ink) = (Math.Min(3.1 * s, height * 0.3), index % 3 == 2 ? OrnamentInk.Second : OrnamentInk.First);
            const int Rays = 15;
            for (var i = 0; i < Rays; i++)
            {
                var share = (i - (Rays - 1) / 2.0) / ((Rays - 1) / 2.0);
                var head = top + Spot.At(up + share * 1.18, spread * (0.86 + 0.14 * Math.Cos(share * 1.6)) * (i % 2 == 0 ? 1 : 0.8));
                pen.Line(OrnamentInk.First, 0.12 * f.Weight,
                    Outlines.Smooth([top, Spot.Mix(top, head, 0.55) + Spot.At(up, 0.18 * spread), head]));
                for (var k = 0; k < 8; k++)
                    pen.Dot(ink, head + Spot.At(k * OrnamentField.GoldenAngle, 0.24 * s * Math.Sqrt(k)), 0.17 * s * Math.Sqrt(f.Weight));
            }
        }
    }

    /// <summary>Spikes: whorls of buds up a stem, closer and smaller to the tip.</summary>
    public static void Spikes(OrnamentField f, OrnamentPen pen)
    {
        var s = f.Size;
        foreach (var (foot, height, lean, index) in Places(f, 3.6 * s, [0.93, 0.68, 0.84, 0.58, 0.76]))
        {
            var axis = Axis(foot, height, lean * 1.3 + (index % 2 == 0 ? 0.05 : -0.05));
            pen.Fill(OrnamentInk.First, Outlines.Tapered(axis, t => (0.34 - 0.16 * t) * f.Weight * s));
            foreach (var (t, side) in new[] { (0.12, 0.45), (0.2, -0.4), (0.3, 0.35) })
            {
                var (at, way) = Along(axis, t);
                pen.Fill(OrnamentInk.First, Outlines.Leaf(at, way + side, Math.Min(0.26 * height, 3.6 * s), 0.5 * s, 0.45));
            }
            var whorls = Math.Clamp((int)(height * 0.52 / (0.95 * s)), 5, 13);
            for (var i = 0; i < whorls; i++)
            {
                var u = i / (whorls - 1.0);
                var (at, way) = Along(axis, 0.5 + 0.5 * Math.Pow(u, 0.92));
                var size = (1.35 - 0.75 * u) * s;
                foreach (var side in new[] { -1.05, -0.45, 0.45, 1.05 })
                    pen.Fill((i + (side > 0 ? 1 : 0)) % 3 == 0 ? OrnamentInk.Second : OrnamentInk.First,
                        Outlines.Leaf(at, way + side, size, size * 0.62, 0.55));
            }
        }
    }

    internal static (Spot At, double Way) Along(IReadOnlyList<Spot> axis, double t)
    {
        var place = Math.Clamp(t, 0, 1) * (axis.Count - 1);
        var i = Math.Min((int)place, axis.Count - 2);
        return (Spot.Mix(axis[i], axis[i + 1], place - i), (axis[i + 1] - axis[i]).Angle);
    }
}
