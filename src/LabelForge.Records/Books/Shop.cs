using LabelForge.Markets;
using LabelForge.Measures;

namespace LabelForge.Records.Books;

/// <summary>What comes in and goes out: receipts, sales, complaints, disposals.</summary>
public static class Shop
{
    /// <summary>Writes down a material that came in.</summary>
    public static Receipt Receive(RecordBook book, Receipt receipt) => book.Write((_, context) =>
    {
        if (receipt.Amount <= 0 || receipt.Price < 0)
            throw Refuse("An amount is above nothing, and a price not below.", "Write what came in and what all of it cost: labelforge receive castor-oil \"16 fl oz\" --price 9.50");
        context.Receipts.Add(receipt);
        return receipt;
    });

    /// <summary>Writes down pieces sold or given.</summary>
    public static Sale Sell(RecordBook book, string lot, int pieces, string to, decimal paid, DateOnly on, string by, string? note = null) => book.Write((ledger, context) =>
    {
        if (pieces < 1 || paid < 0)
            throw Refuse("A sale is of one piece or more, for nothing or more.", "Write how many, and what was paid for all of them: --paid 12.00");
        var sale = new Sale { On = on, By = by, BatchId = ledger.BatchOf(lot).Id, Pieces = pieces, To = to, Paid = paid, Note = note };
        context.Sales.Add(sale);
        return sale;
    });

    /// <summary>Writes down a complaint; a serious one gets its last day of reporting (FD&amp;C Act, section 605(a)).</summary>
    public static Complaint Complain(RecordBook book, string? lot, string from, string what, bool serious, bool smallBusiness, DateOnly on, string by) => book.Write((ledger, context) =>
    {
        var keep = (int)LawBook.Shipped.Get(smallBusiness ? "complaint.keep-small.us" : "complaint.keep.us", on).Figure;
        var days = (int)LawBook.Shipped.Get("complaint.report.us", on).Figure;
        var complaint = new Complaint
        {
            On = on,
            By = by,
            BatchId = lot is null ? null : ledger.BatchOf(lot).Id,
            From = from,
            What = what,
            Serious = serious,
            ReportBy = serious ? BusinessDays.After(on, days) : null,
            KeepUntil = on.AddYears(keep),
        };
        context.Complaints.Add(complaint);
        return complaint;
    });

    /// <summary>Writes down pieces of a lot thrown away or taken back.</summary>
    public static Disposal DisposePieces(RecordBook book, string lot, int pieces, string reason, DateOnly on, string by) => book.Write((ledger, context) =>
        Add(context, new Disposal { On = on, By = by, BatchId = ledger.BatchOf(lot).Id, Amount = pieces, Reason = reason }));

    /// <summary>Writes down material thrown away.</summary>
    public static Disposal DisposeMaterial(RecordBook book, int receiptId, decimal amount, string reason, DateOnly on, string by) => book.Write((ledger, context) =>
        ledger.Receipts.Any(r => r.Id == receiptId)
            ? Add(context, new Disposal { On = on, By = by, ReceiptId = receiptId, Amount = amount, Reason = reason })
            : throw Refuse($"There is no M{receiptId}.", "See the lots in the house: labelforge stock-in-hand"));

    private static Disposal Add(RecordsContext context, Disposal disposal)
    {
        if (disposal.Amount <= 0)
            throw Refuse("Nothing was thrown away.", "Write how much, above zero.");
        context.Disposals.Add(disposal);
        return disposal;
    }

    private static InputException Refuse(string wrong, string write) => new(new Problem(null, 0, wrong, write));
}
