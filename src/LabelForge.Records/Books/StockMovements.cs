namespace LabelForge.Records.Books;

/// <summary>What comes in and goes out: receipts, sales, complaints, disposals.</summary>
public static class StockMovements
{
    /// <summary>Writes down a material that came in.</summary>
    public static Receipt Receive(OpenBooks book, Receipt receipt) => book.Write((_, context) =>
    {
        context.Receipts.Add(receipt);
        return receipt;
    });

    /// <summary>Writes down pieces sold or given.</summary>
    public static Sale Sell(OpenBooks book, string lot, int pieces, string to, decimal paid, DateOnly on, string by,
        string? note = null) => book.Write((books, context) =>
    {
        var sale = new Sale { On = on, By = by, BatchId = books.BatchOf(lot).Id, Pieces = pieces, To = to, Paid = paid, Note = note };
        context.Sales.Add(sale);
        return sale;
    });

    /// <summary>Writes down a complaint; a serious one gets its last day of reporting (FD&amp;C Act, section 605(a)).</summary>
    public static Complaint Complain(OpenBooks book, MarketBook markets, string? lot, string from, string what, bool serious,
        bool smallBusiness, DateOnly on, string by, string? note = null) => book.Write((books, context) =>
    {
        var keep = (int)InAnyMarket(markets, smallBusiness ? "complaint.keep-small" : "complaint.keep", on).Max();
        var complaint = new Complaint
        {
            On = on,
            By = by,
            Note = note,
            BatchId = lot is null ? null : books.BatchOf(lot).Id,
            From = from,
            What = what,
            Serious = serious,
            ReportBy = serious ? LastDayToReport(markets, on) : null,
            KeepUntil = on.AddYears(keep),
        };
        context.Complaints.Add(complaint);
        return complaint;
    });

    /// <summary>The last day to report a serious adverse event (FD&amp;C Act, section 605(a)).</summary>
    /// <param name="markets">The markets known.</param>
    /// <param name="told">The day the maker was told.</param>
    public static DateOnly LastDayToReport(MarketBook markets, DateOnly told) =>
        BusinessDays.After(told, (int)InAnyMarket(markets, "complaint.report", told).Min());

    // The books do not know where a piece is sold on: the strictest of the markets known holds.
    private static IEnumerable<decimal> InAnyMarket(MarketBook markets, string figure, DateOnly on) =>
        markets.All.Select(m => m.On(on).FigureIfAny(figure)?.Figure).OfType<decimal>();

    /// <summary>Writes down pieces of a lot thrown away or taken back.</summary>
    public static Disposal DisposePieces(OpenBooks book, string lot, int pieces, string reason, DateOnly on, string by,
        string? note = null) => book.Write((books, context) =>
        Add(context, new Disposal { On = on, By = by, Note = note, BatchId = books.BatchOf(lot).Id, Amount = pieces, Reason = reason }));

    /// <summary>Writes down material thrown away.</summary>
    public static Disposal DisposeMaterial(OpenBooks book, int receiptId, decimal amount, string reason, DateOnly on, string by,
        string? note = null) => book.Write((books, context) =>
        Add(context,
            new Disposal { On = on, By = by, Note = note, ReceiptId = books.ReceiptOf(receiptId).Id, Amount = amount, Reason = reason }));

    private static Disposal Add(RecordsContext context, Disposal disposal)
    {
        context.Disposals.Add(disposal);
        return disposal;
    }
}
