using LabelForge.Measures;
using Microsoft.EntityFrameworkCore;

namespace LabelForge.Records.Books;

/// <summary>What must hold of the bottles and batches that a transaction changed, in words.</summary>
internal static class PostingRules
{
    /// <summary>Checks them.</summary>
    /// <exception cref="InputException">Less than nothing would be left, or pieces of an open batch would leave.</exception>
    public static void Check(BookQueries books, RecordsContext context, IReadOnlyList<BatchStock> lots, IReadOnlyList<ReceiptStock> bottles)
    {
        foreach (var bottle in bottles.Where(b => b.Left < 0 && context.Entry(b).State != EntityState.Deleted))
        {
            throw Refuse($"M{bottle.Bottle} ({bottle.Material}) would have {-bottle.Left:0.###} less than nothing.",
                $"Take it from another lot, or, if more came in than is written: labelforge correct receipt {bottle.ReceiptId} --set amount=... --reason ...", code: "stock.negative");
        }
        foreach (var lot in lots.Where(l => context.Entry(l).State != EntityState.Deleted))
            Check(books, context, lot);
    }

    /// <summary>A weighing is of another material than its bottle.</summary>
    public static InputException OtherMaterial(Weighing weighing, int bottle, string holds) => Refuse(
        $"Weighing {weighing.Id} is of {weighing.Material}, and M{bottle} holds {holds}.",
        "Name the bottle that it came from, or correct the receipt or the weighing first.");

    /// <summary>A refusal.</summary>
    public static InputException Refuse(FormattableString wrong, string write, string? code = null) => new(new Problem(null, 0, FormattableString.Invariant(wrong), write) { Code = code });

    private static void Check(BookQueries books, RecordsContext context, BatchStock lot)
    {
        if (lot.Closings > 1)
            throw Refuse($"Lot {lot.Lot} is closed already.", "If the count was wrong: labelforge correct closing NUMBER --set made=... --reason ...", code: "lot.closed-twice");
        var batch = new Lazy<Batch>(() => context.Batches.AsNoTracking().First(b => b.Id == lot.BatchId));
        if (lot.Closings == 0 && (lot.Sold != 0 || lot.Disposed != 0 || lot.Returned != 0 || books.CountsOf(batch.Value).Any()))
            throw Refuse($"Lot {lot.Lot} is not finished, so nothing of it can leave.", $"Close it first: labelforge batch close {lot.Lot} --made N", code: "lot.not-closed");
        if (lot.Left < 0)
            throw Refuse($"Lot {lot.Lot} would have {-lot.Left} pieces less than nothing{Who(books, context, batch.Value)}.", "Check the lot and the count: labelforge stock-in-hand", code: "lot.negative");
        if (lot.Returned > lot.Sold)
            throw Refuse($"{lot.Returned - lot.Sold} more of lot {lot.Lot} would be brought back than left the house.", "Check the lot and the count: labelforge trace " + lot.Lot, code: "return.more-than-sold");
    }

    // Who sells beside others wants to know who was quicker.
    private static string Who(BookQueries books, RecordsContext context, Batch batch) => books.SalesOf(batch).LastOrDefault(s => context.Sales.Local.FindEntry(s.Id) is null) is { } last
        ? FormattableString.Invariant($": the last that were sold, {last.Pieces} to {last.To} on {last.On:yyyy-MM-dd}, {last.By} wrote down{(last.WrittenAt is { } at ? FormattableString.Invariant($" at {at:HH:mm:ss} UTC") : "")}")
        : "";
}
