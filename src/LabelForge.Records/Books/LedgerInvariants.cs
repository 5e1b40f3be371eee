using LabelForge.Measures;

namespace LabelForge.Records.Books;

/// <summary>What must hold of the books after every entry: nothing leaves that did not come in, and nothing hangs on a struck entry.</summary>
public static class LedgerInvariants
{
    /// <summary>Checks the books.</summary>
    /// <exception cref="InputException">They would not balance.</exception>
    public static void Check(Ledger ledger)
    {
        Materials(ledger);
        var lots = ledger.Batches.CountBy(b => b.Lot).ToDictionary();
        foreach (var batch in ledger.Batches)
            Pieces(ledger, batch, lots);
        Labels(ledger);
        if (ledger.Sales.FirstOrDefault(s => ledger.BatchNow(s.BatchId) is null) is { } sale)
            throw Refuse($"Sale {sale.Id} is of a batch that would be struck.", "Correct the sale first.");
        if (ledger.Disposals.FirstOrDefault(d => d.BatchId is not null && ledger.BatchNow(d.BatchId) is null) is { } thrown)
            throw Refuse($"Disposal {thrown.Id} is of a batch that would be struck.", "Correct the disposal first.");
        if (ledger.Returns.FirstOrDefault(r => ledger.BatchNow(r.BatchId) is null) is { } returned)
            throw Refuse($"Return {returned.Id} is of a batch that would be struck.", "Correct the return first.");
        if (ledger.Counts.FirstOrDefault(c => c.BatchId is not null && ledger.BatchNow(c.BatchId) is null) is { } counted)
            throw Refuse($"Count {counted.Id} is of a batch that would be struck.", "Correct the count first.");
        if (ledger.PackingUses.FirstOrDefault(u => ledger.BatchNow(u.BatchId) is null) is { } packed)
            throw Refuse($"Packing {packed.Id} is of a batch that would be struck.", "Correct the packing first.");
    }

    private static void Materials(Ledger ledger)
    {
        var left = ledger.LeftOfAll();
        foreach (var receipt in ledger.Receipts)
        {
            if (left[receipt.Id] is < 0 and var lacks)
                throw Refuse($"{ledger.Bottle(receipt.Id)} ({receipt.Material}) would have {-lacks:0.###} less than nothing.", $"Take it from another lot, or, if more came in than is written: labelforge correct receipt {receipt.Id} --set amount=... --reason ...", code: "stock.negative");
        }
        var receipts = ledger.Receipts.ToDictionary(r => r.Id);
        foreach (var weighing in ledger.Weighings.Where(w => w.ReceiptId is not null && ledger.BatchNow(w.BatchId) is not null))
        {
            if (ledger.Current(BookLists.Receipt, weighing.ReceiptId!.Value) is not { } now)
                throw Refuse($"Weighing {weighing.Id} took from {ledger.Bottle(weighing.ReceiptId.Value)}, which would be struck.", "Correct the weighing first, or put another receipt in its place with --set.", code: "receipt.in-use");
            if (receipts[now].Material != weighing.Material)
                throw Refuse($"Weighing {weighing.Id} is of {weighing.Material}, and {ledger.Bottle(now)} holds {receipts[now].Material}.", "Name the bottle that it came from, or correct the receipt or the weighing first.");
        }
        if (ledger.PackingUses.FirstOrDefault(u => ledger.Current(BookLists.Receipt, u.ReceiptId) is null) is { } used)
            throw Refuse($"Packing {used.Id} took from {ledger.Bottle(used.ReceiptId)}, which would be struck.", "Correct the packing first.", code: "receipt.in-use");
        if (ledger.Counts.FirstOrDefault(c => c.ReceiptId is { } r && ledger.Current(BookLists.Receipt, r) is null) is { } counted)
            throw Refuse($"Count {counted.Id} is of {ledger.Bottle(counted.ReceiptId!.Value)}, which would be struck.", "Correct the count first.", code: "receipt.in-use");
        if (ledger.Disposals.FirstOrDefault(d => d.ReceiptId is { } r && ledger.Current(BookLists.Receipt, r) is null) is { } thrown)
            throw Refuse($"Disposal {thrown.Id} is of {ledger.Bottle(thrown.ReceiptId!.Value)}, which would be struck.", "Correct the disposal first.");
    }

    // A lot is one product: that of its batch, and of the labels printed with it.
    private static void Labels(Ledger ledger)
    {
        foreach (var printed in ledger.Printings.GroupBy(p => p.Lot))
        {
            var first = printed.First();
            if (printed.FirstOrDefault(p => !PrintedLots.IsSame(first, p.Recipe, p.Variant)) is { } other)
                throw PrintedLots.Refuse(first, other.Product);
            if (ledger.Batches.FirstOrDefault(b => b.Lot == printed.Key) is { } batch && !PrintedLots.IsSame(first, batch.Recipe, batch.Variant))
                throw PrintedLots.Refuse(first, batch.Product);
        }
    }

    private static void Pieces(Ledger ledger, Batch batch, Dictionary<string, int> lots)
    {
        var closings = ledger.ClosingsOf(batch).Count();
        if (closings > 1)
            throw Refuse($"Lot {batch.Lot} is closed already.", "If the count was wrong: labelforge correct closing NUMBER --set made=... --reason ...", code: "lot.closed-twice");
        if (closings == 1 && ledger.PiecesLeft(batch) is < 0 and var left)
            throw Refuse($"Lot {batch.Lot} would have {-left} pieces less than nothing.", "Check the lot and the count: labelforge stock-in-hand", code: "lot.negative");
        if (closings == 0 && (ledger.SalesOf(batch).Any() || ledger.DisposalsOf(batch).Any() || ledger.ReturnsOf(batch).Any() || ledger.CountsOf(batch).Any()))
            throw Refuse($"Lot {batch.Lot} is not finished, so nothing of it can leave.", $"Close it first: labelforge batch close {batch.Lot} --made N", code: "lot.not-closed");
        if (ledger.ReturnsOf(batch).Sum(r => r.Returned) - ledger.SalesOf(batch).Sum(s => s.Pieces) is > 0 and var over)
            throw Refuse($"{over} more of lot {batch.Lot} would be brought back than left the house.", "Check the lot and the count: labelforge trace " + batch.Lot, code: "return.more-than-sold");
        if (lots[batch.Lot] > 1)
            throw Refuse($"There is a batch with the lot {batch.Lot} already.", "Give this one the next number of the day.");
    }

    private static InputException Refuse(FormattableString wrong, string write, string? code = null) => new(new Problem(null, 0, FormattableString.Invariant(wrong), write) { Code = code });
}
