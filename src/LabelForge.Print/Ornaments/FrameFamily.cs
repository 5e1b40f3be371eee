namespace LabelForge.Print.Ornaments;

/// <summary>A frame: an ornament along the edge of a front, with a whole number of its figures on the way round.</summary>
/// <param name="Id">Its name in files.</param>
/// <param name="What">What it shows.</param>
/// <param name="Depth">How deep it is, in millimetres.</param>
public sealed record FrameFamily(string Id, string What, double Depth)
{
    private Action<FramePath, OrnamentPen, SeededNumbers, double> Program { get; init; } = (_, _, _, _) => { };

    /// <summary>All frames.</summary>
    public static ImmutableArray<FrameFamily> All { get; } =
    [
        Of("lines", "two lines, a thick and a thin", 1.1, Lines),
        Of("garland", "a twig with leaves by turns", 2.3, Garland),
        Of("braid", "a braid of three strands", 1.9, (p, pen, _, weight) => Strands(p, pen, 3, 3.3, 1.5, weight)),
        Of("rope", "a rope of two strands", 1.5, (p, pen, _, weight) => Strands(p, pen, 2, 2.7, 1.15, weight)),
        Of("scallops", "half circles on a line", 1.5, Scallops),
        Of("guilloche", "five fine waves", 1.9, Guilloche),
        Of("beads", "beads, large and small", 1.1, Beads),
        Of("stitches", "running stitches", 0.9, Stitches),
    ];

    /// <summary>A frame by its id, or null.</summary>
    public static FrameFamily? Named(string id) => All.FirstOrDefault(f => f.Id == id);

    /// <summary>Draws one round a box of this size, its outer edge on the box's.</summary>
    /// <param name="width">Millimetres.</param>
    /// <param name="height">Millimetres.</param>
    /// <param name="round">Whether it runs round an ellipse.</param>
    /// <param name="seed">Any text.</param>
    /// <param name="weight">1 as it is meant.</param>
    public OrnamentDrawing Draw(double width, double height, bool round, string seed, double weight = 1)
    {
        var half = Depth / 2;
        var field = new OrnamentField(width, height, 1, weight, new SeededNumbers($"{Id}/{seed}"));
        var pen = new OrnamentPen();
        Program(new FramePath(half, half, width - Depth, height - Depth, Math.Min(1.4, Math.Min(width, height) / 6), round), pen,
            field.Chance, weight);
        return pen.Drawing(field);
    }

    private static void Lines(FramePath p, OrnamentPen pen, SeededNumbers chance, double weight)
    {
        pen.Line(OrnamentInk.First, 0.42 * weight, Along(p, 320, _ => -0.33));
        pen.Line(OrnamentInk.Second, 0.16 * weight, Along(p, 320, _ => 0.4));
    }

    private static void Garland(FramePath p, OrnamentPen pen, SeededNumbers chance, double weight)
    {
        var leaves = 2 * (int)Math.Round(p.Length / 3.6);
        double Swing(double s) => 0.22 * Math.Sin(2 * Math.PI * s / p.Length * leaves / 2);
        pen.Line(OrnamentInk.First, 0.19 * weight, Along(p, leaves * 8, Swing));
        for (var i = 0; i < leaves; i++)
        {
            var s = i * p.Length / leaves;
            var side = i % 2 == 0 ? 1 : -1;
            pen.Fill(i % 6 == 4 ? OrnamentInk.Second : OrnamentInk.First,
                Outlines.Leaf(p.At(s, Swing(s)), p.Way(s) + side * 0.82, chance.Between(1.15, 1.4), 0.66 * Math.Sqrt(weight), 0.45));
            if (i % 3 == 0)
                pen.Dot(OrnamentInk.Second, p.At(s + 0.7, Swing(s) - side * 0.5), 0.2);
        }
    }

    // Strands are sines a phase apart. At a crossing the strand that is over is drawn last, with an edge of the ground.
    private static void Strands(FramePath p, OrnamentPen pen, int strands, double period, double depth, double weight)
    {
        var periods = Math.Max(6, (int)Math.Round(p.Length / period));
        var wave = p.Length / periods;
        var pieces = periods * strands * 2;
        double Swing(int strand, double s) => depth / 2 * Math.Sin(2 * Math.PI * (s / wave + strand / (double)strands));
        // How near to the eye, half the wave's length: over on its way in, under on its way out.
        double Near(int strand, double s) => Math.Cos(2 * Math.PI * (2 * s / wave + 2.0 * strand / strands) + Math.PI / 2);
        for (var i = 0; i < pieces; i++)
        {
            var (from, to) = (i * p.Length / pieces, (i + 1) * p.Length / pieces);
            foreach (var strand in Enumerable.Range(0, strands).OrderBy(k => Near(k, (from + to) / 2)))
            {
                string Piece(double longer) =>
                Outlines.Smooth(Outlines.Points(5,
                    t => p.At(from - longer + (to - from + 2 * longer) * t, Swing(strand, from - longer + (to - from + 2 * longer) * t))));
                pen.Line(OrnamentInk.Ground, 0.72 * weight, Piece(-0.02));
                pen.Line(strand == 1 ? OrnamentInk.Second : OrnamentInk.First, 0.4 * weight, Piece(0.06));
            }
        }
    }

    private static void Scallops(FramePath p, OrnamentPen pen, SeededNumbers chance, double weight)
    {
        var count = (int)Math.Round(p.Length / 2.5);
        var wide = p.Length / count;
        pen.Line(OrnamentInk.First, 0.22 * weight, Along(p, 320, _ => -0.64));
        for (var i = 0; i < count; i++)
        {
            string Arc(double r) =>
            Outlines.Smooth(Outlines.Points(9,
                t => p.At((i + 0.5) * wide - r * Math.Cos(Math.PI * t), -0.64 + r * Math.Sin(Math.PI * t))));
            pen.Line(OrnamentInk.First, 0.2 * weight, Arc(wide / 2));
            pen.Line(OrnamentInk.Second, 0.2 * weight, Arc(wide * 0.29));
            pen.Dot(OrnamentInk.First, p.At((i + 0.5) * wide, -0.42), 0.17);
        }
    }

    private static void Guilloche(FramePath p, OrnamentPen pen, SeededNumbers chance, double weight)
    {
        var periods = (int)Math.Round(p.Length / 3.4);
        for (var k = 0; k < 5; k++)
        {
            var phase = k / 5.0;
            pen.Line(k == 2 ? OrnamentInk.Second : OrnamentInk.First, 0.13 * weight,
                Along(p, periods * 12, s => 0.85 * Math.Sin(2 * Math.PI * (s / p.Length * periods + phase))));
        }
    }

    private static void Beads(FramePath p, OrnamentPen pen, SeededNumbers chance, double weight)
    {
        var count = 2 * (int)Math.Round(p.Length / 1.9);
        for (var i = 0; i < count; i++)
            pen.Dot(i % 2 == 0 ? OrnamentInk.First : OrnamentInk.Second, p.At(i * p.Length / count),
                (i % 2 == 0 ? 0.36 : 0.17) * Math.Sqrt(weight));
    }

    private static void Stitches(FramePath p, OrnamentPen pen, SeededNumbers chance, double weight)
    {
        var count = (int)Math.Round(p.Length / 2.1);
        for (var i = 0; i < count; i++)
            pen.Line(i % 4 == 3 ? OrnamentInk.Second : OrnamentInk.First, 0.34 * weight,
                Outlines.Smooth(Outlines.Points(4, t => p.At((i + 0.66 * t) * p.Length / count))));
    }

    private static string Along(FramePath p, int points, Func<double, double> inwards) =>
        Outlines.Smooth([.. Enumerable.Range(0, points).Select(i => p.At(i * p.Length / points, inwards(i * p.Length / points)))],
            closed: true);

    private static FrameFamily Of(string id, string what, double depth, Action<FramePath, OrnamentPen, SeededNumbers, double> program) =>
        new(id, what, depth) { Program = program };
}
