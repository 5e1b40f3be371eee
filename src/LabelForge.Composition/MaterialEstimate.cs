namespace LabelForge.Composition;

/// <summary>The best estimate of a material's composition, within what its list allows.</summary>
internal static class MaterialEstimate
{
    // A share of nothing has no logarithm: what is usually as good as absent counts as one part in a thousand million.
    private const double LeastUsual = 1e-9;

    /// <summary>
    /// The composition nearest to the usual one, where a usual share of every constituent is known; else the middle: on the
    /// straight line from all the least shares to all the greatest, the point that sums to 1.
    /// </summary>
    /// <param name="part">The list.</param>
    /// <param name="pieces">The sets that it allows; there is at least one.</param>
    public static decimal[] Of(MaterialPart part, IReadOnlyList<Polytope> pieces)
    {
        var count = part.Constituents.Length;
        decimal[] low = [.. Enumerable.Range(0, count).Select(c => pieces.Min(p => p.Least(c)))];
        decimal[] high = [.. Enumerable.Range(0, count).Select(c => pieces.Max(p => p.Greatest(c)))];
        if (part.Constituents.Any(c => c.Usual is null))
            return Middle(low, high);
        var nearest = LeastEntropy.Over(pieces, [.. part.Constituents.Select(c => Math.Max(c.Usual!.Fraction, LeastUsual))]);
        decimal[] shares = [.. nearest.Select((s, c) => Math.Clamp((decimal)s, low[c], high[c]))];
        // Floating point leaves the sum some millionths of a millionth off: whoever has the room takes it.
        var off = 1 - shares.Sum();
        for (var c = 0; c < shares.Length && off != 0; c++)
        {
            var moved = Math.Clamp(shares[c] + off, low[c], high[c]);
            (off, shares[c]) = (off - (moved - shares[c]), moved);
        }
        return shares;
    }

    private static decimal[] Middle(decimal[] low, decimal[] high)
    {
        var spread = high.Sum() - low.Sum();
        var along = spread == 0 ? 0 : (1 - low.Sum()) / spread;
        return [.. low.Zip(high, (least, greatest) => least + along * (greatest - least))];
    }
}
