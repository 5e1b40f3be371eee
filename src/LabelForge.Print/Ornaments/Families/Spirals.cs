namespace LabelForge.Print.Ornaments.Families;

/// <summary>Heads and flowers by the golden angle: Vogel, "A better way to construct the
/// sunflower head", Mathematical Biosciences 44 (1979).</summary>
internal static class Spirals
{
    /// <summary>Seeds at r = R sqrt(i/n); every third of the thirteen spirals that the eye sees is in the second ink.</summary>
    public static void SeedHead(OrnamentField f, OrnamentPen pen)
    {
        var (middle, radius) = Head(f);
        var seeds = (int)(330 * f.Density * Math.Clamp(radius * radius / 130, 0.35, 1.6));
        for (var i = 3; i < seeds; i++)
        {
            var (angle, r) = (i * OrnamentField.GoldenAngle, radius * Math.Sqrt((i + 0.5) / seeds));
            var size = radius / Math.Sqrt(seeds) * (0.72 + 0.28 * r / radius) * Math.Sqrt(f.Weight);
            pen.Fill(i % 13 is 0 or 5 or 8 ? OrnamentInk.Second : OrnamentInk.First,
                Outlines.Leaf(middle + Spot.At(angle, r - size * 0.75), angle, size * 1.75, size * 1.05, 0.55));
        }
    }

    /// <summary>A double flower: petals by the golden angle, drawn from the rim to the heart, each edged with the ground.</summary>
    public static void Dahlia(OrnamentField f, OrnamentPen pen)
    {
        var flowers = new List<(Spot At, double R)>();
        var size = Math.Clamp(Math.Min(f.Width, f.Height) * 0.3, 2.6, 8) / f.Density;
        foreach (var p in PoissonDiscs.In(f, size * 1.75, size * 0.5))
            flowers.Add((p, size * f.Chance.Between(0.72, 1.06)));
        foreach (var (at, r) in flowers)
        {
            for (var k = 0; k < 5; k++)
                pen.Fill(OrnamentInk.Second, Outlines.Leaf(at, f.Chance.Unit() * 2 * Math.PI, r * 1.38, r * 0.42, 0.6));
        }
        foreach (var (at, r) in flowers)
        {
            var (turn, petals) = (f.Chance.Unit() * 6.28, 34);
            for (var i = petals; i > 0; i--)
            {
                var reach = r * Math.Sqrt(i / (double)petals);
                var angle = turn + i * OrnamentField.GoldenAngle;
                var petal = Outlines.Leaf(at + Spot.At(angle, reach * 0.1), angle, reach * 0.95, Math.Max(0.3, reach * 0.56), 0.62);
                pen.Fill(OrnamentInk.First, petal);
                pen.Line(OrnamentInk.Ground, 0.16 / Math.Sqrt(f.Weight), petal);
            }
            pen.Dot(OrnamentInk.Second, at, r * 0.13);
        }
    }

    private static (Spot Middle, double Radius) Head(OrnamentField f)
    {
        // In a low box the head rises from its foot; in one about as high as wide it stands in the middle.
        if (f.Width > 1.25 * f.Height)
            return (new Spot(f.Width / 2, f.Height * 1.02), Math.Min(f.Height * 0.97, f.Width * 0.49));
        return (f.Middle, Math.Min(f.Width, f.Height) * (f.Width * 1.25 < f.Height ? 0.62 : 0.49));
    }
}
