namespace LabelForge.Composition;

/// <summary>Pairs of figures of which none is worse than another in both, each the larger the better.</summary>
internal sealed class Front
{
    /// <summary>More points than this are merged into fewer, better than any of theirs: still an upper bound, so never a wrong "safe".</summary>
    private const int MostPoints = 2048;

    private readonly List<(decimal Ahead, decimal Share)> _points = [];

    /// <summary>The greatest first figure.</summary>
    public decimal MostAhead => _points.Max(p => p.Ahead);

    /// <summary>The greatest second figure.</summary>
    public decimal MostShare => _points.Max(p => p.Share);

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

    /// <summary>All sums of a pair from each.</summary>
    public Front Plus(Front other)
    {
        var sums = new List<(decimal Ahead, decimal Share)>(_points.Count * other._points.Count);
        foreach (var a in _points)
        {
            foreach (var b in other._points)
                sums.Add((a.Ahead + b.Ahead, a.Share + b.Share));
        }
        sums.Sort((a, b) => b.Ahead != a.Ahead ? b.Ahead.CompareTo(a.Ahead) : b.Share.CompareTo(a.Share));
        var front = new Front();
        foreach (var sum in sums)
        {
            if (front._points.Count == 0 || sum.Share > front._points[^1].Share)
                front._points.Add(sum);
        }
        return front._points.Count > MostPoints ? front.Coarser() : front;
    }

    /// <summary>Whether some pair exceeds both figures.</summary>
    public bool AnyAbove(decimal ahead, decimal share) => _points.Exists(p => p.Ahead > ahead && p.Share > share);

    private Front Coarser()
    {
        // Sorted by falling first figure and rising second: the corner over a run is its first "ahead" and last "share".
        var front = new Front();
        var run = (_points.Count + MostPoints / 8 - 1) / (MostPoints / 8);
        foreach (var chunk in _points.Chunk(run))
            front._points.Add((chunk[0].Ahead, chunk[^1].Share));
        return front;
    }
}
