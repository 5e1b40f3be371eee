namespace LabelForge.Print.Ornaments;

/// <summary>The line that a frame runs along, walked by its length: a rectangle with rounded corners, or an ellipse.</summary>
internal sealed class FramePath
{
    private readonly List<Spot> _points = [];
    private readonly List<double> _reached = [0];

    public FramePath(double x, double y, double width, double height, double corner, bool round)
    {
        if (round)
        {
            for (var i = 0; i < 720; i++)
                _points.Add(new Spot(x + width / 2,
                    y + height / 2) + new Spot(Math.Sin(i * Math.PI / 360) * width / 2, -Math.Cos(i * Math.PI / 360) * height / 2));
        }
        else
        {
            var (l, t, r, b, c) = (x, y, x + width, y + height, corner);
            Straight(new(l + width / 2, t), new(r - c, t));
            Corner(new(r - c, t + c), c, -Math.PI / 2);
            Straight(new(r, t + c), new(r, b - c));
            Corner(new(r - c, b - c), c, 0);
            Straight(new(r - c, b), new(l + c, b));
            Corner(new(l + c, b - c), c, Math.PI / 2);
            Straight(new(l, b - c), new(l, t + c));
            Corner(new(l + c, t + c), c, Math.PI);
            Straight(new(l + c, t), new(l + width / 2, t));
        }
        for (var i = 0; i < _points.Count; i++)
            _reached.Add(_reached[^1] + _points[i].To(_points[(i + 1) % _points.Count]));
        Length = _reached[^1];
    }

    /// <summary>Its length in millimetres.</summary>
    public double Length { get; }

    /// <summary>The place so far along it, and so far to its inner side.</summary>
    public Spot At(double along, double inwards = 0)
    {
        var (at, way) = Walk(along);
        // It runs clockwise as it is seen: the inner side is to the right.
        return at + way.Left * -inwards;
    }

    /// <summary>Which way it runs there, in radians.</summary>
    public double Way(double along) => Walk(along).Way.Angle;

    private (Spot At, Spot Way) Walk(double along)
    {
        var s = (along % Length + Length) % Length;
        var i = _reached.BinarySearch(s);
        i = Math.Clamp(i < 0 ? ~i - 1 : i, 0, _points.Count - 1);
        var (a, b) = (_points[i], _points[(i + 1) % _points.Count]);
        var t = (s - _reached[i]) / Math.Max(1e-9, _reached[i + 1] - _reached[i]);
        return (Spot.Mix(a, b, t), (b - a).Unit);
    }

    private void Straight(Spot from, Spot to)
    {
        for (var i = 0; i < 24; i++)
            _points.Add(Spot.Mix(from, to, i / 24.0));
    }

    private void Corner(Spot middle, double radius, double from)
    {
        for (var i = 0; i < 16 && radius > 0; i++)
            _points.Add(middle + Spot.At(from + i * Math.PI / 32, radius));
    }
}
