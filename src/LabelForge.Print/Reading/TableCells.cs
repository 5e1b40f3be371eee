using LabelForge.Checks.Reading;

namespace LabelForge.Print.Reading;

/// <summary>
/// What stands in cells. A table of words and their values, and names in a grid, are read row by row, columns of text one after
/// the other; which they are is told by the lines that stand beside one another.
/// </summary>
internal static class TableCells
{
    // Words of a cell's line; what has more is text in columns.
    private const int MostWords = 5;

    // Of the type's size: rows of a grid stand farther apart than lines of text.
    private const double LooseRows = 1.7;
    private const double SameRow = 0.35;

    // A cell of two lines has them closer together.
    private const double CloseLines = 1.3;

    // Rows of a table of words and their values, and the words of the longest: "Best before the end of (month and year)".
    private const int FewestFacts = 3;
    private const int MostWordsOfFact = 8;

    // Of the type's size, and of the spaces elsewhere in the block: a gap in a line that is no space.
    private const double LeastGap = 0.8;
    private const double WiderThanSpace = 2.2;
    private const double Flush = 0.5;

    // Two words that reach the edge are a stretched line where so many other lines do.
    private const int LinesOfText = 3;
    private const double SameStart = 0.15;

    /// <summary>
    /// The lines of columns that are rows of cells, row by row, with what stands over the first row before them; and the words below
    /// the last row. Null where the columns are read one after the other.
    /// </summary>
    public static (IReadOnlyList<ImmutableArray<PdfWord>> Lines, ImmutableArray<PdfWord> Below)? Of(
        IReadOnlyList<ImmutableArray<PdfWord>> columns)
    {
        var lines = columns.Select(c => LinesOf(c).ToArray()).ToArray();
        var same = SameRow * lines[0][0][0].Size;
        // A row begins where every column that reaches so far down has a line, and more than one does.
        var rows = lines.SelectMany(c => c.Select(l => l[0].Down)).Order()
            .Where(d => lines.Count(c => c.Any(l => IsAt(l, d))) > 1 && lines.All(c => c[^1][0].Down < d - same || c.Any(l => IsAt(l, d))))
            .Aggregate(new List<double>(), (all, d) => all.Count > 0 && d - all[^1] < same ? all : [.. all, d]);
        if (lines.Length == 2 && Facts(lines[0], lines[1]) is { } facts)
            return (facts, []);
        if (rows.Count < 2)
            return null;
        if (lines.Length == 2 && Cut(lines, rows) is { } table && table.Lines[0].All(l => IsWord(l) && rows.Any(d => IsAt(l, d))))
            return ([.. table.Head, .. Cells(table.Lines, rows).SelectMany(
                row => row[1].Length > 0 ? row[1].Skip(1).Prepend([.. row[0][0], .. row[1][0]]) : row[0])], table.Below);
        // The last row of a grid may have a cell in the first column alone.
        var step = rows[^1] - rows[^2];
        if (lines[0].Where(l => l[0].Down > rows[^1] + same).Select(l => (double?)l[0].Down).FirstOrDefault() is { } last
            && Math.Abs(last - rows[^1] - step) < same)
            rows.Add(last);
        return Cut(lines, rows) is { } grid && IsGrid(grid.Lines, rows)
            ? ([.. grid.Head, .. Cells(grid.Lines, rows).SelectMany(row => row.SelectMany(c => c))], grid.Below)
            : null;
    }

    // A table of words and their values whose cells stand at any height beside one another: "Best before" over "the end of", and the
    // date at half their height. Each row begins with the word's lines as one.
    private static ImmutableArray<PdfWord>[]? Facts(ImmutableArray<PdfWord>[] left, ImmutableArray<PdfWord>[] right)
    {
        var words = Close(left).Select(c => c.SelectMany(l => l).ToImmutableArray()).ToArray();
        var values = Close(right).ToArray();
        if (words.Length < FewestFacts || words.Length != values.Length
            || !words.All(w => w.Length <= MostWordsOfFact && HasNoStop(w[..^1]))
            || words.Count(w => IsWord(w, MostWordsOfFact)) * 2 <= words.Length)
            return null;
        return words.Zip(values).All(p => p.First[0].Top < p.Second[^1][0].Bottom && p.Second[0][0].Top < p.First[^1].Bottom)
            ? [.. words.Zip(values).SelectMany(p => p.Second.Skip(1).Prepend([.. p.First, .. p.Second[0]]))]
            : null;
    }

    // The lines of a column, those close to one another together.
    private static IEnumerable<ImmutableArray<PdfWord>[]> Close(ImmutableArray<PdfWord>[] lines)
    {
        var start = 0;
        for (var i = 1; i <= lines.Length; i++)
        {
            if (i < lines.Length
                && lines[i][0].Down - lines[i - 1][0].Down < CloseLines * Math.Max(lines[i][0].Size, lines[i - 1][0].Size))
                continue;
            yield return lines[start..i];
            start = i;
        }
    }

    private static IEnumerable<ImmutableArray<PdfWord>[][]> Cells(ImmutableArray<PdfWord>[][] columns, List<double> rows) =>
        rows.Select((_, i) => columns.Select(c => c.Where(l => RowOf(l, rows) == i).ToArray()).ToArray());

    // The lines of the rows, those over them, and the words below.
    private static (ImmutableArray<PdfWord>[] Head, ImmutableArray<PdfWord>[][] Lines, ImmutableArray<PdfWord> Below)? Cut(
        ImmutableArray<PdfWord>[][] columns, List<double> rows)
    {
        var same = SameRow * columns[0][0][0].Size;
        var all = columns.SelectMany(c => c).OrderBy(l => l[0].Down).ToArray();
        var end = all.Where(l => l[0].Down > rows[^1] - same)
            .Aggregate(rows[^1], (to, l) => l[0].Down - to < CloseLines * l[0].Size ? l[0].Down : to) + same;
        var lines = columns.Select(c => c.Where(l => l[0].Down >= rows[0] - same && l[0].Down < end).ToArray()).ToArray();
        return lines.Any(c => c.Length == 0)
            ? null
            : ([.. all.Where(l => l[0].Down < rows[0] - same)], lines, [.. all.Where(l => l[0].Down >= end).SelectMany(l => l)]);
    }

    /// <summary>
    /// A line in the parts between which more than a space stands, and what stands beside the column that it is stretched to; "Lot"
    /// and its code stay one.
    /// </summary>
    /// <param name="line">The words of a line.</param>
    /// <param name="block">Those of the block that it stands in.</param>
    public static (IReadOnlyList<ImmutableArray<PdfWord>> Parts, ImmutableArray<PdfWord> Aside) Parted(
        ImmutableArray<PdfWord> line, ImmutableArray<PdfWord> block)
    {
        var gaps = Gaps(line);
        if (gaps.Length == 0 || gaps.Max() < LeastGap * line[0].Size)
            return ([line], []);
        // In a line stretched to the edge of its column all spaces are wide.
        var others = LinesOf(block).Where(l => l[0].Down != line[0].Down).ToArray();
        bool Ends(int i, int fewest) => others.Count(l => Math.Abs(line[i].To - l[^1].To) < Flush * line[i].Size) >= fewest;
        // Words of a second column begin at one place.
        bool Begins(int i) => others.Count(l => l.Any(w => Math.Abs(line[i].From - w.From) < SameStart * w.Size)) > 1;
        var stretched = Enumerable.Range(0, line.Length)
            .LastOrDefault(i => (i > 1 && Ends(i, 1)) || (i == 1 && Ends(i, LinesOfText) && !Begins(i)));
        var space = Math.Min(gaps.Min(), Space(block));
        var parts = new List<ImmutableArray<PdfWord>>();
        var start = 0;
        for (var i = stretched; i < gaps.Length; i++)
        {
            if (gaps[i] < Math.Max(LeastGap * line[i].Size, WiderThanSpace * space)
                || IsBullet(line[i].Text) || IsWord(line[start..(i + 1)]))
                continue;
            // Beside the edge of a stretched column stands something else.
            if (i == stretched && i > 0)
                return ([line[..(i + 1)]], line[(i + 1)..]);
            parts.Add(line[start..(i + 1)]);
            start = i + 1;
        }
        return ([.. parts, line[start..]], []);
    }

    /// <summary>Whether a word is what stands before an item: a dot, a dash, a number.</summary>
    public static bool IsBullet(string word) =>
        word.Length <= 3 && !word.Any(char.IsLetter) && (!word.Any(char.IsDigit) || word[^1] is '.' or ')');

    // Between words, without what their letters are set apart.
    private static double[] Gaps(ImmutableArray<PdfWord> line) =>
        [.. line.Zip(line.Skip(1), (a, b) => b.From - a.To - (2 * Math.Max(Tracking(a), Tracking(b))))];

    private static double Tracking(PdfWord word) => word.Letters.Length < 2 ? 0
        : Math.Max(0, word.Letters.Zip(word.Letters.Skip(1), (a, b) => b.StartBaseLine.X - a.EndBaseLine.X).Order()
            .ElementAt((word.Letters.Length - 1) / 2));

    // The space that is usual in a block, or more than any gap where it has too few.
    private static double Space(ImmutableArray<PdfWord> block)
    {
        var gaps = LinesOf(block).SelectMany(Gaps).Order().ToArray();
        return gaps.Length == 0 ? double.MaxValue : gaps[gaps.Length / 4];
    }

    // "Lot", "Best before:": a word that wants a value.
    private static bool IsWord(ImmutableArray<PdfWord> line, int most = MostWords) =>
        string.Join(' ', line.Select(w => w.Text)) is var text
            && line.Length <= most && !text.Any(char.IsDigit)
            && (text.IndexOf(':') is var colon && colon == text.Length - 1 || (colon < 0 && LabelWords.BeginsPart(text)));

    // Names: no stop, no comma; a column holds a hole beside a name of two lines, or rows stand apart.
    private static bool IsGrid(ImmutableArray<PdfWord>[][] columns, List<double> rows) =>
        columns.All(c => c.All(IsItem))
            && (columns.Any(c => c.Any(l => l[0].Down < rows[^1] && !rows.Any(d => IsAt(l, d))))
                || rows.Zip(rows.Skip(1), (a, b) => b - a).Min() > LooseRows * columns[0][0][0].Size);

    /// <summary>Whether a line may be an item, or a line of one: few words and no stop.</summary>
    public static bool IsItem(ImmutableArray<PdfWord> line) => line.Length <= MostWords && HasNoStop(line);

    private static bool HasNoStop(ImmutableArray<PdfWord> line) =>
        !line.Any(w => !IsBullet(w.Text) && w.Text[^1] is ',' or ';' or '.' or ':');

    private static int RowOf(ImmutableArray<PdfWord> line, List<double> rows) =>
        rows.FindLastIndex(d => d <= line[0].Down + (SameRow * line[0].Size));

    private static bool IsAt(ImmutableArray<PdfWord> line, double down) => Math.Abs(line[0].Down - down) < SameRow * line[0].Size;

    /// <summary>Words by their lines, each from left to right.</summary>
    public static IEnumerable<ImmutableArray<PdfWord>> LinesOf(ImmutableArray<PdfWord> words)
    {
        var line = new List<PdfWord>();
        foreach (var word in words.OrderBy(w => w.Down))
        {
            if (line.Count > 0 && word.Down - line[^1].Down > SameRow * word.Size)
            {
                yield return [.. line.OrderBy(w => w.From)];
                line = [];
            }
            line.Add(word);
        }
        if (line.Count > 0)
            yield return [.. line.OrderBy(w => w.From)];
    }
}
