namespace LabelForge.Composition.Asking;

/// <summary>A product whose order is open, in one of the worlds that its lists allow, with what has been answered there so far.</summary>
internal sealed class AskedProduct
{
    private const double Equal = 1e-8;

    private readonly Pairs _pairs;
    private readonly QuickList[] _lists;
    private readonly bool[] _settled;
    private readonly double[] _low;
    private readonly double[] _high;

    // What an answer would make of the bounds, kept from one count to the next.
    private readonly double[] _lowThen;
    private readonly double[] _highThen;

    /// <summary>Begins with nothing answered.</summary>
    public AskedProduct(ProductModel product, CompositionProof proof)
        : this(new Pairs(product, proof), [.. product.Materials.Select(m => new QuickList(m))])
    {
    }

    private AskedProduct(Pairs pairs, QuickList[] lists)
    {
        (_pairs, _lists, _settled) = (pairs, lists, new bool[pairs.Open.Length]);
        var count = pairs.Product.Ingredients.Length;
        (_low, _high, _lowThen, _highThen) = (new double[count], new double[count], new double[count], new double[count]);
        for (var i = 0; i < count; i++)
            (_low[i], _high[i]) = Bounds(i);
    }

    /// <summary>The same product with nothing answered.</summary>
    /// <remarks>Called before anything is answered in this one.</remarks>
    public AskedProduct Again() => new(_pairs, [.. _lists]);

    /// <summary>The place of the material of this name; -1 where it is not in the product.</summary>
    public int Find(string material)
    {
        for (var at = 0; at < _lists.Length; at++)
        {
            if (Material(at).Part.Material == material)
                return at;
        }
        return -1;
    }

    /// <summary>The material at a place.</summary>
    public MaterialModel Material(int at) => _pairs.Product.Materials[at];

    /// <summary>What is known of its list so far.</summary>
    public QuickList List(int at) => _lists[at];

    /// <summary>How many open pairs an answer would settle.</summary>
    public int CountSettledBy(int at, QuickList answered)
    {
        Assume(at, answered);
        var count = 0;
        foreach (var pair in _pairs.Touching[at])
            count += IsSettledThen(pair) ? 1 : 0;
        return count;
    }

    /// <summary>The open pairs, by name, that an answer would settle.</summary>
    public IEnumerable<(string First, string Second)> SettledBy(int at, QuickList answered)
    {
        Assume(at, answered);
        return [.. _pairs.Touching[at].Where(IsSettledThen).Select(p => _pairs.Open[p]).Select(p => (Name(p.First), Name(p.Second)))];
    }

    /// <summary>Takes an answer in.</summary>
    public void Take(int at, QuickList answered)
    {
        Assume(at, answered);
        foreach (var pair in _pairs.Touching[at])
            _settled[pair] |= IsSettledThen(pair);
        _lists[at] = answered;
        _lowThen.CopyTo(_low, 0);
        _highThen.CopyTo(_high, 0);
    }

    private string Name(int ingredient) => _pairs.Product.Ingredients[ingredient].Name;

    private void Assume(int at, QuickList answered)
    {
        _low.CopyTo(_lowThen, 0);
        _high.CopyTo(_highThen, 0);
        var before = _lists[at];
        _lists[at] = answered;
        foreach (var ingredient in _pairs.Of[at])
            (_lowThen[ingredient], _highThen[ingredient]) = Bounds(ingredient);
        _lists[at] = before;
    }

    // By bounds alone, which is a little less than the proof sees: what is counted as settled is settled.
    private bool IsSettledThen(int pair)
    {
        if (_settled[pair])
            return false;
        var (first, second) = _pairs.Open[pair];
        return _highThen[first] <= _pairs.Line || _highThen[second] <= _pairs.Line
            || _lowThen[first] + Equal >= _highThen[second] || _lowThen[second] + Equal >= _highThen[first];
    }

    private (double Low, double High) Bounds(int ingredient)
    {
        var of = _pairs.Product.Ingredients[ingredient];
        var (low, high) = (-_pairs.Lost[ingredient], -_pairs.Lost[ingredient]);
        foreach (var source in of.Sources)
        {
            var share = _pairs.Shares[source.Material];
            var list = _lists[source.Material];
            (low, high) = (low + share * list.Low[source.Constituent], high + share * list.High[source.Constituent]);
        }
        return (Math.Max(0, low) + _pairs.BesidesLow[ingredient], Math.Max(0, high) + _pairs.BesidesHigh[ingredient]);
    }

    /// <summary>What of a product no answer changes.</summary>
    private sealed class Pairs
    {
        public Pairs(ProductModel product, CompositionProof proof)
        {
            Product = product;
            var place = product.Ingredients.Select((ingredient, at) => (ingredient.Name, at)).ToDictionary(p => p.Name, p => p.at);
            Open = [.. proof.Unproven.Select(u => (place[u.First], place[u.Second]))];
            Of = [.. product.Materials
                .Select((_, m) => Enumerable.Range(0, product.Ingredients.Length)
                    .Where(i => product.Ingredients[i].Sources.Any(s => s.Material == m)).ToArray())];
            Touching = [.. Of.Select(of => of.ToHashSet())
                .Select(of => Enumerable.Range(0, Open.Length).Where(p => of.Contains(Open[p].First) || of.Contains(Open[p].Second))
                    .ToArray())];
            BesidesLow = [.. product.Ingredients.Select(i => (double)i.Besides.Sum(b => b.ShareOfProduct * b.Low))];
            BesidesHigh = [.. product.Ingredients.Select(i => (double)i.Besides.Sum(b => b.ShareOfProduct * b.High))];
            Lost = [.. product.Ingredients.Select(i => (double)i.Lost)];
            Shares = [.. product.Materials.Select(m => (double)m.Part.ShareOfProduct)];
            Line = (double)(product.Lines.Label * product.Left) + Equal;
        }

        public ProductModel Product { get; }

        public (int First, int Second)[] Open { get; }

        // The ingredients that a material brings, and the pairs with one of them.
        public int[][] Of { get; }

        public int[][] Touching { get; }

        public double[] BesidesLow { get; }

        public double[] BesidesHigh { get; }

        public double[] Lost { get; }

        public double[] Shares { get; }

        public double Line { get; }
    }
}
