namespace LabelForge.Composition.Asking;

/// <summary>A question that could be put: the share of a constituent, who is over a line, or, with neither, the band of each.</summary>
internal sealed record Candidate(string Material, string? Constituent, ShareLine? Line);

/// <summary>One composition of every material that the lists allow, and the products made of them with what has been answered.</summary>
internal sealed class World
{
    private static readonly double[] Edges = [.. ShareBands.Edges.Select(e => (double)e)];

    private readonly AskedProduct[] _products;
    private readonly Dictionary<string, double[]> _truth;

    /// <summary>Begins with nothing answered.</summary>
    /// <param name="products">The products, with nothing answered.</param>
    /// <param name="compositions">What each material is here.</param>
    public World(AskedProduct[] products, Dictionary<string, double[]> compositions) =>
        (_products, _truth) = ([.. products.Select(p => p.Again())], compositions);

    /// <summary>Draws a composition of every material: the estimate in the first world, else some way from it.</summary>
    public static Dictionary<string, double[]> Draw(CompositionProof[] proofs, int number, Random random, int steps) =>
        proofs.SelectMany(p => p.Model!.Materials).DistinctBy(m => m.Part.Material)
            .ToDictionary(m => m.Part.Material, m => Composition(m, number, random, steps), StringComparer.Ordinal);

    /// <summary>How many open pairs the answer to a question settles here.</summary>
    public int CountSettledBy(Candidate question) => Answers(question).Sum(a => a.Product.CountSettledBy(a.At, a.Answered));

    /// <summary>The open pairs that the answer to a question settles here.</summary>
    public IEnumerable<(string First, string Second)> SettledBy(Candidate question) =>
        Answers(question).SelectMany(a => a.Product.SettledBy(a.At, a.Answered)).Distinct();

    /// <summary>Takes the answer to a question in.</summary>
    public void Take(Candidate question)
    {
        foreach (var (product, at, answered) in Answers(question))
            product.Take(at, answered);
    }

    private IEnumerable<(AskedProduct Product, int At, QuickList Answered)> Answers(Candidate question)
    {
        foreach (var product in _products)
        {
            var at = product.Find(question.Material);
            if (at >= 0 && Answer(product.Material(at), product.List(at), question) is { } answered)
                yield return (product, at, answered);
        }
    }

    private QuickList? Answer(MaterialModel material, QuickList known, Candidate question)
    {
        var truth = _truth[question.Material];
        // Two materials under one name with other lists: what is known of the one says nothing of the other.
        if (truth.Length != material.Part.Constituents.Length)
            return null;
        if (question.Line is { } line)
            return known.WithLine(line, truth);
        if (question.Constituent is null)
            return known.WithBands(Edges, truth);
        // Several that print under one name are several questions; they are not asked at once.
        var named = material.Names.IndexOf(question.Constituent!);
        return named >= 0 && material.Groups[named] is [var only] ? known.WithShare(only, truth[only]) : null;
    }

    private static double[] Composition(MaterialModel material, int number, Random random, int steps)
    {
        double[] estimate = [.. material.Composition.Select(s => (double)s)];
        if (number == 0 || estimate.Length < 2)
            return estimate;
        // From the estimate inside its own set half of the time, else from the nearest of another set.
        var sets = material.Pieces;
        if (number % 2 == 1 && sets.FirstOrDefault(s => Holds(s, estimate)) is { } own)
            return Walk.From(own, estimate, random, steps);
        var other = sets[random.Next(sets.Count)];
        return Walk.From(other, LeastEntropy.Over([other], [.. estimate.Select(e => Math.Max(e, 1e-9))]), random, steps);
    }

    private static bool Holds(Polytope set, double[] shares)
    {
        for (var c = 0; c < shares.Length; c++)
        {
            if (shares[c] < (double)set.LeastShares[c] - 1e-12 || shares[c] > (double)set.GreatestShares[c] + 1e-12)
                return false;
        }
        return true;
    }
}
