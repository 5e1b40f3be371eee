using LabelForge.Measures;

namespace LabelForge.Records.Books;

/// <summary>What must hold of the books after every entry: nothing leaves that did not come in, and nothing hangs on a struck entry.</summary>
public static class BooksInvariants
{
    /// <summary>Checks the books.</summary>
    /// <exception cref="InputException">They would not balance.</exception>
    public static void Check(BooksSnapshot snapshot)
    {
        Materials(snapshot);
        var lots = snapshot.Batches.CountBy(b => b.Lot).ToDictionary();
        foreach (var batch in snapshot.Batches)
            Pieces(snapshot, batch, lots);
        Labels(snapshot);
        if (snapshot.Sales.FirstOrDefault(s => snapshot.BatchNow(s.BatchId) is null) is { } sale)
            throw Refuse($"Sale {sale.Id} is of a batch that would be struck.", "Correct the sale first.");
        if (snapshot.Disposals.FirstOrDefault(d => d.BatchId is not null && snapshot.BatchNow(d.BatchId) is null) is { } thrown)
            throw Refuse($"Disposal {thrown.Id} is of a batch that would be struck.", "Correct the disposal first.");
        if (snapshot.Returns.FirstOrDefault(r => snapshot.BatchNow(r.BatchId) is null) is { } returned)
            throw Refuse($"Return {returned.Id} is of a batch that would be struck.", "Correct the return first.");
        if (snapshot.Counts.FirstOrDefault(c => c.BatchId is not null && snapshot.BatchNow(c.BatchId) is null) is { } counted)
            throw Refuse($"Count {counted.Id} is of a batch that would be struck.", "Correct the count first.");
        if (snapshot.PackingUses.FirstOrDefault(u => snapshot.BatchNow(u.BatchId) is null) is { } packed)
            throw Refuse($"Packing {packed.Id} is of a batch that would be struck.", "Correct the packing first.");
    }

    private static void Materials(BooksSnapshot snapshot)
    {
        var left = snapshot.LeftOfAll();
        foreach (var receipt in snapshot.Receipts)
        {
            if (left[receipt.Id] is < 0 and var lacks)
                throw Refuse($"{snapshot.Bottle(receipt.Id)} ({receipt.Material}) would have {-lacks:0.###} less than nothing.", $"Take it from another lot, or, if more came in than is written: labelforge correct receipt {receipt.Id} --set amount=... --reason ...", code: "stock.negative");
        }
        var receipts = snapshot.Receipts.ToDictionary(r => r.Id);
        foreach (var weighing in snapshot.Weighings.Where(w => w.ReceiptId is not null && snapshot.BatchNow(w.BatchId) is not null))
        {
            if (snapshot.Current(BookLists.Receipt, weighing.ReceiptId!.Value) is not { } now)
                throw Refuse($"Weighing {weighing.Id} took from {snapshot.Bottle(weighing.ReceiptId.Value)}, which would be struck.", "Correct the weighing first, or put another receipt in its place with --set.", code: "receipt.in-use");
            if (receipts[now].Material != weighing.Material)
                throw Refuse($"Weighing {weighing.Id} is of {weighing.Material}, and {snapshot.Bottle(now)} holds {receipts[now].Material}.", "Name the bottle that it came from, or correct the receipt or the weighing first.");
        }
        if (snapshot.PackingUses.FirstOrDefault(u => snapshot.Current(BookLists.Receipt, u.ReceiptId) is null) is { } used)
            throw Refuse($"Packing {used.Id} took from {snapshot.Bottle(used.ReceiptId)}, which would be struck.", "Correct the packing first.", code: "receipt.in-use");
        if (snapshot.Counts.FirstOrDefault(c => c.ReceiptId is { } r && snapshot.Current(BookLists.Receipt, r) is null) is { } counted)
            throw Refuse($"Count {counted.Id} is of {snapshot.Bottle(counted.ReceiptId!.Value)}, which would be struck.", "Correct the count first.", code: "receipt.in-use");
        if (snapshot.Disposals.FirstOrDefault(d => d.ReceiptId is { } r && snapshot.Current(BookLists.Receipt, r) is null) is { } thrown)
            throw Refuse($"Disposal {thrown.Id} is of {snapshot.Bottle(thrown.ReceiptId!.Value)}, which would be struck.", "Correct the disposal first.");
    }

    // A lot is one product: that of its batch, and of the labels printed with it.
    private static void Labels(BooksSnapshot snapshot)
    {
        foreach (var printed in snapshot.Printings.GroupBy(p => p.Lot))
        {
            var first = printed.First();
            if (printed.FirstOrDefault(p => !PrintedLots.IsSame(first, p.Recipe, p.Variant)) is { } other)
                throw PrintedLots.Refuse(first, other.Product);
            if (snapshot.Batches.FirstOrDefault(b => b.Lot == printed.Key) is { } batch && !PrintedLots.IsSame(first, batch.Recipe, batch.Variant))
                throw PrintedLots.Refuse(first, batch.Product);
        }
    }

    private static void Pieces(BooksSnapshot snapshot, Batch batch, Dictionary<string, int> lots)
    {
        var closings = snapshot.ClosingsOf(batch).Count();
        if (closings > 1)
            throw Refuse($"Lot {batch.Lot} is closed already.", "If the count was wrong: labelforge correct closing NUMBER --set made=... --reason ...", code: "lot.closed-twice");
        if (closings == 1 && snapshot.PiecesLeft(batch) is < 0 and var left)
            throw Refuse($"Lot {batch.Lot} would have {-left} pieces less than nothing.", "Check the lot and the count: labelforge stock-in-hand", code: "lot.negative");
        if (closings == 0 && (snapshot.SalesOf(batch).Any() || snapshot.DisposalsOf(batch).Any() || snapshot.ReturnsOf(batch).Any() || snapshot.CountsOf(batch).Any()))
            throw Refuse($"Lot {batch.Lot} is not finished, so nothing of it can leave.", $"Close it first: labelforge batch close {batch.Lot} --made N", code: "lot.not-closed");
        if (snapshot.ReturnsOf(batch).Sum(r => r.Returned) - snapshot.SalesOf(batch).Sum(s => s.Pieces) is > 0 and var over)
            throw Refuse($"{over} more of lot {batch.Lot} would be brought back than left the house.", "Check the lot and the count: labelforge trace " + batch.Lot, code: "return.more-than-sold");
        if (lots[batch.Lot] > 1)
            throw Refuse($"There is a batch with the lot {batch.Lot} already.", "Give this one the next number of the day.");
    }

    private static InputException Refuse(FormattableString wrong, string write, string? code = null) => new(new Problem(null, 0, FormattableString.Invariant(wrong), write) { Code = code });
}
