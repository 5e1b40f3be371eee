namespace LabelForge.Composition.Asking;

/// <summary>
/// The bounds of a list in floating point, for choosing what to ask: the closed forms of <see cref="Polytope"/>, some twenty
/// times as fast. Nothing is proved by it.
/// </summary>
internal sealed class QuickList
{
    private const double Slack = 1e-9;

    private readonly ListedOrder _listed;
    private readonly double _line;
    private readonly int[] _ordered;
    private readonly int[][] _groups;
    private readonly double[] _least;
    private readonly double[] _greatest;

    /// <summary>Reads a material's list as it stands.</summary>
    public QuickList(MaterialModel material)
        : this(material.Part.Listed, (double)material.Line, Ordered(material.Part), [.. material.Groups],
            [.. material.Part.Constituents.Select(c => (double)c.Share.Low.Fraction)],
            [.. material.Part.Constituents.Select(c => (double)c.Share.High.Fraction)])
    {
    }

    private QuickList(ListedOrder listed, double line, int[] ordered, int[][] groups, double[] least, double[] greatest)
    {
        (_listed, _line, _ordered, _groups, _least, _greatest) = (listed, line, ordered, groups, least, greatest);
        var low = new double[least.Length];
        var high = new double[least.Length];
        Array.Fill(low, double.PositiveInfinity);
        for (var k = listed == ListedOrder.Label ? 0 : listed == ListedOrder.Strict ? ordered.Length : 0; k <= ordered.Length; k++)
            IsPossible |= Widen(k, low, high);
        Low = [.. groups.Select(g => Math.Min(1, g.Sum(c => low[c])))];
        High = [.. groups.Select(g => Math.Min(1, g.Sum(c => high[c])))];
    }

    /// <summary>Whether any composition meets the list.</summary>
    public bool IsPossible { get; }

    /// <summary>The least share of each name.</summary>
    public double[] Low { get; }

    /// <summary>The greatest.</summary>
    public double[] High { get; }

    /// <summary>The list with the share of one line known; null where the answer does not fit.</summary>
    public QuickList? WithShare(int constituent, double share)
    {
        double[] least = [.. _least], greatest = [.. _greatest];
        (least[constituent],
            greatest[constituent]) = (Math.Max(least[constituent], share - Slack), Math.Min(greatest[constituent], share + Slack));
        return Possible(least, greatest);
    }

    /// <summary>The list with it known who is over a line; null where a share lies on it, or the answer does not fit.</summary>
    public QuickList? WithLine(ShareLine line, double[] shares)
    {
        double[] least = [.. _least], greatest = [.. _greatest];
        for (var c = 0; c < shares.Length; c++)
        {
            if (shares[c] <= (double)line.AtMost)
                greatest[c] = Math.Min(greatest[c], (double)line.AtMost);
            else if (shares[c] >= (double)line.AtLeast)
                least[c] = Math.Max(least[c], (double)line.AtLeast);
            else
                return null;
        }
        return Possible(least, greatest);
    }

    /// <summary>The list with each share's band known.</summary>
    public QuickList? WithBands(ReadOnlySpan<double> edges, double[] shares)
    {
        double[] least = [.. _least], greatest = [.. _greatest];
        for (var c = 0; c < shares.Length; c++)
        {
            foreach (var edge in edges)
            {
                if (shares[c] > edge)
                    least[c] = Math.Max(least[c], edge);
                else
                    greatest[c] = Math.Min(greatest[c], edge);
            }
        }
        return Possible(least, greatest);
    }

    private QuickList? Possible(double[] least, double[] greatest) =>
        new QuickList(_listed, _line, _ordered, _groups, least, greatest) is { IsPossible: true } list ? list : null;

    private static int[] Ordered(MaterialPart part) => part.Listed switch
    {
        ListedOrder.None => [],
        ListedOrder.Strict => [.. Enumerable.Range(0, part.Constituents.Length)],
        _ => [.. Enumerable.Range(0, part.Constituents.Length).Where(c => !part.Constituents[c].IsColourant)],
    };

    // Widens the bounds by the set whose one-percent line stands after the first k; whether that set is possible at all.
    private bool Widen(int k, double[] low, double[] high)
    {
        double[] least = [.. _least], greatest = [.. _greatest];
        if (_listed == ListedOrder.Label)
        {
            for (var at = 0; at < _ordered.Length; at++)
            {
                if (at < k)
                    least[_ordered[at]] = Math.Max(least[_ordered[at]], _line);
                else
                    greatest[_ordered[at]] = Math.Min(greatest[_ordered[at]], _line);
            }
        }
        for (var at = k - 2; at >= 0; at--)
            least[_ordered[at]] = Math.Max(least[_ordered[at]], least[_ordered[at + 1]]);
        for (var at = 1; at < k; at++)
            greatest[_ordered[at]] = Math.Min(greatest[_ordered[at]], greatest[_ordered[at - 1]]);
        var (sumLeast, sumGreatest) = (0.0, 0.0);
        for (var c = 0; c < least.Length; c++)
        {
            if (least[c] > greatest[c] + Slack)
                return false;
            (sumLeast, sumGreatest) = (sumLeast + least[c], sumGreatest + greatest[c]);
        }
        if (sumLeast > 1 + Slack || sumGreatest < 1 - Slack)
            return false;
        var place = new int[least.Length];
        Array.Fill(place, k);
        for (var at = 0; at < k; at++)
            place[_ordered[at]] = at;
        for (var c = 0; c < least.Length; c++)
        {
            var chained = place[c] < k;
            low[c] = Math.Min(low[c], Math.Max(least[c], Moved(greatest, greatest[c], sumGreatest - 1, chained ? place[c] + 1 : k, k, 1)));
            high[c] = Math.Max(high[c], Math.Min(greatest[c], Moved(least, least[c], 1 - sumLeast, chained ? place[c] - 1 : -1, -1, -1)));
        }
        return true;
    }

    // Moves a share, and along with it whoever stands in its way in the chain, until the sum is whole.
    private double Moved(double[] bounds, double level, double room, int from, int end, int step)
    {
        var moved = 1;
        room = Math.Max(0, room);
        for (var at = from; at != end; at += step, moved++)
        {
            var next = bounds[_ordered[at]];
            var need = Math.Abs(level - next) * moved;
            if (need >= room)
                break;
            (room, level) = (room - need, next);
        }
        return level - step * (room / moved);
    }
}
