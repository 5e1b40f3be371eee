namespace LabelForge.Print.Ornaments.Families;

/// <summary>Marks of a hand: brush strokes, and bees.</summary>
internal static class Strokes
{
    /// <summary>Strokes of a brush that runs dry: bristles side by side, each with its own ink,
    /// on a path of noise: Strassmann, "Hairy brushes", SIGGRAPH 1986.</summary>
    public static void Brush(OrnamentField f, OrnamentPen pen)
    {
        var s = f.Size;
        var noise = new Noise(f.Chance);
        const int Bristles = 9;
        var (wide, row) = (2.5 * s, 0);
        for (var y = wide * 0.4; y < f.Height + wide; y += wide * 1.18, row++)
        {
            var start = f.Chance.Between(-0.12, 0.1) * f.Width;
            var dry = f.Chance.Between(0.55, 1.08) * f.Width;
            for (var b = 0; b < Bristles; b++)
            {
                var (offset, from) = ((b - (Bristles - 1) / 2.0) * wide / Bristles, start + f.Chance.Between(0, 0.07) * f.Width);
                var to = Math.Max(from + 3, dry + f.Chance.Between(-0.24, 0.24) * f.Width);
                var (level, r) = (y, row);
                var points = Outlines.Points(16,
                    t => new Spot(from + (to - from) * t,
                        level + offset + 1.1 * s * noise.At((from + (to - from) * t) / (16 * s), r * 3.3 + b * 0.05)));
                var thick = wide / Bristles * f.Chance.Between(0.62, 1.05) * f.Weight;
                pen.Fill(row % 3 == 1 ? OrnamentInk.Second : OrnamentInk.First,
                    Outlines.Tapered(points, t => Math.Max(0.02, thick * Math.Min(1, 9 * t) * Math.Pow(1 - t, 0.32))));
            }
        }
    }

    /// <summary>Bees on a triangular lattice, each with its own heading within a little; one
    /// alone and large where the box holds no more.</summary>
    public static void Bees(OrnamentField f, OrnamentPen pen)
    {
        var small = Math.Min(f.Width, f.Height);
        if (f.Width < 2.2 * f.Height && small > 9 && small < 26 && f.Density <= 1.2)
        {
            Bee(pen, f.Middle, -Math.PI / 2, small * 0.44, f.Weight);
            return;
        }
        var apart = 6.4 * f.Size;
        var index = 0;
        for (var row = 0; (row - 0.2) * apart * 0.8 < f.Height + 1; row++)
        {
            for (var column = -1; column * apart < f.Width + apart; column++)
            {
                var at = new Spot((column + (row % 2 == 0 ? 0.25 : 0.75)) * apart, (row + 0.35) * apart * 0.8);
                if (index++ % 5 == 4)
                    pen.Dot(OrnamentInk.Second, at, 0.3 * f.Size);
                else
                    Bee(pen, at, -Math.PI / 2 + f.Chance.Between(-0.7, 0.7), 2.3 * f.Size, f.Weight);
            }
        }
    }

    private static void Bee(OrnamentPen pen, Spot at, double heading, double size, double weight)
    {
        Spot P(double along, double side) => at + Spot.At(heading, along * size) + Spot.At(heading, 1).Left * (side * size);
        foreach (var side in new[] { 1, -1 })
        {
            foreach (var (turn, reach, wide) in new[] { (1.22, 1.05, 0.46), (2.0, 0.78, 0.36) })
            {
                var wing = Outlines.Leaf(P(0.12, side * 0.1), heading - side * turn, size * reach, size * wide, 0.68);
                pen.Fill(OrnamentInk.Second, wing);
                pen.Line(OrnamentInk.Ground, 0.035 * size,
                    Outlines.Polyline([P(0.12, side * 0.1), P(0.12, side * 0.1) + Spot.At(heading - side * turn, size * reach * 0.8)]));
            }
            pen.Line(OrnamentInk.First, 0.07 * size, Outlines.Smooth([P(0.5, side * 0.06), P(0.72, side * 0.14), P(0.86, side * 0.3)]));
        }
        pen.Fill(OrnamentInk.First, Outlines.Leaf(P(0.16, 0), heading + Math.PI, size * 1.06, size * 0.62, 0.45));
        foreach (var t in new[] { 0.16, 0.36, 0.55 })
            pen.Line(OrnamentInk.Ground, 0.1 * size, Outlines.Smooth([P(-t, -0.26 + 0.13 * t), P(-t - 0.07, 0), P(-t, 0.26 - 0.13 * t)]));
        pen.Dot(OrnamentInk.First, P(0.22, 0), 0.235 * size);
        pen.Dot(OrnamentInk.First, P(0.48, 0), 0.155 * size * Math.Sqrt(weight));
    }
}
