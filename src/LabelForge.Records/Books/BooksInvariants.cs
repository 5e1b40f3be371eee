namespace LabelForge.Records.Books;

/// <summary>What must hold of the books after every entry: nothing leaves that did not come in,
/// and nothing hangs on a struck entry.</summary>
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
            throw new InputException("books.sale-of-struck", ("sale", sale.Id));
        if (snapshot.Disposals.FirstOrDefault(d => d.BatchId is not null && snapshot.BatchNow(d.BatchId) is null) is { } thrown)
            throw new InputException("books.disposal-of-struck", ("thrown", thrown.Id));
        if (snapshot.Returns.FirstOrDefault(r => snapshot.BatchNow(r.BatchId) is null) is { } returned)
            throw new InputException("books.return-of-struck", ("returned", returned.Id));
        if (snapshot.Counts.FirstOrDefault(c => c.BatchId is not null && snapshot.BatchNow(c.BatchId) is null) is { } counted)
            throw new InputException("books.count-of-struck", ("counted", counted.Id));
        if (snapshot.PackingUses.FirstOrDefault(u => snapshot.BatchNow(u.BatchId) is null) is { } packed)
            throw new InputException("books.packing-of-struck", ("packed", packed.Id));
    }

    private static void Materials(BooksSnapshot snapshot)
    {
        var left = snapshot.LeftOfAll();
        foreach (var receipt in snapshot.Receipts)
        {
            if (left[receipt.Id] is < 0 and var lacks)
                throw new InputException("stock.negative", ("bottle", snapshot.Bottle(receipt.Id)), ("material", receipt.Material),
                    ("value", $"{-lacks:0.###}"), ("receipt", receipt.Id));
        }
        var receipts = snapshot.Receipts.ToDictionary(r => r.Id);
        foreach (var weighing in snapshot.Weighings.Where(w => w.ReceiptId is not null && snapshot.BatchNow(w.BatchId) is not null))
        {
            if (snapshot.Current(BookLists.Receipt, weighing.ReceiptId!.Value) is not { } now)
                throw new InputException("receipt.in-use-by-weighing", ("weighing", weighing.Id),
                    ("bottle", snapshot.Bottle(weighing.ReceiptId.Value)));
            if (receipts[now].Material != weighing.Material)
                throw new InputException("books.weighing-of-another-material", ("weighing", weighing.Id), ("material", weighing.Material),
                    ("bottle", snapshot.Bottle(now)), ("material-2", receipts[now].Material));
        }
        if (snapshot.PackingUses.FirstOrDefault(u => snapshot.Current(BookLists.Receipt, u.ReceiptId) is null) is { } used)
            throw new InputException("receipt.in-use-by-packing", ("used", used.Id), ("bottle", snapshot.Bottle(used.ReceiptId)));
        if (snapshot.Counts.FirstOrDefault(c => c.ReceiptId is { } r && snapshot.Current(BookLists.Receipt, r) is null) is { } counted)
            throw new InputException("receipt.in-use-by-count", ("counted", counted.Id), ("bottle", snapshot.Bottle(counted.ReceiptId!.Value)));
        if (snapshot.Disposals.FirstOrDefault(d => d.ReceiptId is { } r && snapshot.Current(BookLists.Receipt, r) is null) is { } thrown)
            throw new InputException("books.disposal-of-struck-receipt", ("thrown", thrown.Id), ("bottle", snapshot.Bottle(thrown.ReceiptId!.Value)));
    }

    // A lot is one product: that of its batch, and of the labels printed with it.
    private static void Labels(BooksSnapshot snapshot)
    {
        foreach (var printed in snapshot.Printings.GroupBy(p => p.Lot))
        {
            var first = printed.First();
            if (printed.FirstOrDefault(p => !PrintedLots.IsSame(first, p.Recipe, p.Variant)) is { } other)
                throw PrintedLots.Refuse(first, other.Product);
            if (snapshot.Batches.FirstOrDefault(b => b.Lot == printed.Key) is { } batch
                && !PrintedLots.IsSame(first, batch.Recipe, batch.Variant))
                throw PrintedLots.Refuse(first, batch.Product);
        }
    }

    private static void Pieces(BooksSnapshot snapshot, Batch batch, Dictionary<string, int> lots)
    {
        var closings = snapshot.ClosingsOf(batch).Count();
        if (closings > 1)
            throw new InputException("lot.closed-twice", ("lot", batch.Lot));
        if (closings == 1 && snapshot.PiecesLeft(batch) is < 0 and var left)
            throw new InputException("lot.negative", ("lot", batch.Lot), ("value", -left));
        if (closings == 0
            && (snapshot.SalesOf(batch).Any()
                || snapshot.DisposalsOf(batch).Any()
                || snapshot.ReturnsOf(batch).Any()
                || snapshot.CountsOf(batch).Any()))
            throw new InputException("lot.not-closed", ("lot", batch.Lot));
        if (snapshot.ReturnsOf(batch).Sum(r => r.Returned) - snapshot.SalesOf(batch).Sum(s => s.Pieces) is > 0 and var over)
            throw new InputException("return.more-than-sold", ("over", over), ("lot", batch.Lot));
        if (lots[batch.Lot] > 1)
            throw new InputException("books.lot-taken", ("lot", batch.Lot));
    }
}
