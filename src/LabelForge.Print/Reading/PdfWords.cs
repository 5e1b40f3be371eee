using UglyToad.PdfPig.Content;

namespace LabelForge.Print.Reading;

/// <summary>A word as it stands on a page, in the frame of its own baseline: along it, and down from it.</summary>
/// <param name="Letters">Its letters.</param>
/// <param name="Text">What they say.</param>
/// <param name="From">Where it begins along the baseline, in points.</param>
/// <param name="To">Where it ends.</param>
/// <param name="Down">How far down its baseline lies; smaller is higher.</param>
/// <param name="Size">The size of its type in points.</param>
/// <param name="Turn">How the text is turned, in whole degrees against the clock.</param>
internal sealed record PdfWord(ImmutableArray<Letter> Letters, string Text, double From, double To, double Down, double Size, int Turn)
{
    public double Top => Down - (Size * 0.75);

    public double Bottom => Down + (Size * 0.22);
}

/// <summary>
/// Words out of letters, by the gaps between them: letters set apart stay one word as long as the gaps between words are wider
/// than those between its letters. Turned text is read along its own baseline.
/// </summary>
internal static class PdfWords
{
    // Of the type's size. A word space of usual faces is 0.2 to 0.35; a run of text is broken where more stands open than any
    // letter spacing and word space together.
    private const double LeastWordGap = 0.17;
    private const double LeastGapBesideSpaces = 0.45;
    private const double MostTracking = 0.6;
    private const double CloseSet = 0.03;
    private const double AlikeGaps = 0.1;
    private const double RunBreak = 1.6;
    private const double SameBaseline = 0.25;

    // Text on a curve: so many letters, in so many turns of five degrees, none turned by more against the last.
    private const int FewestOfCurve = 5;
    private const int FewestTurns = 3;
    private const int MostTurnOfLetter = 40;

    /// <summary>The turn of words whose letters are each turned otherwise.</summary>
    public const int OnCurve = -1;

    // With fewer pairs of letters than this a run does not tell how far its letters are set apart: its face does.
    private const int EnoughPairs = 4;

    /// <summary>The words of letters, a list for each way in which text is turned, the one with the most letters first.</summary>
    public static IEnumerable<ImmutableArray<PdfWord>> Of(IEnumerable<Letter> letters)
    {
        var placed = letters.Where(l => l.Value.Length > 0).Select(Placed.Of).ToArray();
        var curves = Curves(placed).ToArray();
        var straight = placed.Except(curves.SelectMany(c => c));
        return straight.GroupBy(p => p.Turn).OrderByDescending(g => g.Count()).ThenBy(g => g.Key).Select(g => Words([.. g], g.Key))
            .Concat(curves.Select(Curved));
    }

    // Letters drawn one after the other, each beginning near where the last ended and turned a little from it.
    private static IEnumerable<List<Placed>> Curves(Placed[] letters)
    {
        var run = new List<Placed>();
        foreach (var letter in letters)
        {
            if (run.Count > 0 && !Follows(run[^1], letter))
            {
                if (IsCurve(run))
                    yield return run;
                run = [];
            }
            run.Add(letter);
        }
        if (IsCurve(run))
            yield return run;
    }

    private static bool Follows(Placed last, Placed next)
    {
        var (dx, dy) = (next.Letter.StartBaseLine.X - last.Letter.EndBaseLine.X, next.Letter.StartBaseLine.Y - last.Letter.EndBaseLine.Y);
        var turn = Math.Abs(last.Turn - next.Turn);
        return Math.Abs(last.Size - next.Size) < 0.1 * last.Size
            && (dx * dx) + (dy * dy) < last.Size * last.Size
            && Math.Min(turn, 360 - turn) <= MostTurnOfLetter;
    }

    private static bool IsCurve(List<Placed> run) =>
        run.Count >= FewestOfCurve && run.Select(l => l.Turn).Distinct().Count() >= FewestTurns;

    // Along the curve each letter stands behind the last; the words of one curve are one line.
    private static ImmutableArray<PdfWord> Curved(List<Placed> curve)
    {
        var at = 0.0;
        var unrolled = new List<Placed>();
        foreach (var letter in curve)
        {
            if (unrolled.Count > 0)
            {
                var (from, to) = (unrolled[^1].Letter.EndBaseLine, letter.Letter.StartBaseLine);
                at += Math.Sqrt(((to.X - from.X) * (to.X - from.X)) + ((to.Y - from.Y) * (to.Y - from.Y)));
            }
            unrolled.Add(letter with { From = at, To = at + (letter.To - letter.From), Down = 0 });
            at += letter.To - letter.From;
        }
        var face = Median(Gaps(unrolled));
        // Turned by nothing that level text is: they are placed by their boxes.
        return [.. Parted(unrolled, face, OnCurve)];
    }

    private static ImmutableArray<PdfWord> Words(Placed[] letters, int turn)
    {
        var runs = Rows(letters).SelectMany(Runs).ToArray();
        var faces = runs.SelectMany(r => Gaps(r).Select(g => (Face: Face(r[0]), Gap: g))).GroupBy(g => g.Face)
            .ToDictionary(g => g.Key, g => Median(g.Select(x => x.Gap)));
        return [.. runs.SelectMany(r => Parted(r, faces.GetValueOrDefault(Face(r[0])), turn))];
    }

    private static (string? Font, double Size) Face(Placed letter) => (letter.Letter.FontName, Math.Round(letter.Size, 1));

    // Letters on one baseline, from its start; a letter drawn twice for weight or shadow counts once.
    private static IEnumerable<List<Placed>> Rows(Placed[] letters)
    {
        var row = new List<Placed>();
        foreach (var letter in letters.OrderBy(l => l.Down))
        {
            if (row.Count > 0 && letter.Down - row[^1].Down > SameBaseline * Math.Min(letter.Size, row[^1].Size))
            {
                yield return row;
                row = [];
            }
            row.Add(letter);
        }
        if (row.Count > 0)
            yield return row;
    }

    private static IEnumerable<List<Placed>> Runs(List<Placed> row)
    {
        var run = new List<Placed>();
        foreach (var letter in row.OrderBy(l => l.From).ThenBy(l => l.To))
        {
            if (run.Count > 0
                && run[^1] is var last
                && last.Letter.Value == letter.Letter.Value
                && Math.Abs(last.From - letter.From) < 0.15 * letter.Size && !letter.IsSpace)
                continue;
            // Letters of two sizes part only where they stand apart: "Net Wt" and a large figure after it.
            if (run.Count > 0
                && (letter.From - run[^1].To > RunBreak * Math.Max(letter.Size, run[^1].Size)
                    || (Math.Abs(letter.Size - run[^1].Size) > 0.2 * letter.Size
                        && letter.From - run[^1].To > LeastWordGap * letter.Size)))
            {
                yield return run;
                run = [];
            }
            run.Add(letter);
        }
        if (run.Count > 0)
            yield return run;
    }

    // The gaps between letters with no space between them, as shares of their size.
    private static IEnumerable<double> Gaps(List<Placed> run)
    {
        for (var i = 1; i < run.Count; i++)
        {
            if (!run[i].IsSpace && !run[i - 1].IsSpace)
                yield return (run[i].From - run[i - 1].To) / Math.Max(run[i].Size, 0.1);
        }
    }

    private static IEnumerable<PdfWord> Parted(List<Placed> run, double ofFace, int turn)
    {
        var gaps = Gaps(run).ToArray();
        // Few pairs tell it where they are alike and spaces are written: "1 0 0  g".
        var areAlike = gaps.Length > 1 && gaps.Max() - gaps.Min() < AlikeGaps && run.Any(l => l.IsSpace);
        var tracking = Math.Clamp(gaps.Length >= EnoughPairs || areAlike ? Median(gaps) : ofFace, 0, MostTracking);
        // Letters that are set apart vary beside their spaces; where they are not, a gap is a space that was left out.
        var least = tracking + (run.Any(l => l.IsSpace) && tracking > CloseSet ? LeastGapBesideSpaces : LeastWordGap);
        var word = new List<Placed>();
        foreach (var letter in run)
        {
            if (word.Count > 0 && (letter.IsSpace || letter.From - word[^1].To > least * letter.Size))
            {
                yield return Word(word, turn);
                word = [];
            }
            if (!letter.IsSpace)
                word.Add(letter);
        }
        if (word.Count > 0)
            yield return Word(word, turn);
    }

    private static PdfWord Word(List<Placed> letters, int turn) => new(
        [.. letters.Select(l => l.Letter)], string.Concat(letters.Select(l => l.Letter.Value)), letters[0].From, letters.Max(l => l.To),
        letters[0].Down, letters.Max(l => l.Size), turn);

    private static double Median(IEnumerable<double> values)
    {
        var ordered = values.Order().ToArray();
        return ordered.Length == 0 ? 0 : ordered[ordered.Length / 2];
    }

    private readonly record struct Placed(Letter Letter, double From, double To, double Down, double Size, int Turn)
    {
        public bool IsSpace => string.IsNullOrWhiteSpace(Letter.Value);

        public static Placed Of(Letter letter)
        {
            var (from, to) = (letter.StartBaseLine, letter.EndBaseLine);
            var (dx, dy) = (to.X - from.X, to.Y - from.Y);
            var length = Math.Sqrt((dx * dx) + (dy * dy));
            var turn = length < 1e-6 ? 0 : (int)Math.Round(Math.Atan2(dy, dx) * 180 / Math.PI);
            // A hand's breadth of a degree is a skewed scan, not a turn.
            turn = (turn + 362) / 5 * 5 % 360;
            var (sin, cos) = Math.SinCos(turn * Math.PI / 180);
            // Of turned text the size is told by the box from descenders to ascenders, some 1.16 of it in usual faces.
            var (low, high) = (letter.GlyphRectangleLoose.BottomLeft, letter.GlyphRectangleLoose.TopLeft);
            var loose = Math.Sqrt(((high.X - low.X) * (high.X - low.X)) + ((high.Y - low.Y) * (high.Y - low.Y))) * 0.86;
            var size = loose > 0.5 && (letter.PointSize < 0.5 || letter.PointSize > 1.7 * loose || letter.PointSize < loose / 1.7)
                ? loose
                : Math.Max(0.5, letter.PointSize);
            var start = (from.X * cos) + (from.Y * sin);
            return new(letter, start, start + length, (from.X * sin) - (from.Y * cos), size, turn);
        }
    }
}
