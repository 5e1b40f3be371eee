namespace LabelForge.Records.Books;

/// <summary>What was sold of a product over some days.</summary>
/// <param name="Recipe">The recipe's id.</param>
/// <param name="Variant">The variant; null for none.</param>
/// <param name="Sold">Pieces sold for money.</param>
/// <param name="Returned">Pieces brought back.</param>
public sealed record ProductSold(string Recipe, string? Variant, int Sold, int Returned)
{
    /// <summary>Sums by product what is known by batch; what hangs on a struck batch counts for the one that stands instead.</summary>
    internal static IReadOnlyList<ProductSold> Of(IBooks books, IEnumerable<(int Batch, int Sold, int Returned)> byBatch) =>
    [
        .. byBatch.GroupBy(b => b.Batch)
            .Select(g => (Batch: books.BatchNow(g.Key) is { } now ? books.Find(BookLists.Batch, now) as Batch : null,
                Sold: g.Sum(b => b.Sold), Returned: g.Sum(b => b.Returned)))
            .Where(b => b.Batch is not null).GroupBy(b => (b.Batch!.Recipe, b.Batch.Variant))
            .Select(g => new ProductSold(g.Key.Recipe, g.Key.Variant, g.Sum(b => b.Sold), g.Sum(b => b.Returned)))
            .OrderBy(p => p.Recipe, StringComparer.Ordinal).ThenBy(p => p.Variant, StringComparer.Ordinal),
    ];
}
