namespace LabelForge.Composition;

/// <summary>
/// What can be reached of two figures at once, each the larger the better: single pairs, and lines between pairs, of which
/// every point can be reached.
/// </summary>
internal sealed class ParetoFront
{
    /// <summary>More points than this are merged into fewer, better than any of theirs: still an
    /// upper bound, so never a wrong "safe".</summary>
    private const int MostPoints = 2048;

    /// <summary>More lines than this are each replaced by their corner, for the same reason.</summary>
    private const int MostLines = 512;

    private readonly List<(decimal Ahead, decimal Share)> _points = [];

    // Each bends outwards only: the first figure falls, the second rises, ever less steeply.
    private readonly List<(decimal Ahead, decimal Share)[]> _lines = [];

    /// <summary>The greatest first figure.</summary>
    public decimal MostAhead => _points.Select(p => p.Ahead).Concat(_lines.Select(l => l[0].Ahead)).Max();

    /// <summary>The greatest second figure.</summary>
    public decimal MostShare => _points.Select(p => p.Share).Concat(_lines.Select(l => l[^1].Share)).Max();

    /// <summary>Adds a pair, unless one that is there is as good in both.</summary>
    public void Add(decimal ahead, decimal share)
    {
        foreach (var point in _points)
        {
            if (point.Ahead >= ahead && point.Share >= share)
                return;
        }
        _points.RemoveAll(p => p.Ahead <= ahead && p.Share <= share);
        _points.Add((ahead, share));
    }

    /// <summary>Adds the corners of a line that bends outwards, the greatest first figure first;
    /// of one corner alone it is a pair.</summary>
    public void AddLine(IReadOnlyList<(decimal Ahead, decimal Share)> corners)
    {
        if (corners.Count == 1)
            Add(corners[0].Ahead, corners[0].Share);
        else
            _lines.Add([.. corners]);
    }

    /// <summary>All sums of a pair from each.</summary>
    public ParetoFront Plus(ParetoFront other)
    {
        var sums = new List<(decimal Ahead, decimal Share)>(_points.Count * other._points.Count);
        foreach (var a in _points)
        {
            foreach (var b in other._points)
                sums.Add((a.Ahead + b.Ahead, a.Share + b.Share));
        }
        sums.Sort((a, b) => b.Ahead != a.Ahead ? b.Ahead.CompareTo(a.Ahead) : b.Share.CompareTo(a.Share));
        var front = new ParetoFront();
        foreach (var sum in sums)
        {
            if (front._points.Count == 0 || sum.Share > front._points[^1].Share)
                front._points.Add(sum);
        }
        if (front._points.Count > MostPoints)
            front = front.Coarser();
        front._lines.AddRange(_lines.SelectMany(l => other._points.Select(p => Sum(l, [p]))));
        front._lines.AddRange(other._lines.SelectMany(l => _points.Select(p => Sum(l, [p]))));
        front._lines.AddRange(_lines.SelectMany(l => other._lines.Select(o => Sum(l, o))));
        if (front._lines.Count > MostLines)
            front.BluntLines();
        return front;
    }

    /// <summary>Whether some pair exceeds both figures.</summary>
    public bool AnyAbove(decimal ahead, decimal share) =>
        _points.Exists(p => p.Ahead > ahead && p.Share > share) || _lines.Exists(l => AnyAbove(l, ahead, share));

    private static bool AnyAbove((decimal Ahead, decimal Share)[] line, decimal ahead, decimal share)
    {
        for (var at = 0; at < line.Length; at++)
        {
            if (line[at].Ahead > ahead && line[at].Share > share)
                return true;
            if (at == 0)
                continue;
            // From one corner to the next the share passes its figure before the lead falls under its own.
            var (from, to) = (line[at - 1], line[at]);
            if (from.Ahead > ahead && to.Share > share
                && (share - from.Share) * (from.Ahead - to.Ahead) < (from.Ahead - ahead) * (to.Share - from.Share))
                return true;
        }
        return false;
    }

    // The sides of both, the steepest fall of the lead last.
    private static (decimal Ahead, decimal Share)[] Sum((decimal Ahead, decimal Share)[] one, (decimal Ahead, decimal Share)[] other)
    {
        var corners = new (decimal Ahead, decimal Share)[one.Length + other.Length - 1];
        corners[0] = (one[0].Ahead + other[0].Ahead, one[0].Share + other[0].Share);
        var (a, b) = (1, 1);
        for (var at = 1; at < corners.Length; at++)
        {
            var takeOne = b == other.Length || (a < one.Length && IsFlatter(Side(one, a), Side(other, b)));
            var side = takeOne ? Side(one, a++) : Side(other, b++);
            corners[at] = (corners[at - 1].Ahead + side.Ahead, corners[at - 1].Share + side.Share);
        }
        return corners;
    }

    private static (decimal Ahead, decimal Share) Side((decimal Ahead, decimal Share)[] line, int to) =>
        (line[to].Ahead - line[to - 1].Ahead, line[to].Share - line[to - 1].Share);

    private static bool IsFlatter((decimal Ahead, decimal Share) one, (decimal Ahead, decimal Share) other) =>
        -one.Ahead * other.Share <= -other.Ahead * one.Share;

    private ParetoFront Coarser()
    {
        // Sorted by falling first figure and rising second: the corner over a run is its first "ahead" and last "share".
        var front = new ParetoFront();
        var run = (_points.Count + MostPoints / 8 - 1) / (MostPoints / 8);
        foreach (var chunk in _points.Chunk(run))
            front._points.Add((chunk[0].Ahead, chunk[^1].Share));
        return front;
    }

    private void BluntLines()
    {
        foreach (var line in _lines)
            Add(line[0].Ahead, line[^1].Share);
        _lines.Clear();
    }
}
