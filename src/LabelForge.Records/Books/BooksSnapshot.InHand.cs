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
    public IReadOnlyList<(Batch Batch, int Left)> LotsInStock() =>
        [.. Batches.Select(b => (Batch: b, Left: PiecesLeft(b))).Where(b => b.Left > 0)];

    /// <inheritdoc/>
    public IReadOnlyList<LotInHand> LotsInHand(DateOnly from) =>
        [.. Batches.Where(b => b.On >= from).Select(InHand).Where(l => l.Open || l.Left > 0)];

    private LotInHand InHand(Batch batch) =>
        new(batch, ClosingOf(batch) is null, ClosingOf(batch) is { } closing ? closing.Made - closing.Rejected : 0, PiecesLeft(batch),
            (_printed ??= Printings.GroupBy(p => p.Lot).ToDictionary(g => g.Key, g => g.Sum(p => p.Labels - p.Spoiled)))
                .GetValueOrDefault(batch.Lot));

    /// <inheritdoc/>
    public IReadOnlyList<ProductMade> ProductsMade() =>
        [.. Batches.GroupBy(b => (b.Recipe, b.Variant))
            .Select(g => new ProductMade(g.Key.Recipe, g.Key.Variant, g.Last().Product, g.Sum(PiecesLeft)))];

    /// <inheritdoc/>
    public DateOnly? FirstPrinting() => AllPrintings.Count == 0 ? null : AllPrintings.Min(p => p.On);

    /// <inheritdoc/>
    public IReadOnlyList<Complaint> ComplaintsSince(DateOnly day) => [.. Complaints.Where(c => c.On >= day || c.ReportBy >= day)];
}
