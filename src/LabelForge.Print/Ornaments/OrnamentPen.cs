namespace LabelForge.Print.Ornaments;

/// <summary>Collects an ornament's shapes; neighbours of one ink and one thickness become one path.</summary>
internal sealed class OrnamentPen
{
    // What is thinner than a printer's dot of 1/300 in comes out broken.
    private const double ThinnestLine = 0.085;

    private readonly ImmutableArray<OrnamentPath>.Builder _paths = ImmutableArray.CreateBuilder<OrnamentPath>();
    private readonly StringBuilder _data = new();
    private OrnamentInk _ink;
    private double _stroke;

    public OrnamentDrawing Drawing(OrnamentField field)
    {
        Close();
        return new OrnamentDrawing(field.Width, field.Height, _paths.ToImmutable());
    }

    public void Fill(OrnamentInk ink, string outline) => Add(ink, 0, outline);

    public void Line(OrnamentInk ink, double thickness, string outline) =>
        Add(ink, Math.Round(Math.Max(ThinnestLine, thickness), 2), outline);

    /// <summary>A disc.</summary>
    public void Dot(OrnamentInk ink, Spot middle, double radius) => Fill(ink, Outlines.Circle(middle, radius));

    private void Add(OrnamentInk ink, double stroke, string outline)
    {
        if (ink != _ink || stroke != _stroke)
            Close();
        (_ink, _stroke) = (ink, stroke);
        _data.Append(outline);
    }

    private void Close()
    {
        if (_data.Length > 0)
            _paths.Add(new OrnamentPath(_data.ToString(), _ink, _stroke));
        _data.Clear();
    }
}

/// <summary>Outlines as path data, in hundredths of a millimetre: finer than any printer's dot.</summary>
internal static class Outlines
{
    public static string Number(double value) =>
        Math.Round(value, 2).ToString("0.##", CultureInfo.InvariantCulture) is "-0"
            ? "0"
            : Math.Round(value, 2).ToString("0.##", CultureInfo.InvariantCulture);

    public static string Of(Spot p) => $"{Number(p.X)} {Number(p.Y)}";

    public static string Polyline(IReadOnlyList<Spot> points, bool closed = false)
    {
        var text = new StringBuilder("M").Append(Of(points[0]));
        for (var i = 1; i < points.Count; i++)
            text.Append('L').Append(Of(points[i]));
        return text.Append(closed ? "Z" : "").ToString();
    }

    /// <summary>A smooth line through points: the spline of Catmull and Rom (1974) as Bezier curves.</summary>
    public static string Smooth(IReadOnlyList<Spot> points, bool closed = false)
    {
        var n = points.Count;
        if (n < 3)
            return Polyline(points, closed);
        Spot P(int i) => closed ? points[(i % n + n) % n] : points[Math.Clamp(i, 0, n - 1)];
        var text = new StringBuilder("M").Append(Of(points[0]));
        for (var i = 0; i < (closed ? n : n - 1); i++)
        {
            var (a, b, c, d) = (P(i - 1), P(i), P(i + 1), P(i + 2));
            text.Append('C').Append(Of(b + (c - a) * (1.0 / 6))).Append(' ').Append(Of(c - (d - b) * (1.0 / 6))).Append(' ').Append(Of(c));
        }
        return text.Append(closed ? "Z" : "").ToString();
    }

    public static string Circle(Spot m, double r) => Ellipse(m, r, r, 0);

    public static string Ellipse(Spot m, double rx, double ry, double angle)
    {
        var (way, degrees) = (Spot.At(angle, rx), Number(angle * 180 / Math.PI));
        var arc = $"A{Number(rx)} {Number(ry)} {degrees} 1 0 ";
        return $"M{Of(m - way)}{arc}{Of(m + way)}{arc}{Of(m - way)}Z";
    }

    public static string Rectangle(double x, double y, double width, double height, double corner = 0)
    {
        if (corner <= 0)
            return $"M{Number(x)} {Number(y)}H{Number(x + width)}V{Number(y + height)}H{Number(x)}Z";
        var (r, right, bottom) = (Number(corner), x + width, y + height);
        return $"M{Number(x + corner)} {Number(y)}H{Number(right - corner)}A{r} {r} 0 0 1 {Number(right)} {Number(y + corner)}V{Number(bottom - corner)}"
            + $"A{r} {r} 0 0 1 {Number(right - corner)} {Number(bottom)}H{Number(x + corner)}A{r} {r} 0 0 1 {Number(x)} {Number(bottom - corner)}V{Number(y + corner)}"
            + $"A{r} {r} 0 0 1 {Number(x + corner)} {Number(y)}Z";
    }

    /// <summary>A leaf from its foot: two curves that meet in a point. Fullness is where it is widest, 0 at the foot.</summary>
    public static string Leaf(Spot foot, double angle, double length, double width, double fullness = 0.4)
    {
        var (along, side) = (Spot.At(angle, length), Spot.At(angle, 1).Left * (width * 0.66));
        var tip = foot + along;
        return $"M{Of(foot)}C{Of(foot + along * (fullness * 0.4) + side)} {Of(foot + along * (fullness + 0.3) + side)} {Of(tip)}"
            + $"C{Of(foot + along * (fullness + 0.3) - side)} {Of(foot + along * (fullness * 0.4) - side)} {Of(foot)}Z";
    }

    /// <summary>A line whose thickness changes along it, as an outline.</summary>
    public static string Tapered(IReadOnlyList<Spot> points, Func<double, double> thickness)
    {
        var (left, right) = (new List<Spot>(), new List<Spot>());
        for (var i = 0; i < points.Count; i++)
        {
            var way =
                (points[Math.Min(i + 1, points.Count - 1)]
                    - points[Math.Max(i - 1, 0)]).Unit.Left * (thickness(i / (points.Count - 1.0)) / 2);
            left.Add(points[i] + way);
            right.Add(points[i] - way);
        }
        right.Reverse();
        return Smooth(left) + Smooth(right)[1..].Insert(0, "L") + "Z";
    }

    /// <summary>Points along a curve.</summary>
    public static List<Spot> Points(int count, Func<double, Spot> at) =>
        [.. Enumerable.Range(0, count).Select(i => at(i / (count - 1.0)))];
}
