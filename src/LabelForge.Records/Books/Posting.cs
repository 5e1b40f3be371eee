using Microsoft.EntityFrameworkCore;

namespace LabelForge.Records.Books;

/// <summary>Carries what was added to the books over to what is left of bottles and batches, in
/// the same transaction, and refuses what cannot be.</summary>
/// <remarks>
/// All that one transaction adds is carried over as one, so that a correction and what stands instead count together. The
/// tables refuse less than nothing once more by themselves.
/// </remarks>
internal sealed class Posting(RecordsContext context, BookQueries books)
{
    private readonly List<BatchStock> _changedLots = [];
    private readonly List<ReceiptStock> _changedBottles = [];

    /// <summary>Carries over; the entries are in the tables already.</summary>
    /// <exception cref="InputException">The books would not balance.</exception>
    public void Post(IReadOnlyList<BookEntry> added)
    {
        var corrections = added.OfType<Correction>().ToArray();
        var instead = corrections.Where(c => c.InsteadId is not null).Select(c => (c.List, c.InsteadId!.Value)).ToHashSet();
        foreach (var receipt in added.OfType<Receipt>().Where(r => !instead.Contains((BookLists.Receipt, r.Id))))
            Begin(receipt);
        foreach (var batch in added.OfType<Batch>().Where(b => !instead.Contains((BookLists.Batch, b.Id))))
            Begin(batch);
        foreach (var correction in corrections.Where(c => c.List is BookLists.Receipt or BookLists.Batch))
            Replace(correction, added);
        foreach (var correction in corrections)
        {
            if (Find(correction.List, correction.EntryId, added) is IStockMove struck)
                Move(struck, -1);
        }
        foreach (var move in added.OfType<IStockMove>())
            Move(move, 1);
        PostingRules.Check(books, context, _changedLots, _changedBottles);
        context.SaveChanges();
        Labels(added);
    }

    private void Begin(Receipt receipt) =>
        context.Add(new ReceiptStock
        {
            Bottle = receipt.Id,
            ReceiptId = receipt.Id,
            Material = receipt.Material,
            SupplierLot = ReceiptStock.Sought(receipt.SupplierLot),
            Left = receipt.Amount,
        });

    private void Begin(Batch batch)
    {
        RefuseSecond(batch.Lot, batch.Id);
        context.Add(new BatchStock { Number = batch.Id, BatchId = batch.Id, Lot = batch.Lot });
    }

    private void Replace(Correction correction, IReadOnlyList<BookEntry> added)
    {
        var first = books.First(correction.List, correction.EntryId);
        var struck = Find(correction.List, correction.EntryId, added);
        var now = correction.InsteadId is { } id ? Find(correction.List, id, added) : null;
        if (struck is Receipt receipt && Bottle(first) is { } bottle)
            Replace(bottle, receipt, now as Receipt);
        if (struck is Batch batch && Lot(first) is { } lot)
            Replace(lot, batch, now as Batch);
    }

    private void Replace(ReceiptStock bottle, Receipt was, Receipt? now)
    {
        var numbers = books.Numbers(BookLists.Receipt, bottle.Bottle);
        if (now is null)
        {
            if (books.Hanging(numbers) is { } hangs)
                throw new InputException("receipt.in-use-by-entry", ("hangs", hangs), ("bottle", bottle.Bottle));
            context.Remove(bottle);
            return;
        }
        if (now.Material != bottle.Material && books.OtherWeighing(numbers, now.Material) is { } other)
            throw PostingRules.OtherMaterial(other, bottle.Bottle, now.Material);
        (bottle.ReceiptId, bottle.Material, bottle.SupplierLot) = (now.Id, now.Material, ReceiptStock.Sought(now.SupplierLot));
        bottle.Left += now.Amount - was.Amount;
        Changed(_changedBottles, bottle);
    }

    private void Replace(BatchStock lot, Batch batch, Batch? now)
    {
        if (now is not null)
        {
            if (lot.Lot != now.Lot)
                RefuseSecond(now.Lot, lot.Number);
            (lot.BatchId, lot.Lot) = (now.Id, now.Lot);
            return;
        }
        // A batch struck gives back what was weighed into it; what left of it must be corrected first.
        if (books.SalesOf(batch).FirstOrDefault() is { } sale)
            throw Struck("Sale", sale.Id);
        if (books.DisposalsOf(batch).FirstOrDefault() is { } disposal)
            throw Struck("Disposal", disposal.Id);
        if (books.ReturnsOf(batch).FirstOrDefault() is { } returned)
            throw Struck("Return", returned.Id);
        if (books.CountsOf(batch).FirstOrDefault() is { } count)
            throw Struck("Count", count.Id);
        if (books.PackedInto(batch).FirstOrDefault() is { } packing)
            throw Struck("Packing", packing.Id);
        foreach (var weighing in books.WeighedInto(batch).Where(w => w.ReceiptId is not null))
        {
            if (Bottle(books.First(BookLists.Receipt, weighing.ReceiptId!.Value)) is { } bottle)
                bottle.Left += weighing.Grams;
        }
        context.Remove(lot);
    }

    // What hangs on a batch that was struck moves nothing.
    private void Move(IStockMove move, int sign)
    {
        BatchStock? lot = null;
        if (move.MovesOf is { } batch)
        {
            lot = Lot(books.First(BookLists.Batch, batch));
            if (lot is null || context.Entry(lot).State == EntityState.Deleted)
            {
                if (sign > 0)
                    throw new InputException("books.batch-struck", ("batch", batch));
                return;
            }
            move.Move(lot, sign);
            lot.Left = lot.Closings == 0 ? 0 : lot.Balance;
            if (!move.OnlyTakes)
                Changed(_changedLots, lot);
        }
        if (move.MovesFrom is { } receipt)
        {
            var first = books.First(BookLists.Receipt, receipt);
            if (Bottle(first) is not { } bottle || context.Entry(bottle).State == EntityState.Deleted)
            {
                if (sign > 0)
                    throw new InputException("material-lot.gone", ("first", first));
                return;
            }
            if (sign > 0 && move is Weighing weighing && weighing.Material != bottle.Material)
                throw PostingRules.OtherMaterial(weighing, first, bottle.Material);
            bottle.Left += sign * move.Amount;
            Changed(_changedBottles, bottle);
        }
    }

    // A lot is one product: that of its batch, and of the labels printed with it.
    private void Labels(IReadOnlyList<BookEntry> added)
    {
        var lots = added.OfType<Printing>().Select(p => p.Lot).Concat(added.OfType<Batch>().Select(b => b.Lot)).Distinct();
        foreach (var lot in lots)
        {
            var printings = books.PrintingsOf(lot);
            if (printings.Count == 0)
                continue;
            if (printings.FirstOrDefault(p => !PrintedLots.IsSame(printings[0], p.Recipe, p.Variant)) is { } other)
                throw PrintedLots.Refuse(printings[0], other.Product);
            if (books.FindBatch(lot) is { } batch && !PrintedLots.IsSame(printings[0], batch.Recipe, batch.Variant))
                throw PrintedLots.Refuse(printings[0], batch.Product);
        }
    }

    private void RefuseSecond(string lot, int number)
    {
        if (context.BatchStock.Any(s => s.Lot == lot && s.Number != number)
            || context.BatchStock.Local.Any(s => s.Lot == lot && s.Number != number))
            throw new InputException("books.lot-taken", ("lot", lot));
    }

    private BookEntry? Find(string list, int id, IReadOnlyList<BookEntry> added)
    {
        var kind = EntryKind.Of(list);
        return added.FirstOrDefault(e => e.Id == id && e.GetType() == kind?.Type) ?? kind?.Find(context, id);
    }

    private ReceiptStock? Bottle(int first) => context.ReceiptStock.Find(first);

    private BatchStock? Lot(int first) => context.BatchStock.Find(first);

    private static void Changed<T>(List<T> changed, T row)
    {
        if (!changed.Contains(row))
            changed.Add(row);
    }

    private static InputException Struck(string what, int id) =>
        new InputException("books.batch-in-use", ("what", what), ("id", id), ("what-2", what.ToLowerInvariant()));
}
