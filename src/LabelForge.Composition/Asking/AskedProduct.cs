namespace LabelForge.Composition.Asking;

/// <summary>A product whose order is open, in one of the worlds that its lists allow, with what has been answered there so far.</summary>
internal sealed class AskedProduct
{
    private readonly ProductModel _product;
    private readonly MaterialModel[] _materials;
    private readonly (int First, int Second)[] _open;
    private readonly bool[] _settled;

    /// <summary>Begins with nothing answered.</summary>
    public AskedProduct(ProductModel product, CompositionProof proof)
    {
        var place = product.Ingredients.Select((ingredient, at) => (ingredient.Name, at)).ToDictionary(p => p.Name, p => p.at);
        (_product, _materials) = (product, [.. product.Materials]);
        _open = [.. proof.Unproven.Select(u => (place[u.First], place[u.Second]))];
        _settled = new bool[_open.Length];
    }

    /// <summary>The material of this name and its place; null where it is not in the product.</summary>
    public (MaterialModel Material, int At)? Find(string material)
    {
        for (var at = 0; at < _materials.Length; at++)
        {
            if (_materials[at].Part.Material == material)
                return (_materials[at], at);
        }
        return null;
    }

    /// <summary>The open pairs, by canonical names, that an answer would settle.</summary>
    public IEnumerable<(string First, string Second)> SettledBy(int at, MaterialModel answered) =>
        Newly(at, answered).Select(p => (_product.Ingredients[_open[p].First].Name, _product.Ingredients[_open[p].Second].Name));

    /// <summary>How many open pairs an answer would settle.</summary>
    public int CountSettledBy(int at, MaterialModel answered) => Newly(at, answered).Count();

    /// <summary>Takes an answer in.</summary>
    public void Take(int at, MaterialModel answered)
    {
        foreach (var pair in Newly(at, answered).ToArray())
            _settled[pair] = true;
        _materials[at] = answered;
    }

    private IEnumerable<int> Newly(int at, MaterialModel answered)
    {
        var before = _materials[at];
        for (var pair = 0; pair < _open.Length; pair++)
        {
            if (_settled[pair])
                continue;
            var (first, second) = (_product.Ingredients[_open[pair].First], _product.Ingredients[_open[pair].Second]);
            if (Touches(first) || Touches(second))
            {
                _materials[at] = answered;
                var settled = IsSettled(first, second);
                _materials[at] = before;
                if (settled)
                    yield return pair;
            }
        }

        bool Touches(ProductIngredient ingredient)
        {
            foreach (var source in ingredient.Sources)
            {
                if (source.Material == at)
                    return true;
            }
            return false;
        }
    }

    // By bounds alone, which is a little less than the proof sees: what is counted as settled is settled.
    private bool IsSettled(ProductIngredient first, ProductIngredient second)
    {
        var ((firstLow, firstHigh), (secondLow, secondHigh)) = (Bounds(first), Bounds(second));
        var line = CompositionLimits.OnePercent * _product.Left;
        return firstHigh <= line || secondHigh <= line || firstLow >= secondHigh || secondLow >= firstHigh;
    }

    private (decimal Low, decimal High) Bounds(ProductIngredient of)
    {
        var (low, high) = (-of.Lost, -of.Lost);
        foreach (var source in of.Sources)
        {
            var material = _materials[source.Material];
            low += material.Part.ShareOfProduct * material.Low[source.Constituent];
            high += material.Part.ShareOfProduct * material.High[source.Constituent];
        }
        return (Math.Max(0, low) + of.Besides.Sum(b => b.ShareOfProduct * b.Low), Math.Max(0, high) + of.Besides.Sum(b => b.ShareOfProduct * b.High));
    }
}
