using MathNet.Numerics.LinearAlgebra;

namespace LabelForge.Print.Scans;

/// <summary>
/// A projective map of one plane onto another: how a flat sheet comes to lie in a picture, tilted and seen from anywhere. Fitted by the
/// direct linear transformation on normalized points: Hartley, Zisserman, "Multiple View Geometry in Computer Vision", 4.1 and 4.4.
/// </summary>
internal sealed class PlaneMap
{
    private readonly Matrix<double> _map;

    private PlaneMap(Matrix<double> map) => _map = map;

    /// <summary>The map that takes points to points, the best in the least-squares sense where there are more than four.</summary>
    public static PlaneMap Fit(IReadOnlyList<(double X, double Y)> from, IReadOnlyList<(double X, double Y)> to)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(from.Count, 4);
        var (one, other) = (Normal(from), Normal(to));
        var rows = Matrix<double>.Build.Dense(Math.Max(9, 2 * from.Count), 9);
        for (var i = 0; i < from.Count; i++)
        {
            var (x, y) = Applied(one, from[i]);
            var (u, v) = Applied(other, to[i]);
            rows.SetRow(2 * i, [-x, -y, -1, 0, 0, 0, u * x, u * y, u]);
            rows.SetRow(2 * i + 1, [0, 0, 0, -x, -y, -1, v * x, v * y, v]);
        }
        var least = rows.Svd().VT.Row(8);
        var map = Matrix<double>.Build.DenseOfRowMajor(3, 3, least);
        return new PlaneMap(other.Inverse() * map * one);
    }

    /// <summary>The map back.</summary>
    public PlaneMap Inverse() => new(_map.Inverse());

    /// <summary>Where a point comes to lie.</summary>
    public (double X, double Y) Apply((double X, double Y) point) => Applied(_map, point);

    private static (double X, double Y) Applied(Matrix<double> m, (double X, double Y) p)
    {
        var w = m[2, 0] * p.X + m[2, 1] * p.Y + m[2, 2];
        return ((m[0, 0] * p.X + m[0, 1] * p.Y + m[0, 2]) / w, (m[1, 0] * p.X + m[1, 1] * p.Y + m[1, 2]) / w);
    }

    // Their middle at the origin, their mean distance from it the square root of two: else the
    // least squares would weigh some far more than others.
    private static Matrix<double> Normal(IReadOnlyList<(double X, double Y)> points)
    {
        var (x, y) = (points.Average(p => p.X), points.Average(p => p.Y));
        var scale = Math.Sqrt(2) / Math.Max(1e-9, points.Average(p => Math.Sqrt((p.X - x) * (p.X - x) + (p.Y - y) * (p.Y - y))));
        return Matrix<double>.Build.DenseOfArray(new[,] { { scale, 0, -scale * x }, { 0, scale, -scale * y }, { 0, 0, 1 } });
    }
}
