using LabelForge.Measures;

namespace LabelForge.Records.Books;

/// <summary>What must hold of the books after every entry: nothing leaves that did not come in, and nothing hangs on a struck entry.</summary>
public static class Balance
{
    /// <summary>Checks the books.</summary>
    /// <exception cref="InputException">They would not balance.</exception>
    public static void Check(Ledger ledger)
    {
        foreach (var receipt in ledger.Receipts)
        {
            if (ledger.Left(receipt) is < 0 and var left)
                throw Refuse($"M{receipt.Id} ({receipt.Material}) would have {-left:0.###} less than nothing.", $"Take it from another lot, or, if more came in than is written: labelforge correct receipt {receipt.Id} --set amount=... --reason ...");
        }
        foreach (var batch in ledger.Batches)
        {
            if (ledger.Closings.Count(c => ledger.BatchNow(c.BatchId) == batch.Id) > 1)
                throw Refuse($"Lot {batch.Lot} is closed already.", "If the count was wrong: labelforge correct closing NUMBER --set made=... --reason ...");
            if (ledger.ClosingOf(batch) is not null && ledger.PiecesLeft(batch) is < 0 and var left)
                throw Refuse($"Lot {batch.Lot} would have {-left} pieces less than nothing.", "Check the lot and the count: labelforge stock-in-hand");
            if (ledger.ClosingOf(batch) is null && ledger.Sales.Any(s => ledger.BatchNow(s.BatchId) == batch.Id))
                throw Refuse($"Lot {batch.Lot} is not finished, so nothing of it can leave.", $"Close it first: labelforge batch close {batch.Lot} --made N");
            if (ledger.Batches.Any(b => b.Lot == batch.Lot && b.Id != batch.Id))
                throw Refuse($"There is a batch with the lot {batch.Lot} already.", "Give this one the next number of the day.");
        }
        if (ledger.Weighings.FirstOrDefault(w => w.ReceiptId is { } r && ledger.BatchNow(w.BatchId) is not null && ledger.Current(BookLists.Receipt, r) is null) is { } weighing)
            throw Refuse($"Weighing {weighing.Id} took from M{weighing.ReceiptId}, which would be struck.", "Correct the weighing first, or put another receipt in its place with --set.");
        if (ledger.Sales.FirstOrDefault(s => ledger.BatchNow(s.BatchId) is null) is { } sale)
            throw Refuse($"Sale {sale.Id} is of a batch that would be struck.", "Correct the sale first.");
    }

    private static InputException Refuse(FormattableString wrong, string write) => new(new Problem(null, 0, FormattableString.Invariant(wrong), write));
}
