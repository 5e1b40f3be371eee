using LabelForge.Print.Drawing;
using LabelForge.Print.Lettering;

namespace LabelForge.Print.Proofs;

/// <summary>A place for the label on a proof's page: points from the page's top left corner, and how much larger it is drawn.</summary>
internal sealed record PlacedProof(double X, double Y, double Scale)
{
    /// <summary>How it is drawn.</summary>
    public ProofOf Of { get; init; }
}

/// <summary>What of a label a proof shows at a place.</summary>
internal enum ProofOf
{
    /// <summary>The label as it is seen, on its stock.</summary>
    Seen,

    /// <summary>The label without colour.</summary>
    Grey,

    /// <summary>The plate of white that is laid under it.</summary>
    White,
}

/// <summary>One page of a proof.</summary>
internal sealed record ProofPage(Picture Picture, IReadOnlyList<PlacedProof> Labels);

/// <summary>Writes a proof's pages from top to bottom; a new page begins where one is full. Lengths in points.</summary>
internal sealed class ProofPages(Length width, Length height)
{
    /// <summary>Kept clear at every edge of the page.</summary>
    public const double Margin = 36;

    private const double LineHeight = 1.3;

    private readonly List<ProofPage> _done = [];
    private readonly List<Outline> _outlines = [];
    private readonly List<Stroke> _strokes = [];
    private readonly List<PictureLine> _lines = [];
    private readonly List<PlacedProof> _labels = [];

    /// <summary>Where the next thing stands.</summary>
    public double Y { get; private set; } = Margin;

    /// <summary>The width between the margins.</summary>
    public double Width { get; } = Points.Of(width) - 2 * Margin;

    /// <summary>The height between the margins.</summary>
    public double Height { get; } = Points.Of(height) - 2 * Margin;

    /// <summary>Leaves room.</summary>
    public void Space(double room) => Y += room;

    /// <summary>Begins a new page unless there is this much room left.</summary>
    public void Need(double room)
    {
        if (Y + room <= Margin + Height)
            return;
        EndPage();
        Y = Margin;
    }

    /// <summary>Text over the whole width, broken into lines.</summary>
    public void Text(string text, double size, TypeFace? face = null) => Row([(text, Width)], size, face);

    /// <summary>Texts side by side in columns of these widths, each broken into lines.</summary>
    public void Row(IReadOnlyList<(string Text, double Width)> cells, double size, TypeFace? face = null)
    {
        var set = face ?? BundledFaces.Regular;
        var broken = cells.Select(c => Broken(c.Text, set, (c.Width - 6) / size)).ToList();
        var rows = broken.Max(b => b.Count);
        Need(rows * size * LineHeight);
        var x = Margin;
        foreach (var (lines, cell) in broken.Zip(cells))
        {
            for (var i = 0; i < lines.Count; i++)
                Add(new PictureLine(new MeasuredText(set, size, set.Shape(lines[i])), x, Y + size + i * size * LineHeight));
            x += cell.Width;
        }
        Y += rows * size * LineHeight + 2;
    }

    /// <summary>Adds what stands at its own place on this page.</summary>
    public void Add(PictureLine line) => _lines.Add(line);

    /// <inheritdoc cref="Add(PictureLine)"/>
    public void Add(Outline outline) => _outlines.Add(outline);

    /// <inheritdoc cref="Add(PictureLine)"/>
    public void Add(Stroke stroke) => _strokes.Add(stroke);

    /// <inheritdoc cref="Add(PictureLine)"/>
    public void Add(PlacedProof label) => _labels.Add(label);

    /// <summary>The pages.</summary>
    public IReadOnlyList<ProofPage> Finish()
    {
        EndPage();
        return _done;
    }

    private void EndPage()
    {
        _done.Add(new ProofPage(new Picture(width, height) { Outlines = [.. _outlines], Strokes = [.. _strokes], Lines = [.. _lines] },
            [.. _labels]));
        _outlines.Clear();
        _strokes.Clear();
        _lines.Clear();
        _labels.Clear();
    }

    private static List<string> Broken(string text, TypeFace face, double lineWidth)
    {
        var words = Paragraph.OfWords(text, face).ToList();
        var broken = Paragraph.Break(words, lineWidth);
        // A word wider than its column runs over the edge of it: a proof shows everything.
        return broken.TooWide is not null || words.Count == 0
            ? [text]
            : [.. broken.Lines.Select(r => string.Join(' ', words[r].Select(w => w.Text)))];
    }
}
