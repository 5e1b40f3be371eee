using Microsoft.EntityFrameworkCore;

namespace LabelForge.Records.Books;

/// <summary>What must hold of the bottles and batches that a transaction changed, in words.</summary>
internal static class PostingRules
{
    /// <summary>Checks them.</summary>
    /// <exception cref="InputException">Less than nothing would be left, or pieces of an open batch would leave.</exception>
    public static void Check(BookQueries books, RecordsContext context, IReadOnlyList<BatchStock> lots,
        IReadOnlyList<ReceiptStock> bottles)
    {
        foreach (var bottle in bottles.Where(b => b.Left < 0 && context.Entry(b).State != EntityState.Deleted))
        {
            throw new InputException("stock.negative-bottle", ("bottle", bottle.Bottle), ("material", bottle.Material),
                ("value", $"{-bottle.Left:0.###}"), ("receipt-id", bottle.ReceiptId));
        }
        foreach (var lot in lots.Where(l => context.Entry(l).State != EntityState.Deleted))
            Check(books, context, lot);
    }

    /// <summary>A weighing is of another material than its bottle.</summary>
    public static InputException OtherMaterial(Weighing weighing, int bottle, string holds) =>
        new InputException("books.weighing-from-another-material", ("weighing", weighing.Id), ("material", weighing.Material), ("bottle", bottle),
            ("holds", holds));

    private static void Check(BookQueries books, RecordsContext context, BatchStock lot)
    {
        if (lot.Closings > 1)
            throw new InputException("lot.closed-twice", ("lot", lot.Lot));
        var batch = new Lazy<Batch>(() => context.Batches.AsNoTracking().First(b => b.Id == lot.BatchId));
        if (lot.Closings == 0 && (lot.Sold != 0 || lot.Disposed != 0 || lot.Returned != 0 || books.CountsOf(batch.Value).Any()))
            throw new InputException("lot.not-closed", ("lot", lot.Lot));
        if (lot.Left < 0)
            throw new InputException("lot.negative-as-used", ("lot", lot.Lot), ("value", -lot.Left), ("who", Who(books, context, batch.Value)));
        if (lot.Returned > lot.Sold)
            throw new InputException("return.more-than-sold-of-lot", ("returned", lot.Returned - lot.Sold), ("lot", lot.Lot));
    }

    // Who sells beside others wants to know who was quicker.
    private static string Who(BookQueries books, RecordsContext context, Batch batch) =>
        books.SalesOf(batch).LastOrDefault(s => context.Sales.Local.FindEntry(s.Id) is null) is { } last
            ? Who(last) : "";

    /// <summary>Who sold the last, and to whom: the end of a sentence.</summary>
    public static string Who(Sale last) =>
        Invariant($": the last that were sold, {last.Pieces} to {last.To} on {last.On:yyyy-MM-dd}, {last.By} wrote down{(last.WrittenAt is { } at ? Invariant($" at {at:HH:mm:ss} UTC") : "")}");
}
