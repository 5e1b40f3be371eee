namespace LabelForge.Composition.Asking;

/// <summary>Finds the fewest facts that settle most of what is open, over all products that use a material.</summary>
/// <remarks>
/// One fact after the other: the one that settles most open pairs, averaged over some compositions that the lists allow (the
/// estimate, and others by hit and run from it), given the answers that those compositions would have given before. An answer
/// about a material counts in every product that holds it.
/// </remarks>
public static class Facts
{
    /// <summary>More questions than this no supplier is asked at once.</summary>
    public const int MostForOneSupplier = 3;

    private const int Worlds = 5;
    private const int StepsForEach = 40;
    private const int MostShares = 8;
    private const int MostLines = 5;
    private const double WorthAsking = 0.5;
    private const int Seed = 17;

    /// <summary>The facts to ask for; empty where nothing is open.</summary>
    /// <param name="proofs">The products, as they were proved.</param>
    /// <param name="supplierOf">Who can be asked about a material of this name, null where nobody
    /// can; each material for itself, if null.</param>
    public static AskedFacts Best(IReadOnlyList<CompositionProof> proofs, Func<string, string?>? supplierOf = null)
    {
        supplierOf ??= material => material;
        CompositionProof[] open = [.. proofs.Where(p => p is { IsProved: false, Model: not null })];
        var pairs = open.Sum(p => p.Unproven.Length);
        if (pairs == 0)
            return new AskedFacts([], 0, 0);
        var candidates = Candidates(open).Where(c => supplierOf(c.Material) is not null).ToList();
        AskedProduct[] products = [.. open.Select(p => new AskedProduct(p.Model!, p))];
        var compositions = Enumerable.Range(0, Worlds).Select(w => World.Draw(open, w, new Random(Seed + w), StepsForEach)).ToArray();
        World[] first = Fresh();
        var settles = candidates.ToDictionary(c => c, c => Count(first, c));
        // Bands of a whole list settle much at once, and leave less for the questions after them: both ways are tried.
        var figures = Greedy(settles.Where(s => !IsBands(s.Key)), first, supplierOf);
        var bands = candidates.Any(IsBands) ? Greedy(settles, Fresh(), supplierOf) : [];
        var facts = bands.Sum(f => f.Settles) > figures.Sum(f => f.Settles) ? bands : figures;
        return new AskedFacts(facts, pairs, facts.Sum(f => f.Settles));

        World[] Fresh() => [.. compositions.Select(c => new World(products, c))];
    }

    private static bool IsBands(Candidate question) => question is { Constituent: null, Line: null };

    private static double Count(World[] worlds, Candidate question)
    {
        var count = 0;
        foreach (var world in worlds)
            count += world.CountSettledBy(question);
        return (double)count / worlds.Length;
    }

    private static ImmutableArray<SupplierFact> Greedy(IEnumerable<KeyValuePair<Candidate, double>> candidates, World[] worlds,
        Func<string, string?> supplierOf)
    {
        var facts = ImmutableArray.CreateBuilder<SupplierFact>();
        // What a question settled at the last count is near enough what it settles now to say which to count anew: only those
        // about the material of the last answer can have gained.
        var counted = candidates.ToDictionary(c => c.Key, c => (Settles: c.Value, Round: 0));
        for (var round = 0; counted.Count > 0; round++)
        {
            var best = counted.MaxBy(c => c.Value.Settles);
            while (best.Value.Round < round)
            {
                counted[best.Key] = (Count(worlds, best.Key), round);
                best = counted.MaxBy(c => c.Value.Settles);
            }
            if (best.Value.Settles < WorthAsking)
                break;
            var fact = best.Key;
            facts.Add(new SupplierFact(fact.Material, fact.Constituent, fact.Line, best.Value.Settles, [.. worlds[0].SettledBy(fact)]));
            foreach (var world in worlds)
                world.Take(fact);
            var supplier = supplierOf(fact.Material);
            var full = facts.Count(f => supplierOf(f.Material) == supplier) == MostForOneSupplier;
            foreach (var gone in counted.Keys.Where(c => c == fact || (full && supplierOf(c.Material) == supplier)).ToArray())
                counted.Remove(gone);
            foreach (var like in counted.Keys.Where(c => c.Material == fact.Material).ToArray())
                counted[like] = (Count(worlds, like), round + 1);
        }
        return facts.ToImmutable();
    }

    // The shares that most open pairs turn on; the bands; and lines: the one-percent line, and
    // where what is weighed exactly stands in a list.
    private static List<Candidate> Candidates(CompositionProof[] open)
    {
        var asked = open
            .SelectMany(p => Sources(p))
            .GroupBy(c => c)
            .Select(g => (Fact: g.Key, Count: g.Count()))
            .OrderByDescending(g => g.Count).ThenBy(g => g.Fact.Material, StringComparer.Ordinal)
            .ThenBy(g => g.Fact.Constituent, StringComparer.Ordinal).ThenBy(g => g.Fact.Line?.AtMost)
            .Select(g => g.Fact)
            .ToArray();
        return [.. asked.GroupBy(c => (c.Material, IsLine: c.Line is not null, IsShare: c.Constituent is not null))
            .SelectMany(g => g.Take(g.Key.IsLine ? MostLines : MostShares))];
    }

    private static IEnumerable<Candidate> Sources(CompositionProof proof)
    {
        var ingredients = proof.Model!.Ingredients.ToDictionary(i => i.Name);
        return proof.Unproven.SelectMany(u => Sources(proof.Model, ingredients[u.First], ingredients[u.Second]));
    }

    private static IEnumerable<Candidate> Sources(ProductModel product, ProductIngredient first, ProductIngredient second)
    {
        foreach (var (ingredient, other) in new[] { (first, second), (second, first) })
        {
            foreach (var source in ingredient.Sources)
            {
                var material = product.Materials[source.Material];
                if (material.Low[source.Constituent] == material.High[source.Constituent])
                    continue;
                yield return new Candidate(material.Part.Material, ingredient.Name, null);
                yield return new Candidate(material.Part.Material, null, new ShareLine(material.Line, material.Line));
                yield return new Candidate(material.Part.Material, null, null);
                if (ingredient.Sources.Length == 1 && LineAgainst(product, material, ingredient, other) is { } line)
                    yield return new Candidate(material.Part.Material, null, line);
            }
        }
    }

    // The share of the material at which the ingredient weighs as much as another whose weight is known, in four figures that count.
    private static ShareLine? LineAgainst(ProductModel product, MaterialModel material, ProductIngredient ingredient,
        ProductIngredient other)
    {
        var (low, high) = (-other.Lost, -other.Lost);
        foreach (var source in other.Sources)
        {
            var from = product.Materials[source.Material];
            low += from.Part.ShareOfProduct * from.Low[source.Constituent];
            high += from.Part.ShareOfProduct * from.High[source.Constituent];
        }
        if (low != high || !other.Besides.IsEmpty || !ingredient.Besides.IsEmpty)
            return null;
        var at = (low + ingredient.Lost) / material.Part.ShareOfProduct;
        if (at is <= 0 or >= 1)
            return null;
        var step = 0.0001m;
        while (at / step < 1000 && step > 1e-10m)
            step /= 10;
        var down = Math.Floor(at / step) * step;
        return new ShareLine(down, down == at ? at : down + step);
    }
}
