namespace LabelForge.Records.Books;

/// <summary>The lists of the books as tables, for CSV and the screen. Struck entries stay in them, with what struck them.</summary>
/// <remarks>The last columns name by number what an entry hangs on, so that
/// <see cref="ListImport"/> can build the same books again.</remarks>
public static class BookTables
{
    /// <summary>How the moment is written at which an entry was: UTC, to the second.</summary>
    public const string WrittenAt = "yyyy-MM-dd HH:mm:ss'Z'";

    /// <summary>A whole list's heading and rows.</summary>
    /// <exception cref="ArgumentOutOfRangeException">No such list.</exception>
    public static (IReadOnlyList<string> Heading, IReadOnlyList<IReadOnlyList<object?>> Rows) Of(BooksSnapshot snapshot, string list) =>
        Of(snapshot, list,
            snapshot.AllOf(EntryKind.Of(list) ?? throw new ArgumentOutOfRangeException(nameof(list), list, "No such list.")));

    /// <summary>Some entries of a list, with its heading: a page of it.</summary>
    /// <param name="books">The books.</param>
    /// <param name="list">The list.</param>
    /// <param name="entries">The entries, all of that list.</param>
    /// <exception cref="ArgumentOutOfRangeException">No such list.</exception>
    public static (IReadOnlyList<string> Heading,
        IReadOnlyList<IReadOnlyList<object?>> Rows) Of(IBooks books, string list, IReadOnlyList<BookEntry> entries)
    {
        // What a page asks of others is asked once for all its rows.
        var lots = books.LotsOf([.. entries.Select(BatchOf).OfType<int>().Distinct()]);
        string LotOf(int? batch) => batch is { } id && lots.TryGetValue(id, out var known) ? known.Lot : "";
        int[] receipts = [.. entries.Select(ReceiptOf).OfType<int>().Distinct()];
        var firsts = books.Firsts(BookLists.Receipt, receipts);
        var left = list == BookLists.Receipt ? books.LeftOf(receipts) : new Dictionary<int, decimal>();
        string? Bottle(int? receipt) => receipt is { } id ? FormattableString.Invariant($"M{firsts.GetValueOrDefault(id, id)}") : null;
        return list switch
        {
            BookLists.Receipt =>
                Table<Receipt>(books, list,
                ["material lot", "material", "supplier", "supplier lot", "amount", "price", "best before", "certificate", "left"], [],
                entries,
                r => [Bottle(r.Id), r.Material, r.Supplier, r.SupplierLot, r.Amount, r.Price, r.BestBefore, r.Certificate,
                    left.GetValueOrDefault(r.Id)], _ => []),
            BookLists.Batch =>
                Table<Batch>(books, list, ["lot", "pot", "recipe", "product", "pieces planned", "pieces left"], ["frozen"], entries,
                b => [b.Lot, b.Pot, b.Recipe, b.Product, b.PiecesPlanned, lots[b.Id].Left], b => [b.FrozenDigest]),
            BookLists.Printing =>
                Table<Printing>(books, list,
                ["lot", "recipe", "variant", "product", "labels", "spoiled", "run", "stock", "places", "drawing"], [], entries,
                p => [p.Lot, p.Recipe, p.Variant, p.Product, p.Labels, p.Spoiled, p.Run, p.Stock, p.Places, p.Drawing], _ => []),
            BookLists.Weighing =>
                Table<Weighing>(books, list, ["lot", "material", "material lot", "grams"], ["batch", "receipt"], entries,
                    w => [LotOf(w.BatchId), w.Material, Bottle(w.ReceiptId), w.Grams], w => [w.BatchId, w.ReceiptId]),
            BookLists.Deviation =>
                Table<Deviation>(books, list, ["lot", "what"], ["batch"], entries, d => [LotOf(d.BatchId), d.What], d => [d.BatchId]),
            BookLists.Closing =>
                Table<Closing>(books, list, ["lot", "made", "rejected", "yield g"], ["batch"], entries,
                    c => [LotOf(c.BatchId), c.Made, c.Rejected, c.YieldGrams], c => [c.BatchId]),
            BookLists.Sale =>
                Table<Sale>(books, list, ["lot", "pieces", "to", "paid", "tax", "payment", "ticket"], ["batch"], entries,
                    s => [LotOf(s.BatchId), s.Pieces, s.To, s.Paid, s.Tax, s.Payment, s.Ticket], s => [s.BatchId]),
            BookLists.Complaint =>
                Table<Complaint>(books, list, ["lot", "from", "what", "serious", "report by", "keep until"], ["batch"], entries,
                    c => [LotOf(c.BatchId), c.From, c.What, c.Serious ? "yes" : "no", c.ReportBy, c.KeepUntil], c => [c.BatchId]),
            BookLists.Disposal =>
                Table<Disposal>(books, list, ["lot", "material lot", "amount", "reason"], ["batch", "receipt"], entries,
                    d => [LotOf(d.BatchId), Bottle(d.ReceiptId), d.Amount, d.Reason], d => [d.BatchId, d.ReceiptId]),
            BookLists.Packing =>
                Table<PackingUse>(books, list, ["lot", "material lot", "used"], ["batch", "receipt"], entries,
                    u => [LotOf(u.BatchId), Bottle(u.ReceiptId), u.Used], u => [u.BatchId, u.ReceiptId]),
            BookLists.Count =>
                Table<StockCount>(books, list, ["lot", "material lot", "counted", "difference"], ["batch", "receipt"], entries,
                    c => [LotOf(c.BatchId), Bottle(c.ReceiptId), c.Counted, c.Difference], c => [c.BatchId, c.ReceiptId]),
            BookLists.Return =>
                Table<PiecesReturned>(books, list, ["lot", "returned", "back on shelf", "from", "paid back", "tax", "payment", "reason"],
                ["batch"], entries, r => [LotOf(r.BatchId), r.Returned, r.BackOnShelf, r.From, r.PaidBack, r.Tax, r.Payment, r.Reason],
                r => [r.BatchId]),
            BookLists.Takings =>
                Table<Takings>(books, list, ["place", "float", "cash", "card"], [], entries, t => [t.Place, t.Float, t.Cash, t.Card],
                    _ => []),
            BookLists.Attachment =>
                Table<Attachment>(books, list, ["about", "kind", "file", "revision", "issued", "holds until", "digest"], [], entries,
                    a => [a.About, a.Kind, a.FileName, a.Revision, a.Issued, a.BestBefore, a.Digest], _ => []),
            BookLists.Correction =>
                Table<Correction>(books, list, ["list", "entry", "instead", "reason"], [], entries,
                    c => [c.List, c.EntryId, c.InsteadId, c.Reason], _ => []),
            _ => throw new ArgumentOutOfRangeException(nameof(list), list, "No such list."),
        };
    }

    /// <summary>A whole list in pages, read in one transaction: what is held at once does not grow with the list.</summary>
    /// <param name="books">The books.</param>
    /// <param name="list">The list.</param>
    public static IEnumerable<IReadOnlyList<object?>> InPages(IBooks books, string list)
    {
        for (var first = 1; first <= (books.Last(list) ?? 0); first += OnAPage)
        {
            foreach (var row in Of(books, list, [.. books.Page(list, first + OnAPage, OnAPage).Where(e => e.Id >= first)]).Rows)
                yield return row;
        }
    }

    private const int OnAPage = 1000;

    private static int? BatchOf(BookEntry entry) => entry switch
    {
        Batch b => b.Id,
        Weighing w => w.BatchId,
        Deviation d => d.BatchId,
        Closing c => c.BatchId,
        Sale s => s.BatchId,
        Complaint c => c.BatchId,
        Disposal d => d.BatchId,
        PackingUse u => u.BatchId,
        StockCount c => c.BatchId,
        PiecesReturned r => r.BatchId,
        _ => null,
    };

    private static int? ReceiptOf(BookEntry entry) => entry switch
    {
        Receipt r => r.Id,
        Weighing w => w.ReceiptId,
        Disposal d => d.ReceiptId,
        PackingUse u => u.ReceiptId,
        StockCount c => c.ReceiptId,
        _ => null,
    };

    private static (IReadOnlyList<string>,
        IReadOnlyList<IReadOnlyList<object?>>) Table<T>(IBooks books, string list, string[] heading, string[] numbers,
            IReadOnlyList<BookEntry> entries, Func<T, object?[]> cells, Func<T, object?[]> hangsOn) where T : BookEntry
    {
        var struck = entries.Count == 0 ? new Dictionary<int, Correction>() : books.StruckIn(list, entries[0].Id, entries[^1].Id);
        return (
        ["number", "on", "by", .. heading, "note", "written at", "struck by", .. numbers],
        [.. entries.Cast<T>()
            .Select(e => (IReadOnlyList<object?>)[e.Id, e.On, e.By, .. cells(e), e.Note,
                e.WrittenAt?.ToString(WrittenAt, CultureInfo.InvariantCulture),
                struck.TryGetValue(e.Id, out var c) ? string.Create(CultureInfo.InvariantCulture, $"correction {c.Id}") : null,
                .. hangsOn(e)])]);
    }
}
