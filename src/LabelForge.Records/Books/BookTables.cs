using System.Globalization;

namespace LabelForge.Records.Books;

/// <summary>The lists of the books as tables, for CSV and the screen. Struck entries stay in them, with what struck them.</summary>
public static class BookTables
{
    /// <summary>A list's heading and rows.</summary>
    /// <exception cref="ArgumentOutOfRangeException">No such list.</exception>
    public static (IReadOnlyList<string> Heading, IReadOnlyList<IReadOnlyList<object?>> Rows) Of(Ledger ledger, string list)
    {
        string LotOf(int? batch) => batch is { } id ? ledger.AllBatches.First(b => b.Id == id).Lot : "";
        return list switch
        {
            BookLists.Receipt => Table(ledger, list, ["material", "supplier", "supplier lot", "amount", "price", "best before", "certificate", "left"], ledger.AllReceipts,
                r => [r.Material, r.Supplier, r.SupplierLot, r.Amount, r.Price, r.BestBefore, r.Certificate, ledger.StruckBy(list, r.Id) is null ? ledger.Left(r) : 0m]),
            BookLists.Batch => Table(ledger, list, ["lot", "recipe", "product", "pieces planned", "pieces left"], ledger.AllBatches, b => [b.Lot, b.Recipe, b.Product, b.PiecesPlanned, ledger.StruckBy(list, b.Id) is null ? ledger.PiecesLeft(b) : 0]),
            BookLists.Weighing => Table(ledger, list, ["lot", "material", "from", "grams"], ledger.AllWeighings, w => [LotOf(w.BatchId), w.Material, w.ReceiptId is { } r ? $"M{r}" : null, w.Grams]),
            BookLists.Deviation => Table(ledger, list, ["lot", "what"], ledger.AllDeviations, d => [LotOf(d.BatchId), d.What]),
            BookLists.Closing => Table(ledger, list, ["lot", "made", "rejected", "yield g"], ledger.AllClosings, c => [LotOf(c.BatchId), c.Made, c.Rejected, c.YieldGrams]),
            BookLists.Sale => Table(ledger, list, ["lot", "pieces", "to", "paid"], ledger.AllSales, s => [LotOf(s.BatchId), s.Pieces, s.To, s.Paid]),
            BookLists.Complaint => Table(ledger, list, ["lot", "from", "what", "serious", "report by", "keep until"], ledger.AllComplaints, c => [LotOf(c.BatchId), c.From, c.What, c.Serious ? "yes" : "no", c.ReportBy, c.KeepUntil]),
            BookLists.Disposal => Table(ledger, list, ["lot", "material lot", "amount", "reason"], ledger.AllDisposals, d => [LotOf(d.BatchId), d.ReceiptId is { } r ? $"M{r}" : null, d.Amount, d.Reason]),
            BookLists.Correction => Table(ledger, list, ["list", "entry", "instead", "reason"], ledger.Corrections, c => [c.List, c.EntryId, c.InsteadId, c.Reason]),
            _ => throw new ArgumentOutOfRangeException(nameof(list), list, "No such list."),
        };
    }

    private static (IReadOnlyList<string>, IReadOnlyList<IReadOnlyList<object?>>) Table<T>(Ledger ledger, string list, string[] heading, IReadOnlyList<T> entries, Func<T, object?[]> cells) where T : BookEntry => (
        ["number", "on", "by", .. heading, "note", "struck by"],
        [.. entries.Select(e => (IReadOnlyList<object?>)[e.Id, e.On, e.By, .. cells(e), e.Note, ledger.StruckBy(list, e.Id) is { } c ? string.Create(CultureInfo.InvariantCulture, $"correction {c.Id}") : null])]);
}
