using LabelForge.Measures;
using LabelForge.Recipes;
using LabelForge.Records.Books;

namespace LabelForge.Records.Money;

/// <summary>Sets up what to buy from a workshop: its recipes, packs, packaging and stock.</summary>
public static class BuyList
{
    /// <summary>Sets it up.</summary>
    /// <param name="workshop">The workshop.</param>
    /// <param name="wanted">The products, and how many pieces of each at least.</param>
    /// <param name="costs">The packaging a piece takes.</param>
    /// <param name="books">The stock; null where there are no books.</param>
    /// <param name="budgetCents">The budget; null for none.</param>
    /// <param name="most">Whether as many as possible are wanted.</param>
    /// <param name="on">The day: what is past its date does not count as stock.</param>
    /// <exception cref="InputException">A product is named twice.</exception>
    public static BuyProblem Of(Workshop workshop, IReadOnlyList<(Product Product, int Pieces)> wanted, CostsFile costs, IBooks? books, long? budgetCents, bool most, DateOnly on)
    {
        if (wanted.GroupBy(w => w.Product.Name).FirstOrDefault(g => g.Count() > 1) is { } twice)
            throw new InputException(null, 0, "pour.named-twice", ("name", twice.Key));
        var products = wanted.Select(w =>
        {
            var takes = w.Product.Batch.Lines.GroupBy(l => l.Material.Id).ToDictionary(l => l.Key, l => l.Sum(x => x.Mass.Grams));
            foreach (var (id, count) in costs.Packaging)
                takes[id] = takes.GetValueOrDefault(id) + count * w.Product.Recipe.Pieces;
            return new BuyProduct(w.Product.Name, takes, w.Product.Recipe.Pieces, w.Pieces);
        }).ToArray();
        var ids = products.SelectMany(p => p.PerBatch.Keys).Distinct().Order(StringComparer.Ordinal);
        // What a batch at the bench still needs is not there for another.
        var reserved = books is null ? null : Reserved.Of(books);
        return new BuyProblem([.. ids.Select(id => Material(workshop.Material(id, "the recipes", 0), books, reserved?.GetValueOrDefault(id) ?? 0, on))], products, budgetCents, most);
    }

    private static BuyMaterial Material(Material material, IBooks? books, decimal reserved, DateOnly on)
    {
        // Water from the tap is taken as free and endless.
        if (material.Kind == MaterialKind.Water && material.Packs.IsEmpty)
            return new BuyMaterial(material.Id, 100_000_000m, []);
        var stock = books?.InStock(material.Id).Where(s => s.Receipt.BestBefore is not { } best || best >= on).Sum(s => s.Left) ?? 0;
        return new BuyMaterial(material.Id, Math.Max(0, stock - reserved), [.. UnitPrice.Packs(material).Select(p => new BuyPack(p.Pack.Size, p.Amount, (long)Math.Ceiling(p.Pack.Price * 100m)))]);
    }
}
