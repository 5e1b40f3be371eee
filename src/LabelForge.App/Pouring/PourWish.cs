using LabelForge.Records.Books;

namespace LabelForge.Pouring;

/// <summary>A product to be poured, at its size.</summary>
/// <param name="Product">The product, as planned.</param>
/// <param name="Formula">The batch at the size it is poured in.</param>
/// <param name="Moulds">The moulds that it fills, in words; null where they were not told.</param>
public sealed record PourWish(Product Product, BatchFormula Formula, string? Moulds)
{
    /// <summary>Reads what is to be poured: <c>bramble-bar=6</c>, <c>bramble-bar=680 g</c>,
    /// <c>bramble-bar=6 x 113 g</c>, or products alone for the moulds at hand.</summary>
    /// <param name="workshop">The workshop, for its recipes and its moulds.</param>
    /// <param name="words">What was written; a recipe alone stands for all its products, each in that size.</param>
    /// <exception cref="InputException">A size cannot be read or is missing, a product is named
    /// twice, or there are fewer moulds than products.</exception>
    public static ImmutableArray<PourWish> ReadAll(Workshop workshop, IReadOnlyList<string> words)
    {
        var asked =
            words.SelectMany(w => Split(w) is var (named, size) ? workshop.ProductsOf(named).Select(p => (Product: p, Size: size)) : [])
                .ToArray();
        if (asked.GroupBy(a => a.Product.Name, StringComparer.OrdinalIgnoreCase).FirstOrDefault(g => g.Count() > 1) is { } twice)
            throw new InputException("pour.named-twice", ("name", twice.Key));
        if (asked.Length == 0)
            throw new InputException("pour.nothing-named");
        var open = asked.Where(a => a.Size is null).Select(a => a.Product).ToArray();
        var filled = Fill(workshop.Business.Moulds, open);
        return [.. asked.Select(a => Of(workshop, a.Product, a.Size ?? filled[a.Product.Name], a.Size is null))];
    }

    private static PourWish Of(Workshop workshop, Product product, string size, bool moulds)
    {
        if (PlainFigure.Whole(size) is { } pieces)
            return new PourWish(product, BatchSize.ToPieces(workshop, product.Recipe, pieces), null);
        if (size.Contains('x', StringComparison.OrdinalIgnoreCase)
            || size.Contains('×')
            || size.Contains(" of ", StringComparison.Ordinal))
            return new PourWish(product, BatchSize.ToMoulds(workshop, product.Recipe, size), size);
        var mass = Amount.Parse(size);
        return mass is { IsValue: true, Value.IsMass: true } && !moulds
            ? new PourWish(product, BatchSize.ToMass(workshop, product.Recipe, mass.Value.AsMass()), null)
            : throw new InputException("pour.how-much", ("size", size), ("product", product.Name));
    }

    // The last equals sign, so that a product's own name may hold one.
    private static (string Named, string? Size) Split(string word) =>
        word.LastIndexOf('=') is > 0 and var at ? (word[..at].Trim(), word[(at + 1)..].Trim()) : (word.Trim(), null);

    // A mould holds one scent: the moulds at hand go round among the products, the first product first.
    private static Dictionary<string, string> Fill(ImmutableArray<MouldSet> moulds, Product[] products)
    {
        if (products.Length == 0)
            return [];
        MouldSet[] each = [.. moulds.SelectMany(m => Enumerable.Repeat(m, m.Number))];
        if (each.Length == 0)
            throw new InputException("pour.how-many", ("product", products[0].Name));
        if (each.Length < products.Length)
            throw new InputException("pour.too-few-moulds", ("count", each.Length), ("count-2", products.Length));
        return products.Select((p, at) => (p.Name,
            Text: string.Join(", ", each.Where((_, i) => i % products.Length == at).GroupBy(m => m.Written)
            .Select(g => Invariant($"{g.Sum(m => m.Cavities)} x {g.Key}"))))).ToDictionary(f => f.Name, f => f.Text);
    }
}
