namespace LabelForge.Records.Books;

/// <content>What is in the house, over all batches and bottles.</content>
public sealed partial class BooksSnapshot
{
    /// <inheritdoc/>
    public IReadOnlyList<BookEntry> Page(string list, int? before, int most) =>
        EntryKind.Of(list) is { } kind ? [.. _all[kind.Type].Where(e => before is null || e.Id < before).TakeLast(most)] : [];

    /// <inheritdoc/>
    public IReadOnlyList<(Receipt Receipt, decimal Left)> InStock() => [.. KeptMaterials().SelectMany(InStock)];

    /// <inheritdoc/>
    public IReadOnlyList<string> KeptMaterials() => [.. Receipts.Select(r => r.Material).Distinct().Order(StringComparer.Ordinal)];

    /// <inheritdoc/>
    public IReadOnlyList<(Batch Batch, int Left)> LotsInStock() => [.. Batches.Select(b => (Batch: b, Left: PiecesLeft(b))).Where(b => b.Left > 0)];

    /// <inheritdoc/>
    public IReadOnlyList<LotInHand> LotsInHand(DateOnly from)
    {
        var printed = Printings.GroupBy(p => p.Lot).ToDictionary(g => g.Key, g => g.Sum(p => p.Labels - p.Spoiled));
        return
        [
            .. Batches.Where(b => b.On >= from)
                .Select(b => (Batch: b, Closing: ClosingOf(b), Left: PiecesLeft(b))).Where(b => b.Closing is null || b.Left > 0)
                .Select(b => new LotInHand(b.Batch, b.Closing is null, b.Closing is { } c ? c.Made - c.Rejected : 0, b.Left, printed.GetValueOrDefault(b.Batch.Lot))),
        ];
    }

    /// <inheritdoc/>
    public IReadOnlyList<ProductMade> ProductsMade() =>
        [.. Batches.GroupBy(b => (b.Recipe, b.Variant)).Select(g => new ProductMade(g.Key.Recipe, g.Key.Variant, g.Last().Product, g.Sum(PiecesLeft)))];

    /// <inheritdoc/>
    public DateOnly? FirstPrinting() => AllPrintings.Count == 0 ? null : AllPrintings.Min(p => p.On);

    /// <inheritdoc/>
    public IReadOnlyList<Complaint> ComplaintsSince(DateOnly day) => [.. Complaints.Where(c => c.On >= day || c.ReportBy >= day)];
}
