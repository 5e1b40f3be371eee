namespace LabelForge.Composition;

/// <summary>
/// The compositions of one material that keep each share between two bounds, keep the shares along a chain
/// descending, and sum to 1. Least and greatest shares over it have closed forms.
/// </summary>
/// <remarks>
/// Bounds and a descending chain are kept by the smaller and by the larger of two such lists, share by share. So
/// there is a least list and a greatest one, and between them (the set is convex) every sum in between occurs.
/// A share can therefore have a value exactly when the least sum with that value is at most 1 and the greatest is
/// at least 1.
/// </remarks>
internal sealed class Polytope
{
    private readonly int[] _chain;
    private readonly int[] _place;
    private readonly decimal[] _least;
    private readonly decimal[] _greatest;
    private readonly decimal _sumLeast;
    private readonly decimal _sumGreatest;

    /// <summary>The set for the given bounds and chain; it may turn out empty.</summary>
    /// <param name="least">The least share of each constituent.</param>
    /// <param name="greatest">The greatest share of each constituent.</param>
    /// <param name="chain">The constituents whose shares descend, in that order.</param>
    public Polytope(decimal[] least, decimal[] greatest, int[] chain)
    {
        (_least, _greatest, _chain) = ([.. least], [.. greatest], chain);
        _place = new int[least.Length];
        Array.Fill(_place, -1);
        for (var at = 0; at < chain.Length; at++)
            _place[chain[at]] = at;
        // What stands later bounds what stands earlier from below, and the other way round from above.
        for (var at = chain.Length - 2; at >= 0; at--)
            _least[chain[at]] = Math.Max(_least[chain[at]], _least[chain[at + 1]]);
        for (var at = 1; at < chain.Length; at++)
            _greatest[chain[at]] = Math.Min(_greatest[chain[at]], _greatest[chain[at - 1]]);
        _sumLeast = _least.Sum();
        _sumGreatest = _greatest.Sum();
        IsEmpty = _sumLeast > 1 + CompositionLimits.Tolerance || _sumGreatest < 1 - CompositionLimits.Tolerance;
        for (var c = 0; c < _least.Length; c++)
            IsEmpty |= _least[c] > _greatest[c];
    }

    /// <summary>Whether no composition is in the set.</summary>
    public bool IsEmpty { get; }

    /// <summary>The least list: bounds that fall along the chain.</summary>
    public IReadOnlyList<decimal> LeastShares => _least;

    /// <summary>The greatest list: bounds that fall along the chain.</summary>
    public IReadOnlyList<decimal> GreatestShares => _greatest;

    /// <summary>The constituents whose shares descend, in that order.</summary>
    public IReadOnlyList<int> Chain => _chain;

    /// <summary>The greatest share that constituent <paramref name="j"/> can have.</summary>
    public decimal Greatest(int j)
    {
        // Raise j from its least share; whoever stands before it in the chain must be raised along with it.
        var room = Math.Max(0, 1 - _sumLeast);
        var level = _least[j];
        var raised = 1;
        for (var at = _place[j] - 1; at >= 0; at--, raised++)
        {
            var need = (_least[_chain[at]] - level) * raised;
            if (need >= room)
                break;
            room -= need;
            level = _least[_chain[at]];
        }
        return Math.Min(_greatest[j], level + room / raised);
    }

    /// <summary>The least share that constituent <paramref name="i"/> can have.</summary>
    public decimal Least(int i) => Lowered(i, _least[i], _greatest, _sumGreatest);

    /// <summary>
    /// The least share of every constituent while <paramref name="j"/> has the share <paramref name="q"/>, which it can have.
    /// </summary>
    public Func<int, decimal> LeastGiven(int j, decimal q)
    {
        decimal[] greatest = [.. _greatest];
        greatest[j] = q;
        var place = _place[j];
        if (place >= 0)
        {
            for (var at = place + 1; at < _chain.Length && greatest[_chain[at]] > q; at++)
                greatest[_chain[at]] = q;
        }
        var sum = greatest.Sum();
        return i => Lowered(i, _place[i] >= 0 && _place[i] < place ? Math.Max(_least[i], q) : _least[i], greatest, sum);
    }

    /// <summary>The greatest sum of some constituents' shares.</summary>
    public decimal Greatest(int[] group) => group is [var one] ? Greatest(one) : Most(group, [], 0, 1).Share;

    /// <summary>The least sum of some constituents' shares.</summary>
    public decimal Least(int[] group) => group is [var one] ? Least(one) : -Most([], group, 1, 0).Ahead;

    /// <summary>
    /// How far the sum of some shares exceeds that of others, and that sum itself, in the composition where so much of the
    /// one and so much of the other, added, are the most.
    /// </summary>
    /// <remarks>
    /// Seen level by level: at each height those whose share reaches it are a beginning of the chain, whose length is free
    /// between those that must reach it and those that may. From all the least shares the sum is raised to 1 by what gains
    /// most for its mass. Of runs of the chain only those on the outer hull of gain over length are ever worth taking, and
    /// the best length never grows with the height, so what is taken is a descending list.
    /// </remarks>
    public (decimal Ahead, decimal Share) Most(int[] over, int[] under, decimal forAhead, decimal forShare)
    {
        var weights = new Weight[_least.Length];
        foreach (var c in over)
            weights[c] += new Weight(1, 1);
        foreach (var c in under)
            weights[c] += new Weight(-1, 0);
        var reached = new Weight(0, 0);
        for (var c = 0; c < _least.Length; c++)
            reached += weights[c] * _least[c];
        var steps = Enumerable.Range(0, _least.Length).Where(c => _place[c] < 0)
            .Select(c => new Step(weights[c], 1, _greatest[c] - _least[c]))
            .Concat(ChainSteps(weights, forAhead, forShare))
            .OrderByDescending(s => s.Gain.Of(forAhead, forShare) / s.Length);
        var room = Math.Max(0, 1 - _sumLeast);
        foreach (var step in steps)
        {
            var taken = Math.Min(room, step.Length * step.Height);
            reached += step.Gain * taken / step.Length;
            room -= taken;
        }
        return (reached.Ahead, reached.Share);
    }

    private IEnumerable<Step> ChainSteps(Weight[] weights, decimal forAhead, decimal forShare)
    {
        var sums = new Weight[_chain.Length + 1];
        for (var at = 0; at < _chain.Length; at++)
            sums[at + 1] = sums[at] + weights[_chain[at]];
        decimal[] heights = [.. _chain.SelectMany(c => new[] { _least[c], _greatest[c] }).Distinct().Order()];
        for (var level = 1; level < heights.Length; level++)
        {
            var top = heights[level];
            var must = _chain.TakeWhile(c => _least[c] >= top).Count();
            var may = _chain.TakeWhile(c => _greatest[c] >= top).Count();
            for (var from = must; from < may;)
            {
                // The next corner of the hull: the farthest of those that gain most for each place of the chain.
                var to = from + 1;
                for (var other = to + 1; other <= may; other++)
                {
                    if ((sums[other] - sums[from])
                        .Of(forAhead, forShare) * (to - from) >= (sums[to] - sums[from]).Of(forAhead, forShare) * (other - from))
                        to = other;
                }
                yield return new Step(sums[to] - sums[from], to - from, top - heights[level - 1]);
                from = to;
            }
        }
    }

    // What a share counts for: how far ahead, and the share itself.
    private readonly record struct Weight(decimal Ahead, decimal Share)
    {
        public decimal Of(decimal forAhead, decimal forShare) => Ahead * forAhead + Share * forShare;

        public static Weight operator +(Weight a, Weight b) => new(a.Ahead + b.Ahead, a.Share + b.Share);

        public static Weight operator -(Weight a, Weight b) => new(a.Ahead - b.Ahead, a.Share - b.Share);

        public static Weight operator *(Weight a, decimal by) => new(a.Ahead * by, a.Share * by);

        public static Weight operator /(Weight a, decimal by) => new(a.Ahead / by, a.Share / by);
    }

    // So many constituents raised together, by up to so much each, and what that gains.
    private readonly record struct Step(Weight Gain, int Length, decimal Height);

    private decimal Lowered(int i, decimal floor, decimal[] greatest, decimal sum)
    {
        // Lower i from its greatest share; whoever stands after it in the chain must be lowered along with it.
        var excess = Math.Max(0, sum - 1);
        var level = greatest[i];
        var lowered = 1;
        if (_place[i] >= 0)
        {
            for (var at = _place[i] + 1; at < _chain.Length; at++, lowered++)
            {
                var need = (level - greatest[_chain[at]]) * lowered;
                if (need >= excess)
                    break;
                excess -= need;
                level = greatest[_chain[at]];
            }
        }
        return Math.Max(floor, level - excess / lowered);
    }
}
