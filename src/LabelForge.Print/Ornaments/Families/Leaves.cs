namespace LabelForge.Print.Ornaments.Families;

/// <summary>Single leaves and feathers strewn about.</summary>
internal static class Leaves
{
    /// <summary>
    /// Leaves whose outline is the superformula of Gielis, "A generic geometric transformation that unifies a wide range of natural
    /// and abstract shapes", American Journal of Botany 90 (2003), with a midrib and veins.
    /// </summary>
    public static void Strewn(OrnamentField f, OrnamentPen pen)
    {
        var s = f.Size;
        var index = 0;
        foreach (var p in PoissonDiscs.In(f, 3.6 * s, 1.5 * s))
        {
            var (angle, length) = (f.Chance.Unit() * 2 * Math.PI, f.Chance.Between(1.7, 2.5) * s);
            var kind = index % 3;
            var outline = Outlines.Points(kind == 1 ? 61 : 33, t => p + Turned(Superformula(t * 2 * Math.PI, kind), angle) * length);
            outline.RemoveAt(outline.Count - 1);
            pen.Fill(index % 4 == 3 ? OrnamentInk.Second : OrnamentInk.First, Outlines.Smooth(outline, closed: true));
            var (foot, tip) = (p + Spot.At(angle, -0.95 * length), p + Spot.At(angle, 0.72 * length));
            pen.Line(OrnamentInk.Ground, 0.16 * s, Outlines.Polyline([foot, tip]));
            for (var v = 1; v < 5 && kind != 2; v++)
            {
                var from = Spot.Mix(foot, tip, 0.14 + v * 0.17);
                foreach (var side in new[] { 0.8, -0.8 })
                    pen.Line(OrnamentInk.Ground, 0.1 * s,
                        Outlines.Polyline([from, from + Spot.At(angle + side, length * (0.42 - 0.05 * v))]));
            }
            index++;
        }
    }

    /// <summary>Feathers: a bent shaft with barbs that part where chance opens the vane, after
    /// the plume model of Streit and Heidrich (2002).</summary>
    public static void Feathers(OrnamentField f, OrnamentPen pen)
    {
        var s = f.Size;
        var index = 0;
        foreach (var p in PoissonDiscs.In(f, 4.3 * s, 1.5 * s))
        {
            var (angle, length, bend) = (-Math.PI / 2 + f.Chance.Between(-1, 1), f.Chance.Between(5.6, 7.4) * s,
                f.Chance.Between(-0.35, 0.35));
            var ink = index++ % 3 == 2 ? OrnamentInk.Second : OrnamentInk.First;
            var shaft = Outlines.Points(16, t => p + Spot.At(angle + bend * (t - 0.5), length * (t - 0.5)));
            const int Barbs = 24;
            foreach (var side in new[] { 1, -1 })
            {
                for (var i = 0; i < Barbs; i++)
                {
                    var t = 0.2 + 0.8 * i / Barbs;
                    if (f.Chance.Happens(0.07))
                        continue;
                    var (at, way) = Stems.Along(shaft, t);
                    var reach = length * 0.19 * Math.Pow(Math.Sin(Math.PI * (0.12 + 0.86 * (t - 0.2) / 0.8)), 0.6);
                    var tip = at + Spot.At(way + side * (0.75 - 0.25 * t), reach);
                    pen.Line(ink, 0.15 * s * f.Weight, Outlines.Smooth([at, Spot.Mix(at, tip, 0.5) + Spot.At(way, -0.06 * reach), tip]));
                }
            }
            pen.Fill(ink, Outlines.Tapered(shaft, t => (0.3 - 0.24 * t) * s * f.Weight));
        }
    }

    // The leaf lies along x, its tip at +1.
    private static Spot Superformula(double angle, int kind)
    {
        var (m, n1, n2, n3) = kind switch { 0 => (2.0, 1.0, 1.0, 1.0), 1 => (2.0, 0.9, 1.0, 1.35), _ => (2.0, 0.62, 0.75, 0.75) };
        var r = Math.Pow(Math.Pow(Math.Abs(Math.Cos(m * angle / 4)), n2) + Math.Pow(Math.Abs(Math.Sin(m * angle / 4)), n3), -1 / n1);
        var lobes = kind == 1 ? 1 + 0.1 * Math.Cos(11 * angle) : 1;
        var x = r * Math.Cos(angle) * lobes;
        return new Spot(x, r * Math.Sin(angle) * lobes * (kind == 2 ? 1.5 : 0.95));
    }

    private static Spot Turned(Spot p, double angle) =>
        new(p.X * Math.Cos(angle) - p.Y * Math.Sin(angle), p.X * Math.Sin(angle) + p.Y * Math.Cos(angle));
}
