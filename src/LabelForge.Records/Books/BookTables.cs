using System.Globalization;

namespace LabelForge.Records.Books;

/// <summary>The lists of the books as tables, for CSV and the screen. Struck entries stay in them, with what struck them.</summary>
/// <remarks>The last columns name by number what an entry hangs on, so that <see cref="ListImport"/> can build the same books again.</remarks>
public static class BookTables
{
    /// <summary>A list's heading and rows.</summary>
    /// <exception cref="ArgumentOutOfRangeException">No such list.</exception>
    public static (IReadOnlyList<string> Heading, IReadOnlyList<IReadOnlyList<object?>> Rows) Of(Ledger ledger, string list)
    {
        var lots = ledger.AllBatches.ToDictionary(b => b.Id, b => b.Lot);
        string LotOf(int? batch) => batch is { } id ? lots[id] : "";
        string? Bottle(int? receipt) => receipt is { } id ? ledger.Bottle(id) : null;
        return list switch
        {
            BookLists.Receipt => Table(ledger, list, ["material lot", "material", "supplier", "supplier lot", "amount", "price", "best before", "certificate", "left"], [], ledger.AllReceipts,
                r => [ledger.Bottle(r.Id), r.Material, r.Supplier, r.SupplierLot, r.Amount, r.Price, r.BestBefore, r.Certificate, ledger.StruckBy(list, r.Id) is null ? ledger.Left(r) : 0m], _ => []),
            BookLists.Batch => Table(ledger, list, ["lot", "pot", "recipe", "product", "pieces planned", "pieces left"], ["frozen"], ledger.AllBatches,
                b => [b.Lot, b.Pot, b.Recipe, b.Product, b.PiecesPlanned, ledger.StruckBy(list, b.Id) is null ? ledger.PiecesLeft(b) : 0], b => [b.Frozen]),
            BookLists.Printing => Table(ledger, list, ["lot", "recipe", "variant", "product", "labels", "spoiled", "run", "stock", "places", "drawing"], [], ledger.AllPrintings,
                p => [p.Lot, p.Recipe, p.Variant, p.Product, p.Labels, p.Spoiled, p.Run, p.Stock, p.Places, p.Drawing], _ => []),
            BookLists.Weighing => Table(ledger, list, ["lot", "material", "material lot", "grams"], ["batch", "receipt"], ledger.AllWeighings, w => [LotOf(w.BatchId), w.Material, Bottle(w.ReceiptId), w.Grams], w => [w.BatchId, w.ReceiptId]),
            BookLists.Deviation => Table(ledger, list, ["lot", "what"], ["batch"], ledger.AllDeviations, d => [LotOf(d.BatchId), d.What], d => [d.BatchId]),
            BookLists.Closing => Table(ledger, list, ["lot", "made", "rejected", "yield g"], ["batch"], ledger.AllClosings, c => [LotOf(c.BatchId), c.Made, c.Rejected, c.YieldGrams], c => [c.BatchId]),
            BookLists.Sale => Table(ledger, list, ["lot", "pieces", "to", "paid", "tax", "payment", "ticket"], ["batch"], ledger.AllSales, s => [LotOf(s.BatchId), s.Pieces, s.To, s.Paid, s.Tax, s.Payment, s.Ticket], s => [s.BatchId]),
            BookLists.Complaint => Table(ledger, list, ["lot", "from", "what", "serious", "report by", "keep until"], ["batch"], ledger.AllComplaints, c => [LotOf(c.BatchId), c.From, c.What, c.Serious ? "yes" : "no", c.ReportBy, c.KeepUntil], c => [c.BatchId]),
            BookLists.Disposal => Table(ledger, list, ["lot", "material lot", "amount", "reason"], ["batch", "receipt"], ledger.AllDisposals, d => [LotOf(d.BatchId), Bottle(d.ReceiptId), d.Amount, d.Reason], d => [d.BatchId, d.ReceiptId]),
            BookLists.Packing => Table(ledger, list, ["lot", "material lot", "used"], ["batch", "receipt"], ledger.AllPackingUses, u => [LotOf(u.BatchId), Bottle(u.ReceiptId), u.Used], u => [u.BatchId, u.ReceiptId]),
            BookLists.Count => Table(ledger, list, ["lot", "material lot", "counted", "difference"], ["batch", "receipt"], ledger.AllCounts, c => [LotOf(c.BatchId), Bottle(c.ReceiptId), c.Counted, c.Difference], c => [c.BatchId, c.ReceiptId]),
            BookLists.Return => Table(ledger, list, ["lot", "returned", "back on shelf", "from", "paid back", "tax", "payment", "reason"], ["batch"], ledger.AllReturns,
                r => [LotOf(r.BatchId), r.Returned, r.BackOnShelf, r.From, r.PaidBack, r.Tax, r.Payment, r.Reason], r => [r.BatchId]),
            BookLists.Takings => Table(ledger, list, ["place", "float", "cash", "card"], [], ledger.AllTakings, t => [t.Place, t.Float, t.Cash, t.Card], _ => []),
            BookLists.Correction => Table(ledger, list, ["list", "entry", "instead", "reason"], [], ledger.Corrections, c => [c.List, c.EntryId, c.InsteadId, c.Reason], _ => []),
            _ => throw new ArgumentOutOfRangeException(nameof(list), list, "No such list."),
        };
    }

    private static (IReadOnlyList<string>, IReadOnlyList<IReadOnlyList<object?>>) Table<T>(Ledger ledger, string list, string[] heading, string[] numbers, IReadOnlyList<T> entries, Func<T, object?[]> cells, Func<T, object?[]> hangsOn) where T : BookEntry => (
        ["number", "on", "by", .. heading, "note", "struck by", .. numbers],
        [.. entries.Select(e => (IReadOnlyList<object?>)[e.Id, e.On, e.By, .. cells(e), e.Note, ledger.StruckBy(list, e.Id) is { } c ? string.Create(CultureInfo.InvariantCulture, $"correction {c.Id}") : null, .. hangsOn(e)])]);
}
