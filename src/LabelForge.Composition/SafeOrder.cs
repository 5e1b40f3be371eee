namespace LabelForge.Composition;

/// <summary>
/// Decides which ingredient may stand before which whatever the true composition: i before j, unless in some composition j
/// exceeds both i and the one-percent line (21 CFR 701.3(f); Regulation (EC) No 1223/2009 Art. 19(1)(g)).
/// </summary>
internal sealed class SafeOrder
{
    private readonly ProductModel _product;
    private readonly bool[] _main;
    private readonly ParetoFront[][,] _fronts;

    /// <summary>Prepares to decide.</summary>
    public SafeOrder(ProductModel product)
    {
        _product = product;
        _main = [.. product.Ingredients.Select(i => !i.IsColour && OnePercentLine.IsExceeded(product, i))];
        var wanted = product.Materials.Select(m => new bool[m.Names.Length]).ToArray();
        for (var i = 0; i < _main.Length; i++)
        {
            foreach (var source in product.Ingredients[i].Sources)
                wanted[source.Material][source.Constituent] = _main[i];
        }
        _fronts = [.. product.Materials.Select((m, at) => m.Fronts(wanted[at]))];
    }

    /// <summary>Whether ingredient <paramref name="i"/> may stand before <paramref name="j"/>; places in the product's list.</summary>
    public bool MayPrecede(int i, int j)
    {
        var (first, second) = (_product.Ingredients[i], _product.Ingredients[j]);
        if (first.IsColour || second.IsColour)
            return second.IsColour;
        if (!_main[j])
            return true;
        // What cannot exceed 1 % is overtaken by what can.
        return _main[i] && NeverOvertakes(first, second);
    }

    // The greatest t with w(j) - w(i) >= t and w(j) - 1 % >= t, over all compositions, is at most the tolerance.
    // Both sides are sums over the materials; both are counted in the charged batch, which keeps the sign.
    private bool NeverOvertakes(ProductIngredient first, ProductIngredient second)
    {
        var ahead = first.Lost - second.Lost;
        var share = -second.Lost - _product.Lines.Label * _product.Left;
        ahead -= first.Besides.Sum(b => b.ShareOfProduct * b.Low);
        var most = second.Besides.Sum(b => b.ShareOfProduct * b.High);
        var shared = new List<ParetoFront>();
        foreach (var source in first.Sources)
        {
            var material = _product.Materials[source.Material];
            var other = second.Sources.FirstOrDefault(s => s.Material == source.Material, new Source(-1, -1));
            if (other.Material < 0)
                ahead -= material.Part.ShareOfProduct * material.Low[source.Constituent];
            else
                shared.Add(_fronts[source.Material][source.Constituent, other.Constituent]);
        }
        foreach (var source in second.Sources)
        {
            if (first.Sources.Any(s => s.Material == source.Material))
                continue;
            var material = _product.Materials[source.Material];
            most += material.Part.ShareOfProduct * material.High[source.Constituent];
        }
        ahead += most;
        share += most;
        var (needAhead, needShare) = (CompositionLimits.Tolerance - ahead, CompositionLimits.Tolerance - share);
        // Nothing binds the two: the second at its most is over 1 %, as the line was drawn before, with the first at its least.
        if (shared.Count == 0)
            return needAhead >= 0;
        if (shared.Sum(f => f.MostAhead) <= needAhead || shared.Sum(f => f.MostShare) <= needShare)
            return true;
        return !shared.Aggregate((all, next) => all.Plus(next)).AnyAbove(needAhead, needShare);
    }
}
