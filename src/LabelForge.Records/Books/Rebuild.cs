using Microsoft.EntityFrameworkCore;

namespace LabelForge.Records.Books;

/// <summary>What is left of every bottle and batch, reckoned anew from all entries.</summary>
internal static class Rebuild
{
    /// <summary>Writes the tables of what is left anew.</summary>
    public static void Stock(RecordsContext context) => Stock(context, Ledger.Load(context));

    /// <summary>Writes the tables of what is left anew, from books read already.</summary>
    public static void Stock(RecordsContext context, Ledger ledger)
    {
        context.ReceiptStock.ExecuteDelete();
        context.BatchStock.ExecuteDelete();
        context.ReceiptStock.AddRange(Bottles(ledger));
        context.BatchStock.AddRange(Lots(ledger));
        context.SaveChanges();
        context.ChangeTracker.Clear();
    }

    /// <summary>What is left of each bottle.</summary>
    public static IEnumerable<ReceiptStock> Bottles(Ledger ledger) => ledger.Receipts.Select(r => new ReceiptStock
    {
        Bottle = ledger.First(BookLists.Receipt, r.Id),
        ReceiptId = r.Id,
        Material = r.Material,
        Left = ledger.Left(r),
    });

    /// <summary>What is left of each batch.</summary>
    public static IEnumerable<BatchStock> Lots(Ledger ledger) => ledger.Batches.Select(b => new BatchStock
    {
        Number = ledger.First(BookLists.Batch, b.Id),
        BatchId = b.Id,
        Lot = b.Lot,
        Closings = ledger.ClosingsOf(b).Count(),
        Made = ledger.ClosingsOf(b).Sum(c => c.Made),
        Rejected = ledger.ClosingsOf(b).Sum(c => c.Rejected),
        Sold = ledger.SalesOf(b).Sum(s => s.Pieces),
        Returned = ledger.ReturnsOf(b).Sum(r => r.Returned),
        BackOnShelf = ledger.ReturnsOf(b).Sum(r => r.BackOnShelf),
        Disposed = (int)ledger.DisposalsOf(b).Sum(d => d.Amount),
        Counted = (int)ledger.CountsOf(b).Sum(c => c.Difference),
        Left = ledger.PiecesLeft(b),
    });
}
