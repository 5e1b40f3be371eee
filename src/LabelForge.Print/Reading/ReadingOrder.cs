namespace LabelForge.Print.Reading;

/// <summary>
/// The order in which words are read, from where they stand. A gutter is a strip free of words with lines on both its sides:
/// what is above it is read first, then what is left of it, what is right of it, and what is below. Where there is none, lines
/// are read from top to bottom.
/// </summary>
internal static class ReadingOrder
{
    // Of the type's size. Two columns may stand 0.15 in apart, which is 1.35 of 8 point type; the spaces of a justified line
    // reach 1, but not in the same place on three lines.
    private const double NarrowGutter = 0.8;
    private const double WideGutter = 1.3;
    private const int RowsBesideNarrow = 3;
    private const int RowsBesideWide = 2;
    private const double SameRow = 0.35;
    private const double WiderThanSpaces = 1.35;
    private const double SameStart = 0.3;

    // Columns stretched to both edges, with as little as a wide space between them.
    private const int RowsBesideFlush = 5;
    private const double FlushGap = 0.4;
    private const double FlushEdge = 0.1;

    // How much larger a first letter is than the text beside it.
    private const double LeastInitial = 1.6;

    // More words than a label has are read row by row, and deeper than this no label is divided.
    private const int MostWords = 3000;
    private const int Deepest = 24;

    // An empty line stands where the baselines are so much farther apart than they are elsewhere in the block.
    private const double BlockGap = 1.45;
    private const double LeastBlockGap = 1.6;

    /// <summary>The blocks of text in the order of reading; each is lines of words, and a block may hold empty lines.</summary>
    public static IEnumerable<IReadOnlyList<ImmutableArray<PdfWord>>> Blocks(ImmutableArray<PdfWord> words) =>
        words.Length > MostWords ? Divide(words, Deepest) : Divide(WithInitials(words), 0);

    // A first letter over two lines and more belongs to the word that stands beside its head.
    private static ImmutableArray<PdfWord> WithInitials(ImmutableArray<PdfWord> words)
    {
        foreach (var word in words.Where(w => w.Turn == 0 && char.IsUpper(w.Text[0]) && w.Text.Length == w.Letters.Length).ToArray())
        {
            // On the baseline of the second line it stands close before that line's first word.
            var glued = word.Letters.Length > 1;
            var size = glued ? word.Letters[1].PointSize : word.Size / LeastInitial;
            if (word.Letters[0].PointSize < LeastInitial * size)
                continue;
            var (from, to) = (glued ? word.Letters[1].StartBaseLine.X : word.To, word.Letters[0].EndBaseLine.X);
            var beside = words.Where(w => w != word && w.Size * LeastInitial <= word.Size && w.Down < word.Down - SameRow
                && w.Bottom > word.Top && w.From >= to - w.Size && w.From - from < w.Size).OrderBy(w => w.Down).ToArray();
            if (beside.Length == 0 || !char.IsLetter(beside[0].Text[0]))
                continue;
            words = words.Replace(beside[0], beside[0] with { Text = word.Text[0] + beside[0].Text, From = word.From });
            words = !glued ? words.Remove(word)
                : words.Replace(word, word with { Letters = word.Letters[1..], Text = word.Text[1..], From = from, Size = size });
        }
        return words;
    }

    private static IEnumerable<IReadOnlyList<ImmutableArray<PdfWord>>> Divide(ImmutableArray<PdfWord> words, int depth)
    {
        if (words.IsEmpty)
            return [];
        if (depth >= Deepest || (Gutter(words) ?? FlushGutter(words)) is not { } gutter)
            return [Lines(words)];
        var above = words.Where(w => Middle(w) <= gutter.Top).ToImmutableArray();
        var (left, right, below) = Beside(words, gutter);
        if (TableCells.Of([.. Columns(left), .. Columns(right)]) is { } table)
            return Divide(above, depth + 1).Append(table.Lines).Concat(Divide([.. table.Below, .. below], depth + 1));
        return new[] { above, left, right, below }.SelectMany(p => Divide(p, depth + 1));
    }

    // Where the left of two columns of items goes on below the right one, it does so to where its lines stand farther apart than
    // beside it: what stands under both is read after both.
    private static (ImmutableArray<PdfWord> Left, ImmutableArray<PdfWord> Right, ImmutableArray<PdfWord> Below) Beside(
        ImmutableArray<PdfWord> words, (double Left, double Right, double Top, double Bottom) gutter)
    {
        var middle = (gutter.Left + gutter.Right) / 2;
        var beside = words.Where(w => Middle(w) > gutter.Top && Middle(w) < gutter.Bottom).ToArray();
        var right = beside.Where(w => w.From >= middle).ToImmutableArray();
        var end = right.Max(w => w.Bottom);
        var left = TableCells.LinesOf([.. beside.Where(w => w.From < middle)]).ToArray();
        var steps = left.Zip(left.Skip(1), (a, b) => b[0].Down - a[0].Down).ToArray();
        var inside = steps.Where((_, i) => left[i][0].Bottom > right.Min(w => w.Top) && left[i + 1][0].Down < end).Order().ToArray();
        var usual = inside.Length == 0 ? left[0][0].Size * LeastBlockGap / BlockGap : inside[inside.Length / 2];
        var cut = Enumerable.Range(1, left.Length - 1)
            .FirstOrDefault(i => left[i][0].Down > end && steps[i - 1] > BlockGap * usual, left.Length);
        if (!left.Take(cut).Where(l => l[0].Bottom > right.Min(w => w.Top)).Concat(TableCells.LinesOf(right)).All(TableCells.IsItem))
            cut = left.Length;
        return ([.. left.Take(cut).SelectMany(l => l)], right,
            [.. left.Skip(cut).SelectMany(l => l), .. words.Where(w => Middle(w) >= gutter.Bottom)]);
    }

    // What is parted from top to bottom.
    private static IEnumerable<ImmutableArray<PdfWord>> Columns(ImmutableArray<PdfWord> words)
    {
        var column = new List<PdfWord>();
        foreach (var word in words.OrderBy(w => w.From))
        {
            if (column.Count > 0 && word.From - column.Max(w => w.To) > NarrowGutter * word.Size)
            {
                yield return [.. column];
                column = [];
            }
            column.Add(word);
        }
        yield return [.. column];
    }

    private static double Middle(PdfWord word) => (word.Top + word.Bottom) / 2;

    // Of all free strips to the right of a word, the one with the most lines on both sides.
    private static (double Left, double Right, double Top, double Bottom)? Gutter(ImmutableArray<PdfWord> words)
    {
        (double Left, double Right, double Top, double Bottom)? best = null;
        var bestScore = 0.0;
        foreach (var word in words)
        {
            var left = word.To;
            var right = left + (NarrowGutter * word.Size);
            var (top, bottom) = (double.NegativeInfinity, double.PositiveInfinity);
            foreach (var other in words)
            {
                if (other.From >= right || other.To <= left + 0.01)
                    continue;
                if (Middle(other) < Middle(word))
                    top = Math.Max(top, other.Bottom);
                else if (Middle(other) > Middle(word))
                    bottom = Math.Min(bottom, other.Top);
                else
                    (top, bottom) = (1, 0);
            }
            if (top >= bottom)
                continue;
            var within = words.Where(w => Middle(w) > top && Middle(w) < bottom).ToArray();
            var before = within.Where(w => w.To <= left + 0.01).ToArray();
            var after = within.Where(w => w.From >= right).ToArray();
            if (before.Length == 0 || after.Length == 0)
                continue;
            var width = after.Min(w => w.From) - before.Max(w => w.To);
            // Only lines that stand beside one another make columns.
            var (from, to) = (Math.Max(before.Min(w => w.Top), after.Min(w => w.Top)),
                Math.Min(before.Max(w => w.Bottom), after.Max(w => w.Bottom)));
            var rows = Math.Min(Rows(before.Where(w => w.Bottom > from && w.Top < to)),
                Rows(after.Where(w => w.Bottom > from && w.Top < to)));
            if (rows < (width >= WideGutter * word.Size ? RowsBesideWide : RowsBesideNarrow))
                continue;
            if (IsStretched([.. before.Where(w => w.Bottom > from && w.Top < to)], [.. after.Where(w => w.Bottom > from && w.Top < to)])
                || before.All(w => TableCells.IsBullet(w.Text)))
                continue;
            // Of strips beside as many lines the one that leaves no line of a column outside.
            var score = (rows * 100_000) + ((Rows(before) + Rows(after)) * 1000) + Math.Min(width, 900);
            if (score > bestScore)
                (best,
                    bestScore) = ((before.Max(w => w.To), after.Min(w => w.From),
                        Math.Max(top, Math.Min(before.Min(w => w.Top), after.Min(w => w.Top)) - 1),
                        Math.Min(bottom, Math.Max(before.Max(w => w.Bottom), after.Max(w => w.Bottom)) + 1)), score);
        }
        return best;
    }

    // Two columns stretched to both edges may stand closer together than the spaces of their lines: where many lines begin at one
    // place, and many end at one place just before it, nothing stands between.
    private static (double Left, double Right, double Top, double Bottom)? FlushGutter(ImmutableArray<PdfWord> words)
    {
        var first = words.Min(w => w.From);
        foreach (var starts in words.GroupBy(w => Math.Round(w.From)).Where(g => g.Count() >= RowsBesideFlush))
        {
            var (right, size) = (starts.Min(w => w.From), starts.First().Size);
            if (right - first < size)
                continue;
            var (top, bottom) = (starts.Min(w => w.Top), starts.Max(w => w.Bottom));
            var within = words.Where(w => Middle(w) > top && Middle(w) < bottom).ToArray();
            var before = within.Where(w => w.From < right - 0.5).ToArray();
            if (before.Length == 0 || within.Any(w => w.From < right - 0.5 && w.To > right - (FlushGap * size)))
                continue;
            var left = before.Max(w => w.To);
            if (Rows(before.Where(w => left - w.To < FlushEdge * size)) < RowsBesideFlush)
                continue;
            // Down to the line that runs across both.
            var across = words.Where(w => w.Top >= bottom - 0.5 && w.From < right && w.To > left).Select(w => (double?)w.Top).Min();
            var down = words.Where(w => w.Bottom <= (across ?? double.MaxValue)).Max(w => w.Bottom);
            return (left, right, top - 1, down + 1);
        }
        return null;
    }

    // In a line that is stretched to the edge, or whose letters are set apart, all spaces are wide; a gutter is wider than the
    // spaces of the lines beside it. A column's lines begin at one place, or end there; a stretched line's words begin anywhere.
    private static bool IsStretched(PdfWord[] before, PdfWord[] after)
    {
        var starts = after.GroupBy(w => Math.Round(w.Down)).Select(r => r.Min(w => w.From)).ToArray();
        var isRagged = starts.Max() - starts.Min() > SameStart * after[0].Size;
        if (!isRagged && starts.Length >= RowsBesideNarrow)
            return false;
        var (lines, stretched) = (0, 0);
        foreach (var row in before.GroupBy(w => Math.Round(w.Down)))
        {
            var all = row.Concat(after.Where(w => Math.Abs(w.Down - row.First().Down) < SameRow * w.Size)).OrderBy(w => w.From).ToArray();
            var gaps = all.Zip(all.Skip(1), (a, b) => (Gap: b.From - a.To, Across: row.Contains(a) && !row.Contains(b))).ToArray();
            var others = gaps.Where(g => !g.Across).Select(g => g.Gap).ToArray();
            if (!gaps.Any(g => g.Across) || (others.Length == 0 && !isRagged))
                continue;
            lines++;
            stretched += others.Length == 0 || gaps.First(g => g.Across).Gap < WiderThanSpaces * others.Max() ? 1 : 0;
        }
        return lines > 0 && stretched * 2 >= lines;
    }

    private static int Rows(IEnumerable<PdfWord> words)
    {
        var count = 0;
        var last = double.NegativeInfinity;
        foreach (var word in words.OrderBy(w => w.Down))
        {
            if (word.Down - last > SameRow * word.Size)
                count++;
            last = word.Down;
        }
        return count;
    }

    private static List<ImmutableArray<PdfWord>> Lines(ImmutableArray<PdfWord> words)
    {
        var rows = new List<List<PdfWord>>();
        foreach (var word in words.OrderBy(w => w.Down))
        {
            if (rows.Count > 0 && word.Down - rows[^1][^1].Down <= SameRow * Math.Min(word.Size, rows[^1][^1].Size))
                rows[^1].Add(word);
            else
                rows.Add([word]);
        }
        var steps = rows.Zip(rows.Skip(1), (a, b) => b[0].Down - a[0].Down).Order().ToArray();
        var usual = steps.Length == 0 ? 0 : steps[steps.Length / 2];
        var (lines, aside) = (new List<ImmutableArray<PdfWord>>(), new List<ImmutableArray<PdfWord>>());
        for (var i = 0; i < rows.Count; i++)
        {
            var step = i == 0 ? 0 : rows[i][0].Down - rows[i - 1][0].Down;
            if (i > 0
                && step > LeastBlockGap * Math.Min(rows[i].Max(w => w.Size), rows[i - 1].Max(w => w.Size))
                && (step > BlockGap * usual || step > 2.2 * rows[i].Max(w => w.Size)))
                lines.Add([]);
            var (parts, beside) = TableCells.Parted([.. rows[i].OrderBy(w => w.From)], words);
            lines.AddRange(parts);
            if (!beside.IsEmpty)
                aside.Add(beside);
        }
        return aside.Count == 0 ? lines : [.. lines, [], .. aside];
    }
}
