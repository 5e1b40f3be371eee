using System.Globalization;

namespace LabelForge.Benchmarks.Floor;

/// <summary>
/// A label's ink as plain primitives, and the places of a sheet to draw it at; all in points from the top left, down.
/// Recorded once from a label that LabelForge laid out, so that every way of drawing draws the same.
/// </summary>
/// <param name="PageWidth">The sheet's width.</param>
/// <param name="PageHeight">The sheet's height.</param>
/// <param name="Width">The label's width.</param>
/// <param name="Height">The label's height.</param>
/// <param name="Fonts">The font files.</param>
/// <param name="Bars">Rectangles of ink.</param>
/// <param name="Lines">Lines of text.</param>
/// <param name="Corners">Where the labels of a sheet stand.</param>
public sealed record Ink(
    float PageWidth, float PageHeight, float Width, float Height, IReadOnlyList<string> Fonts,
    IReadOnlyList<(float X, float Y, float Width, float Height)> Bars, IReadOnlyList<InkLine> Lines,
    IReadOnlyList<(float X, float Y)> Corners)
{
    /// <summary>Reads a recording: one primitive a line.</summary>
    public static Ink Read(string path)
    {
        var fonts = new List<string>();
        var bars = new List<(float, float, float, float)>();
        var lines = new List<InkLine>();
        var corners = new List<(float, float)>();
        float[] page = [], label = [];
        foreach (var line in File.ReadLines(path))
        {
            var cells = line.Split('\t');
            switch (cells[0])
            {
                case "page": page = Numbers(cells[1]); break;
                case "label": label = Numbers(cells[1]); break;
                case "font": fonts.Add(cells[1]); break;
                case "bar" when Numbers(cells[1]) is var b: bars.Add((b[0], b[1], b[2], b[3])); break;
                case "corner" when Numbers(cells[1]) is var c: corners.Add((c[0], c[1])); break;
                case "line" when Numbers(cells[2]) is var n:
                    lines.Add(new InkLine(int.Parse(cells[1], CultureInfo.InvariantCulture), n[0], n[1], n[2],
                        [.. Numbers(cells[3]).Select(g => (ushort)g)], Numbers(cells[4]), cells[5]));
                    break;
            }
        }
        return new Ink(page[0], page[1], label[0], label[1], fonts, bars, lines, corners);
    }

    /// <summary>Writes the recording.</summary>
    public void Write(string path)
    {
        using var to = new StreamWriter(path) { NewLine = "\n" };
        to.WriteLine($"page\t{Text(PageWidth, PageHeight)}\nlabel\t{Text(Width, Height)}");
        foreach (var font in Fonts)
            to.WriteLine($"font\t{font}");
        foreach (var b in Bars)
            to.WriteLine($"bar\t{Text(b.X, b.Y, b.Width, b.Height)}");
        foreach (var l in Lines)
            to.WriteLine(
                $"line\t{l.Font}\t{Text(l.Size, l.X, l.Y)}\t{Text([.. l.Glyphs.Select(g => (float)g)])}\t{Text([.. l.Offsets])}\t{l.Text}");
        foreach (var c in Corners)
            to.WriteLine($"corner\t{Text(c.X, c.Y)}");
    }

    private static float[] Numbers(string text) =>
        text.Length == 0 ? [] : [.. text.Split(' ').Select(n => float.Parse(n, CultureInfo.InvariantCulture))];

    private static string Text(params float[] numbers) =>
        string.Join(' ', numbers.Select(n => n.ToString("R", CultureInfo.InvariantCulture)));
}

/// <summary>A line of text: its glyphs at their offsets, and its letters for what cannot draw glyphs.</summary>
public sealed record InkLine(int Font, float Size, float X, float Y, IReadOnlyList<ushort> Glyphs, IReadOnlyList<float> Offsets,
    string Text);
