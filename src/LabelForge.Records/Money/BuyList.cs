using LabelForge.Ingredients;
using LabelForge.Records.Books;

namespace LabelForge.Records.Money;

/// <summary>Sets up what to buy from a workshop: its recipes, packs, packaging and stock.</summary>
public static class BuyList
{
    /// <summary>Sets it up.</summary>
    /// <param name="wanted">The products, and how many pieces of each at least.</param>
    /// <param name="costs">The packaging a piece takes.</param>
    /// <param name="books">The stock; null where there are no books.</param>
    /// <param name="budgetCents">The budget; null for none.</param>
    /// <param name="most">Whether as many as possible are wanted.</param>
    /// <param name="on">The day: what is past its date does not count as stock.</param>
    /// <param name="tools">Whether the things count that pouring needs once: a scale, a jug, a mould.</param>
    /// <exception cref="InputException">A product is named twice.</exception>
    public static BuyProblem Of(Workshop workshop, IReadOnlyList<(Product Product, int Pieces)> wanted, CostsFile costs, IBooks? books,
        long? budgetCents, bool most, DateOnly on, bool tools = false)
    {
        if (wanted.GroupBy(w => w.Product.Name).FirstOrDefault(g => g.Count() > 1) is { } twice)
            throw new InputException("pour.named-twice", ("name", twice.Key));
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
        (BenchTool Tool, int[] For)[] needed = !tools ? [] : [.. BenchTool.In(workshop, costs)
            .Select(t => (Tool: t, For: wanted.Select((w, i) => (w.Product, i)).Where(w => t.IsFor(w.Product)).Select(w => w.i).ToArray()))
            .Where(t => t.For.Length > 0)];
        return new BuyProblem(
            [.. ids.Select(id => Material(workshop.Material(id, "the recipes", 0), books, reserved?.GetValueOrDefault(id) ?? 0, on,
                workshop.Dictionary))],
            products, budgetCents, most)
        {
            Tools = [.. needed.Where(t => PriceOf(workshop, t.Tool) is not null || t.Tool.Have > 0)
                .Select(t => new BuyTool(t.Tool.Id, t.Tool.Name, PriceOf(workshop, t.Tool) is { } price ? Cents(price) : null,
                    t.Tool.Price is null, t.For)
            {
                Have = t.Tool.Have,
                Pieces = t.Tool.Pieces,
                PiecesHad = t.Tool.PiecesHad,
            })],
            WithoutPrice = [.. needed.Where(t => PriceOf(workshop, t.Tool) is null && t.Tool.Have == 0).Select(t => t.Tool.Name)],
        };
    }

    private static decimal? PriceOf(Workshop workshop, BenchTool tool) =>
        tool.Price ?? (workshop.Business.Currency == "USD" ? tool.UsualPrice : null);

    private static long Cents(decimal price) => (long)Math.Ceiling(price * 100m);

    private static BuyMaterial Material(Material material, IBooks? books, decimal reserved, DateOnly on, IngredientDictionary dictionary)
    {
        // Water from the tap is taken as free and endless.
        if (material.Kind == MaterialKind.Water && material.Packs.IsEmpty)
            return new BuyMaterial(material.Id, 100_000_000m, []);
        var stock = books?.InStock(material.Id).Where(s => s.Receipt.BestBefore is not { } best || best >= on).Sum(s => s.Left) ?? 0;
        return new BuyMaterial(material.Id, Math.Max(0, stock - reserved),
            [.. UnitPrice.Packs(material, dictionary).Select(p => new BuyPack(p.Pack.Size, p.Amount, Cents(p.Pack.Price)))]);
    }
}
