namespace LabelForge.Print.Ornaments;

/// <summary>Smooth noise from about -1 to 1: gradient noise with the quintic blend (Perlin, "Improving noise", SIGGRAPH 2002).</summary>
internal sealed class Noise
{
    private readonly int[] _order = [.. Enumerable.Range(0, 256)];

    public Noise(SeededNumbers chance)
    {
        for (var i = 255; i > 0; i--)
        {
            var j = chance.Below(i + 1);
            (_order[i], _order[j]) = (_order[j], _order[i]);
        }
    }

    public double At(double x, double y)
    {
        var (cx, cy) = (Math.Floor(x), Math.Floor(y));
        var (dx, dy) = (x - cx, y - cy);
        var (u, v) = (Blend(dx), Blend(dy));
        var (ix, iy) = ((int)cx, (int)cy);
        var top = Mix(Slope(ix, iy, dx, dy), Slope(ix + 1, iy, dx - 1, dy), u);
        var bottom = Mix(Slope(ix, iy + 1, dx, dy - 1), Slope(ix + 1, iy + 1, dx - 1, dy - 1), u);
        return 1.5 * Mix(top, bottom, v);
    }

    /// <summary>Two octaves.</summary>
    public double Rough(double x, double y) => 0.75 * At(x, y) + 0.25 * At(2 * x + 17.3, 2 * y + 5.1);

    private double Slope(int x, int y, double dx, double dy)
    {
        var angle = 2 * Math.PI * _order[(_order[x & 255] + y) & 255] / 256;
        return dx * Math.Cos(angle) + dy * Math.Sin(angle);
    }

    private static double Blend(double t) => t * t * t * (t * (t * 6 - 15) + 10);

    private static double Mix(double a, double b, double t) => a + (b - a) * t;
}
