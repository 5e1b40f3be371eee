using Microsoft.EntityFrameworkCore;

namespace LabelForge.Records.Books;

/// <content>What is in the house, over all batches and bottles.</content>
internal sealed partial class BookQueries
{
    /// <inheritdoc/>
    public IReadOnlyList<BookEntry> Page(string list, int? before, int most) => EntryKind.Of(list)?.Page(context, before, most) ?? [];

    /// <inheritdoc/>
    public IReadOnlyList<(Receipt Receipt, decimal Left)> InStock() =>
    [
        .. context.ReceiptStock.Where(s => s.Left >= Millionths.Rest)
            .Join(context.Receipts, s => s.ReceiptId, r => r.Id, (s, r) => new { Receipt = r, s.Left })
            .AsNoTracking().AsEnumerable().Select(s => (s.Receipt, s.Left))
            .OrderBy(s => s.Receipt.Material, StringComparer.Ordinal).ThenBy(s => s.Receipt.BestBefore ?? DateOnly.MaxValue)
            .ThenBy(s => s.Receipt.On).ThenBy(s => s.Receipt.Id),
    ];

    /// <inheritdoc/>
    public DateOnly? OpenedOn(Receipt receipt)
    {
        // A weighing names the bottle as the books stood then.
        var ids = new List<int> { First(BookLists.Receipt, receipt.Id) };
        while (StruckBy(BookLists.Receipt, ids[^1])?.InsteadId is { } next)
            ids.Add(next);
        return Standing(context.Weighings, BookLists.Weighing).Where(w => w.ReceiptId != null && ids.Contains(w.ReceiptId.Value))
            .Min(w => (DateOnly?)w.On);
    }

    /// <inheritdoc/>
    public IReadOnlyList<string> KeptMaterials() =>
        [.. context.ReceiptStock.Select(s => s.Material).Distinct().AsEnumerable().Order(StringComparer.Ordinal)];

    /// <inheritdoc/>
    public IReadOnlyList<(Batch Batch, int Left)> LotsInStock() =>
    [
        .. context.BatchStock.Where(s => s.Left > 0).Join(context.Batches, s => s.BatchId, b => b.Id, (s, b) => new { Batch = b, s.Left })
            .OrderBy(s => s.Batch.Id).AsNoTracking().AsEnumerable().Select(s => (s.Batch, s.Left)),
    ];

    /// <inheritdoc/>
    public IReadOnlyList<LotInHand> LotsInHand(DateOnly from) =>
        InHand(context.BatchStock.Where(s => s.Closings == 0 || s.Left > 0), context.Batches.Where(b => b.On >= from),
            lots => lots.OrderBy(s => s.Batch.Id));

    private IReadOnlyList<LotInHand> InHand(IQueryable<BatchStock> stock, IQueryable<Batch> batches,
        Func<IQueryable<LotAndStock>, IQueryable<LotAndStock>> inOrder)
    {
        var lots = inOrder(stock.Join(batches, s => s.BatchId, b => b.Id, (s, b) => new LotAndStock { Batch = b, Stock = s }))
            .AsNoTracking().ToArray();
        string[] codes = [.. lots.Select(l => l.Batch.Lot)];
        var printed = Standing(context.Printings, BookLists.Printing).Where(p => codes.Contains(p.Lot))
            .GroupBy(p => p.Lot).Select(g => new { Lot = g.Key, Labels = g.Sum(p => p.Labels - p.Spoiled) })
            .ToDictionary(g => g.Lot, g => g.Labels);
        return [
            .. lots.Select(l => new LotInHand(l.Batch, l.Stock.Closings == 0, l.Stock.Made - l.Stock.Rejected, l.Stock.Left,
                printed.GetValueOrDefault(l.Batch.Lot)))];
    }

    private sealed class LotAndStock
    {
        public required Batch Batch { get; init; }

        public required BatchStock Stock { get; init; }
    }

    /// <inheritdoc/>
    public IReadOnlyList<ProductMade> ProductsMade()
    {
        // The names by an index alone, the last batch of each by it too; the pieces by what is in the house.
        var products = context.Batches.Select(b => new { b.Recipe, b.Variant }).Distinct().ToArray();
        var left = context.BatchStock.Where(s => s.Left > 0)
            .Join(context.Batches, s => s.BatchId, b => b.Id, (s, b) => new { b.Recipe, b.Variant, s.Left })
            .GroupBy(b => new { b.Recipe, b.Variant }).Select(g => new { g.Key.Recipe, g.Key.Variant, Left = g.Sum(b => b.Left) })
            .ToDictionary(g => (g.Recipe, g.Variant), g => g.Left);
        var last = products.Select(p => context.Batches
            .Where(b => b.Recipe == p.Recipe && b.Variant == p.Variant && context.BatchStock.Any(s => s.BatchId == b.Id))
            .OrderByDescending(b => b.Id).Select(b => new { b.Id, b.Recipe, b.Variant, b.Product }).FirstOrDefault());
        return [.. last.ToArray().Where(b => b is not null).OrderBy(b => b!.Id)
            .Select(b => new ProductMade(b!.Recipe, b.Variant, b.Product, left.GetValueOrDefault((b.Recipe, b.Variant))))];
    }

    /// <inheritdoc/>
    public DateOnly? FirstPrinting() => context.Printings.Min(p => (DateOnly?)p.On);

    /// <inheritdoc/>
    public IReadOnlyList<Complaint> ComplaintsSince(DateOnly day) =>
        [.. Standing(context.Complaints, BookLists.Complaint).Where(c => c.On >= day || c.ReportBy >= day).OrderBy(c => c.Id)];
}
