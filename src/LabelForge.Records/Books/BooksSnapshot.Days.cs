namespace LabelForge.Records.Books;

/// <content>What a day, a stretch of days or a print run holds, and the facts that a page of a list asks of others.</content>
public sealed partial class BooksSnapshot
{
    /// <inheritdoc/>
    public IReadOnlyList<Sale> SalesOn(DateOnly day) => [.. Sales.Where(s => s.On == day)];

    /// <inheritdoc/>
    public IReadOnlyList<PiecesReturned> ReturnsOn(DateOnly day) => [.. Returns.Where(r => r.On == day)];

    /// <inheritdoc/>
    public IReadOnlyList<Takings> TakingsOn(DateOnly day) => [.. Takings.Where(t => t.On == day)];

    /// <inheritdoc/>
    public IReadOnlyList<string> LastBuyers(int most) =>
        [.. Sales.GroupBy(s => s.To).OrderBy(g => g.Max(s => s.Id)).Select(g => g.Key).TakeLast(most)];

    /// <inheritdoc/>
    public string? LastTicket() => Sales.LastOrDefault(s => s.Ticket is not null)?.Ticket;

    /// <inheritdoc/>
    public int LastRun() => AllPrintings.Max(p => p.Run) ?? 0;

    /// <inheritdoc/>
    public IReadOnlyList<Printing> PrintingsOfRun(int run) => [.. Printings.Where(p => p.Run == run)];

    /// <inheritdoc/>
    public IReadOnlyList<Printing> PrintingsOn(DateOnly day) => [.. Printings.Where(p => p.On == day)];

    /// <inheritdoc/>
    public IReadOnlyList<string> LastPots(int most) => [.. Batches.Reverse().Select(b => b.Pot).OfType<string>().Distinct().Take(most)];

    /// <inheritdoc/>
    public IReadOnlyList<ProductSold> SoldBetween(DateOnly from, DateOnly to) => ProductSold.Of(this,
        Sales.Where(s => s.On >= from && s.On <= to && s.Paid > 0).Select(s => (s.BatchId, s.Pieces, 0))
            .Concat(Returns.Where(r => r.On >= from && r.On <= to).Select(r => (r.BatchId, 0, r.Returned))));

    /// <inheritdoc/>
    public IReadOnlyDictionary<int, Correction> StruckIn(string list, int first, int last) =>
        Corrections.Where(c => c.List == list && c.EntryId >= first && c.EntryId <= last).ToDictionary(c => c.EntryId);

    /// <inheritdoc/>
    public IReadOnlyDictionary<int, (string Lot, int Left)> LotsOf(IReadOnlyCollection<int> batches)
    {
        var wanted = batches.ToHashSet();
        return AllBatches.Where(b => wanted.Contains(b.Id))
            .ToDictionary(b => b.Id, b => (b.Lot, StruckBy(BookLists.Batch, b.Id) is null ? PiecesLeft(b) : 0));
    }

    /// <inheritdoc/>
    public IReadOnlyList<Batch> BatchesOn(DateOnly day) => [.. Batches.Where(b => b.On == day)];
}
