namespace LabelForge.Composition;

/// <summary>
/// The composition of a material that is nearest to what is usual: of all that its list allows, the one of least relative
/// entropy, the sum of x ln(x/p) - x + p over the constituents, where p is the usual share and x the share.
/// </summary>
/// <remarks>
/// The function is convex, and strictly so where p is above 0: over one <see cref="Polytope"/> there is one answer. Its dual
/// has one variable, the multiplier m of the sum: for a given m every free share is p e^m between its bounds, and a
/// run of the chain that p would turn round stands level, at the geometric mean of its p times e^m between the bounds that all
/// of the run keep (pooling of adjacent violators, which holds for any convex functions of one variable). The sum rises with
/// m, and the m that makes it 1 is found by Newton's steps inside a shrinking interval. Over a union the least of all counts.
/// </remarks>
internal static class LeastEntropy
{
    private const double SumTolerance = 1e-13;
    private const int MostSteps = 200;

    /// <summary>The nearest composition over a union of sets: the shares, which sum to 1.</summary>
    /// <param name="pieces">The sets; none is empty, and there is at least one.</param>
    /// <param name="usual">The usual share of each constituent, above 0.</param>
    public static double[] Over(IReadOnlyList<Polytope> pieces, double[] usual)
    {
        var (best, least) = (Array.Empty<double>(), double.PositiveInfinity);
        foreach (var piece in pieces)
        {
            var shares = Within(piece, usual);
            var entropy = Entropy(shares, usual);
            if (entropy < least)
                (best, least) = (shares, entropy);
        }
        return best;
    }

    /// <summary>The relative entropy of shares to usual ones; 0 where they are the same.</summary>
    public static double Entropy(ReadOnlySpan<double> shares, ReadOnlySpan<double> usual)
    {
        var sum = 0.0;
        for (var at = 0; at < shares.Length; at++)
            sum += (shares[at] > 0 ? shares[at] * Math.Log(shares[at] / usual[at]) : 0) - shares[at] + usual[at];
        return sum;
    }

    private static double[] Within(Polytope piece, double[] usual)
    {
        var pool = new Pool(piece, usual);
        // Beyond these every share is at one of its bounds, so the sum is on either side of 1.
        var (low, high) = (-700.0, 700.0);
        var m = 0.0;
        for (var step = 0; step < MostSteps && high - low > 1e-15; step++)
        {
            var (sum, slope) = pool.At(m);
            if (Math.Abs(sum - 1) <= SumTolerance)
                break;
            (low, high) = sum < 1 ? (m, high) : (low, m);
            var newton = slope > 0 ? m - (sum - 1) / slope : double.NaN;
            m = newton > low && newton < high ? newton : low + (high - low) / 2;
        }
        return pool.Shares;
    }

    /// <summary>The shares for a multiplier.</summary>
    private sealed class Pool
    {
        private readonly double[] _low;
        private readonly double[] _high;
        private readonly double[] _log;
        private readonly int[] _chain;
        private readonly int[] _free;
        private readonly Run[] _runs;

        public Pool(Polytope piece, double[] usual)
        {
            _low = [.. piece.LeastShares.Select(s => (double)s)];
            _high = [.. piece.GreatestShares.Select(s => (double)s)];
            _log = [.. usual.Select(u => Math.Log(u))];
            _chain = [.. piece.Chain];
            _free = [.. Enumerable.Range(0, usual.Length).Except(_chain)];
            _runs = new Run[_chain.Length];
            Shares = new double[usual.Length];
        }

        public double[] Shares { get; }

        /// <summary>Sets the shares; their sum, and how fast it rises with the multiplier.</summary>
        public (double Sum, double Slope) At(double m)
        {
            var (sum, slope) = (0.0, 0.0);
            foreach (var c in _free)
                Set(c, Math.Exp(Math.Min(_log[c] + m, 1)), _low[c], _high[c]);
            var count = 0;
            foreach (var c in _chain)
            {
                var run = new Run(_log[c], 1, _low[c], _high[c], m);
                // Merged where the one before would stand lower: bounds fall along the chain, so what both keep is never empty.
                while (count > 0 && _runs[count - 1].Share < run.Share)
                    run = _runs[--count].With(run, m);
                _runs[count++] = run;
            }
            var at = 0;
            foreach (var run in _runs.AsSpan(0, count))
            {
                for (var i = 0; i < run.Count; i++)
                    Set(_chain[at++], run.Share, run.Low, run.High);
            }
            return (sum, slope);

            void Set(int c, double share, double low, double high)
            {
                Shares[c] = Math.Clamp(share, low, Math.Max(low, high));
                sum += Shares[c];
                slope += share > low && share < high ? share : 0;
            }
        }
    }

    /// <summary>Neighbours of the chain that stand level.</summary>
    private readonly record struct Run(double LogSum, int Count, double Low, double High, double M)
    {
        /// <summary>Their common share.</summary>
        public double Share { get; } = Math.Clamp(Math.Exp(Math.Min(LogSum / Count + M, 1)), Low, Math.Max(Low, High));

        public Run With(Run later, double m) =>
            new(LogSum + later.LogSum, Count + later.Count, Math.Max(Low, later.Low), Math.Min(High, later.High), m);
    }
}
