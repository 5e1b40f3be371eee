using Microsoft.EntityFrameworkCore;

namespace LabelForge.Records.Books;

/// <summary>The books asked by query: each question reads what it needs, by index, however large the shop.</summary>
internal sealed partial class BookQueries(RecordsContext context) : IBooks
{
    public Correction? StruckBy(string list, int id) =>
        context.Corrections.AsNoTracking().FirstOrDefault(c => c.List == list && c.EntryId == id);
    public int? Current(string list, int id)
    {
        int? now = id;
        while (now is { } at && StruckBy(list, at) is { } correction)
            now = correction.InsteadId;
        return now;
    }
    public int First(string list, int id)
    {
        while (context.Corrections.Where(c => c.List == list && c.InsteadId == id).Select(c => (int?)c.EntryId)
            .FirstOrDefault() is { } earlier)
            id = earlier;
        return id;
    }
    public BookEntry? Find(string list, int id) =>
        EntryKind.Of(list)?.Find(context, id) is { } entry ? entry is Batch batch ? Whole(batch) : entry : null;
    public int? Last(string list) => EntryKind.Of(list)?.Last(context);
    public Batch? FindBatch(string lot) =>
        Whole(context.BatchStock.Where(s => s.Lot == lot).Join(context.Batches, s => s.BatchId, b => b.Id, (s, b) => b).AsNoTracking()
            .FirstOrDefault());
    public IReadOnlyList<Batch> OpenBatches() => [.. context.BatchStock.Where(s => s.Closings == 0)
        .Join(context.Batches, s => s.BatchId, b => b.Id, (s, b) => b).OrderBy(b => b.Id).AsNoTracking().ToArray().Select(b => Whole(b)!)];
    public IReadOnlyList<string> LastLots(int most) =>
        [.. context.BatchStock.OrderByDescending(s => s.BatchId).Take(most).Select(s => s.Lot).AsEnumerable().Reverse()];
    public bool IsNumberTaken(string code) => context.Batches.Any(b => b.Lot == code || b.Pot == code);
    public Receipt? FindReceipt(int number)
    {
        var bottle = First(BookLists.Receipt, number);
        return context.ReceiptStock.Where(s => s.Bottle == bottle).Join(context.Receipts, s => s.ReceiptId, r => r.Id, (s, r) => r)
            .AsNoTracking().FirstOrDefault();
    }
    public bool IsKept(string material) => context.ReceiptStock.Any(s => s.Material == material);
    public decimal Left(Receipt receipt) => context.ReceiptStock.Where(s => s.ReceiptId == receipt.Id).Select(s => s.Left).First();
    public IEnumerable<(Receipt Receipt, decimal Left)> InStock(string material) =>
    [
        .. Held(context.ReceiptStock.Where(s => s.Material == material))
            .OrderBy(s => s.Receipt.BestBefore ?? DateOnly.MaxValue).ThenBy(s => s.Receipt.On).ThenBy(s => s.Receipt.Id),
    ];
    public Closing? ClosingOf(Batch batch) =>
        OfBatch(context.Closings, BookLists.Closing, batch, ids => c => ids.Contains(c.BatchId)).FirstOrDefault();
    public int PiecesLeft(Batch batch) =>
        context.BatchStock.Where(s => s.BatchId == batch.Id).Select(s => (int?)s.Left).FirstOrDefault() ?? 0;
    public IReadOnlyList<(Batch Batch, int Left)> LotsInStock(string recipe, string? variant) =>
    [
        // From what is in the house: joined to nothing, the recipe cannot draw SQLite to the index of all batches ever made of it.
        .. context.BatchStock.Where(s => s.Left > 0)
            .Join(context.Batches, s => s.BatchId, b => b.Id, (s, b) => new { Batch = b, s.Left })
            .Where(s => s.Batch.Recipe + "" == recipe).AsNoTracking().AsEnumerable()
            .Where(s => string.Equals(s.Batch.Variant, variant, StringComparison.OrdinalIgnoreCase))
            .OrderBy(s => s.Batch.On).ThenBy(s => s.Batch.Id).Select(s => (s.Batch, s.Left)),
    ];
    public IEnumerable<Batch> BatchesOfPot(string pot) => context.Batches.AsNoTracking().Where(b => b.Pot == pot)
        .Where(b => !context.Corrections.Any(c => c.List == BookLists.Batch && c.EntryId == b.Id)).OrderBy(b => b.Id).ToArray()
        .Select(b => Whole(b)!).ToArray();
    public IEnumerable<Weighing> WeighedInto(Batch batch) =>
        OfBatch(context.Weighings, BookLists.Weighing, batch, ids => w => ids.Contains(w.BatchId));
    public IEnumerable<Deviation> DeviationsOf(Batch batch) =>
        OfBatch(context.Deviations, BookLists.Deviation, batch, ids => d => ids.Contains(d.BatchId));
    public IEnumerable<Sale> SalesOf(Batch batch) => OfBatch(context.Sales, BookLists.Sale, batch, ids => s => ids.Contains(s.BatchId));
    public IEnumerable<Disposal> DisposalsOf(Batch batch) =>
        OfBatch(context.Disposals, BookLists.Disposal, batch, ids => d => ids.Contains(d.BatchId!.Value));
    public IEnumerable<PiecesReturned> ReturnsOf(Batch batch) =>
        OfBatch(context.Returns, BookLists.Return, batch, ids => r => ids.Contains(r.BatchId));
    public IEnumerable<StockCount> CountsOf(Batch batch) =>
        OfBatch(context.StockCounts, BookLists.Count, batch, ids => c => ids.Contains(c.BatchId!.Value));
    public IEnumerable<PackingUse> PackedInto(Batch batch) =>
        OfBatch(context.PackingUses, BookLists.Packing, batch, ids => u => ids.Contains(u.BatchId));
    public IReadOnlyList<Printing> PrintingsOf(string lot) =>
        [.. Standing(context.Printings, BookLists.Printing).Where(p => p.Lot == lot).OrderBy(p => p.Id)];
    public IReadOnlyList<Sale> SalesOfTicket(string ticket) =>
        [.. Standing(context.Sales, BookLists.Sale).Where(s => s.Ticket == ticket).OrderBy(s => s.Id)];
    public IReadOnlyList<string> TicketsOn(DateOnly day) =>
        [.. context.Sales.Where(s => s.On == day && s.Ticket != null).Select(s => s.Ticket!).Distinct()];

    /// <summary>Whether anything that stands took from a bottle, by any of its receipts' numbers:
    /// a weighing, packaging, a count, a disposal.</summary>
    /// <returns>What it is, as "Weighing 3 took from" or "Disposal 4 is of"; null where nothing did.</returns>
    public string? Hanging(IReadOnlyList<int> receipts)
    {
        if (Standing(context.Weighings, BookLists.Weighing).Where(w => w.ReceiptId != null && receipts.Contains(w.ReceiptId.Value))
            .ToArray().FirstOrDefault(w => this.BatchNow(w.BatchId) is not null) is { } weighing)
            return Invariant($"Weighing {weighing.Id} took from");
        if (Standing(context.PackingUses, BookLists.Packing).FirstOrDefault(u => receipts.Contains(u.ReceiptId)) is { } packing)
            return Invariant($"Packing {packing.Id} took from");
        if (Standing(context.StockCounts, BookLists.Count)
            .FirstOrDefault(c => c.ReceiptId != null && receipts.Contains(c.ReceiptId.Value)) is { } count)
            return Invariant($"Count {count.Id} is of");
        return Standing(context.Disposals, BookLists.Disposal)
            .FirstOrDefault(d => d.ReceiptId != null && receipts.Contains(d.ReceiptId.Value)) is { } disposal
            ? Invariant($"Disposal {disposal.Id} is of") : null;
    }

    /// <summary>A weighing that stands, took from one of these receipts and is of another material than this.</summary>
    public Weighing? OtherWeighing(IReadOnlyList<int> receipts, string material) => Standing(context.Weighings, BookLists.Weighing)
        .Where(w => w.ReceiptId != null && receipts.Contains(w.ReceiptId.Value) && w.Material != material).ToArray()
        .FirstOrDefault(w => this.BatchNow(w.BatchId) is not null);

    /// <summary>The numbers that an entry had, from the first to the one that stands.</summary>
    public IReadOnlyList<int> Numbers(string list, int id)
    {
        var numbers = new List<int> { First(list, id) };
        while (StruckBy(list, numbers[^1])?.InsteadId is { } next)
            numbers.Add(next);
        return numbers;
    }

    private static IQueryable<T> Standing<T>(IQueryable<T> all, IQueryable<Correction> corrections, string list) where T : BookEntry =>
        all.AsNoTracking().Where(e => !corrections.Any(c => c.List == list && c.EntryId == e.Id));

    private IQueryable<T> Standing<T>(IQueryable<T> all, string list) where T : BookEntry => Standing(all, context.Corrections, list);

    private T[] OfBatch<T>(IQueryable<T> all, string list, Batch batch,
        Func<IReadOnlyList<int>, System.Linq.Expressions.Expression<Func<T, bool>>> isOf) where T : BookEntry =>
        [.. Standing(all, list).Where(isOf(Numbers(BookLists.Batch, batch.Id))).OrderBy(e => e.Id)];

    private Batch? Whole(Batch? batch) =>
        batch is not null
            && context.FrozenRecipes.Where(f => f.Digest == batch.FrozenDigest).Select(f => f.Json).FirstOrDefault() is { } json
            ? batch.With(json)
            : batch;
}
