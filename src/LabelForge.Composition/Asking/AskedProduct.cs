namespace LabelForge.Composition.Asking;

/// <summary>A product whose order is open, in one of the worlds that its lists allow, with what has been answered there so far.</summary>
internal sealed class AskedProduct
{
    private readonly ProductModel _product;
    private readonly QuickList[] _lists;
    private readonly (int First, int Second)[] _open;
    private readonly bool[] _settled;
    private readonly int[][] _touching;
    private readonly double[] _besidesLow;
    private readonly double[] _besidesHigh;

    /// <summary>Begins with nothing answered.</summary>
    public AskedProduct(ProductModel product, CompositionProof proof)
    {
        var place = product.Ingredients.Select((ingredient, at) => (ingredient.Name, at)).ToDictionary(p => p.Name, p => p.at);
        (_product, _lists) = (product, [.. product.Materials.Select(m => new QuickList(m))]);
        _open = [.. proof.Unproven.Select(u => (place[u.First], place[u.Second]))];
        _settled = new bool[_open.Length];
        _touching = [.. product.Materials.Select((_, m) => Enumerable.Range(0, _open.Length).Where(p => Holds(m, _open[p].First) || Holds(m, _open[p].Second)).ToArray())];
        _besidesLow = [.. product.Ingredients.Select(i => (double)i.Besides.Sum(b => b.ShareOfProduct * b.Low))];
        _besidesHigh = [.. product.Ingredients.Select(i => (double)i.Besides.Sum(b => b.ShareOfProduct * b.High))];

        bool Holds(int material, int ingredient) => product.Ingredients[ingredient].Sources.Any(s => s.Material == material);
    }

    /// <summary>The place of the material of this name; -1 where it is not in the product.</summary>
    public int Find(string material)
    {
        for (var at = 0; at < _lists.Length; at++)
        {
            if (_product.Materials[at].Part.Material == material)
                return at;
        }
        return -1;
    }

    /// <summary>The material at a place.</summary>
    public MaterialModel Material(int at) => _product.Materials[at];

    /// <summary>What is known of its list so far.</summary>
    public QuickList List(int at) => _lists[at];

    /// <summary>How many open pairs an answer would settle.</summary>
    public int CountSettledBy(int at, QuickList answered) => Newly(at, answered).Count;

    /// <summary>The open pairs, by name, that an answer would settle.</summary>
    public IEnumerable<(string First, string Second)> SettledBy(int at, QuickList answered) =>
        Newly(at, answered).Select(p => (_product.Ingredients[_open[p].First].Name, _product.Ingredients[_open[p].Second].Name));

    /// <summary>Takes an answer in.</summary>
    public void Take(int at, QuickList answered)
    {
        foreach (var pair in Newly(at, answered))
            _settled[pair] = true;
        _lists[at] = answered;
    }

    private List<int> Newly(int at, QuickList answered)
    {
        var before = _lists[at];
        _lists[at] = answered;
        var settled = new List<int>();
        foreach (var pair in _touching[at])
        {
            if (!_settled[pair] && IsSettled(_open[pair].First, _open[pair].Second))
                settled.Add(pair);
        }
        _lists[at] = before;
        return settled;
    }

    // By bounds alone, which is a little less than the proof sees: what is counted as settled is settled.
    private bool IsSettled(int first, int second)
    {
        const double Equal = 1e-8;
        var ((firstLow, firstHigh), (secondLow, secondHigh)) = (Bounds(first), Bounds(second));
        var line = (double)(_product.Lines.Label * _product.Left) + Equal;
        return firstHigh <= line || secondHigh <= line || firstLow + Equal >= secondHigh || secondLow + Equal >= firstHigh;
    }

    private (double Low, double High) Bounds(int ingredient)
    {
        var of = _product.Ingredients[ingredient];
        var (low, high) = (-(double)of.Lost, -(double)of.Lost);
        foreach (var source in of.Sources)
        {
            var share = (double)_product.Materials[source.Material].Part.ShareOfProduct;
            var list = _lists[source.Material];
            (low, high) = (low + share * list.Low[source.Constituent], high + share * list.High[source.Constituent]);
        }
        return (Math.Max(0, low) + _besidesLow[ingredient], Math.Max(0, high) + _besidesHigh[ingredient]);
    }
}
