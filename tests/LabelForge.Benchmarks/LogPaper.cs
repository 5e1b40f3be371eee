using System.Globalization;
using SkiaSharp;

namespace LabelForge.Benchmarks;

/// <summary>One measured way of growing.</summary>
/// <param name="Name">What was measured.</param>
/// <param name="Points">Its size, and the seconds it took.</param>
internal sealed record Curve(string Name, IReadOnlyList<(double Size, double Seconds)> Points)
{
    /// <summary>The power of the size by which the time grows, over the upper half of the sizes:
    /// the lower is what it costs to begin.</summary>
    public double Power
    {
        get
        {
            var upper = Points.Skip(Points.Count / 2 - 1).Select(p => (X: Math.Log(p.Size), Y: Math.Log(p.Seconds))).ToList();
            var (x, y) = (upper.Average(p => p.X), upper.Average(p => p.Y));
            return upper.Sum(p => (p.X - x) * (p.Y - y)) / upper.Sum(p => (p.X - x) * (p.X - x));
        }
    }
}

/// <summary>Draws curves on paper ruled by powers of ten, with lines that grow as n and as n log n to hold them against.</summary>
internal sealed class LogPaper
{
    private const float Width = 760;
    private const float Height = 480;
    private const float Left = 74;
    private const float Right = 230;
    private const float Top = 40;
    private const float Bottom = 54;

    // Told apart by people who see few colours, and in grey by their marks. Okabe and Ito's palette, from memory.
    private static readonly SKColor[] Inks = [new(0, 114, 178), new(213, 94, 0), new(0, 158, 115), new(204, 121, 167), new(86, 180, 233),
        new(230, 159, 0), new(60, 60, 60)];

    private readonly SKCanvas _canvas;
    private readonly SKTypeface _face = SKTypeface.FromFile(Repository.File("templates/fonts/BarlowCondensed-Medium.ttf"));
    private readonly (double From, double To) _x;
    private readonly (double From, double To) _y;

    private LogPaper(SKCanvas canvas, IReadOnlyList<Curve> curves)
    {
        _canvas = canvas;
        var (sizes, times) = (curves.SelectMany(c => c.Points.Select(p => p.Size)).ToList(),
            curves.SelectMany(c => c.Points.Select(p => p.Seconds)).ToList());
        _x = (Math.Log10(sizes.Min()) - 0.06, Math.Log10(sizes.Max()) + 0.06);
        _y = (Math.Floor(Math.Log10(times.Min())), Math.Ceiling(Math.Log10(times.Max())));
    }

    /// <summary>Draws a picture.</summary>
    /// <param name="path">The SVG to write.</param>
    /// <param name="title">What is shown.</param>
    /// <param name="size">What is counted along the paper.</param>
    /// <param name="curves">The curves.</param>
    public static void Draw(string path, string title, string size, IReadOnlyList<Curve> curves)
    {
        using var stream = File.Create(path);
        using var canvas = SKSvgCanvas.Create(SKRect.Create(Width, Height), stream);
        canvas.Clear(SKColors.White);
        var paper = new LogPaper(canvas, curves);
        paper.Rule();
        paper.Text(title, Left, 24, 17, SKColors.Black);
        paper.Text(size, (Left + Width - Right) / 2, Height - 12, 14, SKColors.Black, middle: true);
        canvas.Save();
        canvas.RotateDegrees(-90, 18, (Top + Height - Bottom) / 2);
        paper.Text("time (logarithmic)", 18, (Top + Height - Bottom) / 2, 14, SKColors.Black, middle: true);
        canvas.Restore();
        paper.References(curves);
        foreach (var (curve, i) in curves.Select((c, i) => (c, i)))
            paper.Add(curve, i);
    }

    private float X(double size) => (float)(Left + (Math.Log10(size) - _x.From) / (_x.To - _x.From) * (Width - Left - Right));

    private float Y(double seconds) =>
        (float)(Height - Bottom - (Math.Log10(seconds) - _y.From) / (_y.To - _y.From) * (Height - Top - Bottom));

    private void Rule()
    {
        using var fine = new SKPaint { Color = new(232, 232, 232), StrokeWidth = 0.6f, IsStroke = true };
        using var strong = new SKPaint { Color = new(176, 176, 176), StrokeWidth = 0.8f, IsStroke = true };
        for (var power = Math.Floor(_x.From); power <= _x.To; power++)
        {
            for (var digit = 1; digit < 10; digit++)
            {
                var size = digit * Math.Pow(10, power);
                if (Math.Log10(size) < _x.From || Math.Log10(size) > _x.To)
                    continue;
                _canvas.DrawLine(X(size), Top, X(size), Height - Bottom, digit == 1 ? strong : fine);
                if (digit == 1 || (_x.To - _x.From < 1.7 && digit is 2 or 5))
                    Text(size.ToString("#,0", CultureInfo.InvariantCulture), X(size), Height - Bottom + 17, 13, SKColors.Black,
                        middle: true);
            }
        }
        for (var power = _y.From; power <= _y.To; power++)
        {
            for (var digit = 1; digit < (power == _y.To ? 2 : 10); digit++)
                _canvas.DrawLine(Left, Y(digit * Math.Pow(10, power)), Width - Right, Y(digit * Math.Pow(10, power)),
                    digit == 1 ? strong : fine);
            var unit = Math.Pow(10, power) switch { >= 1 => (1.0, "s"), >= 0.99e-3 => (1e-3, "ms"), _ => (1e-6, "us") };
            Text(string.Create(CultureInfo.InvariantCulture, $"{Math.Pow(10, power) / unit.Item1:#,0} {unit.Item2}"), Left - 8,
                Y(Math.Pow(10, power)) + 4, 13, SKColors.Black, right: true);
        }
    }

    // Through the first curve's last point.
    private void References(IReadOnlyList<Curve> curves)
    {
        var (last, time) = curves[0].Points[^1];
        var first = curves.SelectMany(c => c.Points).Min(p => p.Size);
        using var dash = SKPathEffect.CreateDash([5, 4], 0);
        using var dots = SKPathEffect.CreateDash([1.5f, 3], 0);
        foreach (var (name, grow, effect, at) in new (string, Func<double, double>, SKPathEffect, double)[] { ("n", n => n, dash, 1),
            ("n log n", n => n * Math.Log2(n + 1), dots, 1) })
        {
            using var pen = new SKPaint { Color = new(96, 96, 96), StrokeWidth = 1.1f, IsStroke = true, PathEffect = effect };
            double Time(double n) => time * grow(n) / grow(last);
            var from = first;
            while (Math.Log10(Time(from)) < _y.From)
                from *= 1.05;
            using var path = new SKPathBuilder();
            path.MoveTo(X(from), Y(Time(from)));
            for (var n = from; n < last; n *= 1.2)
                path.LineTo(X(n), Y(Time(n)));
            path.LineTo(X(last), Y(Time(last)));
            using var line = path.Detach();
            _canvas.DrawPath(line, pen);
        }
        Text("dashed: as n; dotted: as n log n", Width - Right + 14, Height - Bottom, 12.5f, new(96, 96, 96));
    }

    private void Add(Curve curve, int index)
    {
        var ink = Inks[index % Inks.Length];
        using var pen = new SKPaint { Color = ink, StrokeWidth = 2, IsStroke = true, IsAntialias = true };
        using var fill = new SKPaint { Color = ink, IsAntialias = true };
        foreach (var (a, b) in curve.Points.Zip(curve.Points.Skip(1)))
            _canvas.DrawLine(X(a.Size), Y(a.Seconds), X(b.Size), Y(b.Seconds), pen);
        foreach (var p in curve.Points)
            Mark(X(p.Size), Y(p.Seconds), index, fill);
        var y = Top + 12 + index * 40;
        Mark(Width - Right + 18, y - 4, index, fill);
        var words = curve.Name.Split(' ');
        var half = 0;
        while (half < words.Length && string.Join(' ', words[..(half + 1)]).Length <= 34)
            half++;
        Text(string.Join(' ', words[..half]), Width - Right + 30, y, 13, SKColors.Black);
        Text(string.Join(' ', words[half..]), Width - Right + 30, y + 15, 13, SKColors.Black);
    }

    private void Mark(float x, float y, int kind, SKPaint fill)
    {
        if (kind % 3 == 0)
        {
            _canvas.DrawCircle(x, y, 3.6f, fill);
            return;
        }
        if (kind % 3 == 1)
        {
            _canvas.DrawRect(x - 3.3f, y - 3.3f, 6.6f, 6.6f, fill);
            return;
        }
        using var path = new SKPathBuilder();
        path.MoveTo(x, y - 4.4f);
        path.LineTo(x + 4.2f, y + 3.2f);
        path.LineTo(x - 4.2f, y + 3.2f);
        path.Close();
        using var triangle = path.Detach();
        _canvas.DrawPath(triangle, fill);
    }

    // As outlines, so that it looks the same where the font is not installed.
    private void Text(string text, float x, float y, float size, SKColor colour, bool middle = false, bool right = false)
    {
        using var font = new SKFont(_face, size);
        using var path = font.GetTextPath(text, new SKPoint(x - font.MeasureText(text) * (right ? 1 : middle ? 0.5f : 0), y));
        using var ink = new SKPaint { Color = colour, IsAntialias = true };
        _canvas.DrawPath(path, ink);
    }
}
