namespace LabelForge.Composition;

/// <summary>What can be said of one material's true composition: a union of <see cref="Polytope"/>s, and the bounds over it.</summary>
public sealed class MaterialModel
{
    private readonly List<Polytope> _pieces;
    private readonly Lazy<decimal[]> _composition;
    private readonly Lazy<decimal[]> _estimate;

    /// <summary>Reads a supplier's list.</summary>
    /// <exception cref="Measures.InputException">No composition meets the list.</exception>
    /// <param name="part">The list.</param>
    /// <param name="line">The share at or under which the order of a label list is free.</param>
    public MaterialModel(MaterialPart part, decimal line)
        : this(part, line, [.. PiecesOf(part, line).Where(p => !p.IsEmpty)])
    {
    }

    private MaterialModel(MaterialPart part, decimal line, List<Polytope> pieces)
    {
        (Part, Line, _pieces) = (part, line, pieces);
        if (_pieces.Count == 0)
            throw Contradiction.In(part, line);
        var names = part.Constituents.Select((c, at) => (c.Name, at)).GroupBy(c => c.Name, StringComparer.Ordinal).ToArray();
        Names = [.. names.Select(g => g.Key)];
        Groups = [.. names.Select(g => g.Select(c => c.at).ToArray())];
        Low = [.. Groups.Select(g => _pieces.Min(p => p.Least(g)))];
        High = [.. Groups.Select(g => _pieces.Max(p => p.Greatest(g)))];
        _composition = new Lazy<decimal[]>(() => MaterialEstimate.Of(part, _pieces));
        _estimate = new Lazy<decimal[]>(() => [.. Groups.Select(g => g.Sum(c => Composition[c]))]);
    }

    /// <summary>The list read.</summary>
    public MaterialPart Part { get; }

    /// <summary>The share at or under which the order of a label list is free.</summary>
    public decimal Line { get; }

    /// <summary>The names in the list, each once, in order of first mention.</summary>
    public ImmutableArray<string> Names { get; }

    /// <summary>The constituents that go by each name, by their places in the list from 0.</summary>
    public ImmutableArray<int[]> Groups { get; }

    /// <summary>The least possible share of each name in the material.</summary>
    public decimal[] Low { get; }

    /// <summary>The greatest possible share of each name in the material.</summary>
    public decimal[] High { get; }

    /// <summary>The best estimate of each name's share; within its bounds, summing to 1.</summary>
    public decimal[] Estimate => _estimate.Value;

    /// <summary>The best estimate of each line of the list, by its place; summing to 1.</summary>
    internal decimal[] Composition => _composition.Value;

    /// <summary>The sets whose union the list allows; none is empty.</summary>
    internal IReadOnlyList<Polytope> Pieces => _pieces;

    /// <summary>
    /// For each wanted pair (i, j) of names, the compositions that do most to put j over i, as how far j's share exceeds i's
    /// and j's share itself; none is worse than another in both.
    /// </summary>
    /// <remarks>
    /// In one polytope a single composition does most on both counts: the greatest share q of j and, with it, the
    /// least share p of i. Raising j never raises what i must have at the least, unless i stands before j, and then by no
    /// more than j itself rises. So for every weight between the two counts nothing beats (q - p, q). Where several
    /// constituents go by one of the names that need not be so, and the whole line between the two counts is taken.
    /// </remarks>
    internal ParetoFront[,] Fronts(bool[] wanted)
    {
        var count = Names.Length;
        var fronts = new ParetoFront[count, count];
        for (var j = 0; j < count; j++)
        {
            if (!wanted[j])
                continue;
            foreach (var piece in _pieces)
                Enter(piece, j);
        }
        return fronts;

        void Enter(Polytope piece, int j)
        {
            var one = Groups[j] is [var only] ? only : -1;
            var q = one < 0 ? 0 : piece.Greatest(one);
            var least = one < 0 ? null : piece.LeastGiven(one, q);
            for (var i = 0; i < count; i++)
            {
                if (i == j || !wanted[i])
                    continue;
                var front = fronts[i, j] ??= new ParetoFront();
                if (least is not null && Groups[i] is [var other])
                    front.Add((q - least(other)) * Part.ShareOfProduct, q * Part.ShareOfProduct);
                else
                    front.AddLine([.. Mixture.Line(piece, Groups[j], Groups[i])
                        .Select(p => (p.Ahead * Part.ShareOfProduct, p.Share * Part.ShareOfProduct))]);
            }
        }
    }

    private static IEnumerable<Polytope> PiecesOf(MaterialPart part, decimal line)
    {
        var list = part.Constituents;
        decimal[] least = [.. list.Select(c => c.Share.Low.Fraction)];
        decimal[] greatest = [.. list.Select(c => c.Share.High.Fraction)];
        switch (part.Listed)
        {
            case ListedOrder.None:
                yield return new Polytope(least, greatest, []);
                yield break;
            case ListedOrder.Strict:
                yield return new Polytope(least, greatest, [.. Enumerable.Range(0, list.Length)]);
                yield break;
        }
        // A label order: one polytope for each place of the one-percent line. Colourants take no part in it.
        int[] ordered = [.. Enumerable.Range(0, list.Length).Where(c => !list[c].IsColourant)];
        for (var k = 0; k <= ordered.Length; k++)
        {
            decimal[] from = [.. least];
            decimal[] to = [.. greatest];
            foreach (var c in ordered[..k])
                from[c] = Math.Max(from[c], line);
            foreach (var c in ordered[k..])
                to[c] = Math.Min(to[c], line);
            yield return new Polytope(from, to, ordered[..k]);
        }
    }
}
