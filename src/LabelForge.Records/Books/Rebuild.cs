using Microsoft.EntityFrameworkCore;

namespace LabelForge.Records.Books;

/// <summary>What is left of every bottle and batch, reckoned anew from all entries.</summary>
internal static class Rebuild
{
    /// <summary>Writes the tables of what is left anew.</summary>
    public static void Stock(RecordsContext context) => Stock(context, BooksSnapshot.Load(context));

    /// <summary>Writes the tables of what is left anew, from books read already.</summary>
    public static void Stock(RecordsContext context, BooksSnapshot snapshot)
    {
        context.ReceiptStock.ExecuteDelete();
        context.BatchStock.ExecuteDelete();
        context.ReceiptStock.AddRange(Bottles(snapshot));
        context.BatchStock.AddRange(Lots(snapshot));
        context.SaveChanges();
        context.ChangeTracker.Clear();
    }

    /// <summary>Writes how each bottle's supplier's lot is looked for, beside what is left of it.</summary>
    public static void SupplierLots(RecordsContext context)
    {
        var named = context.Receipts.Where(r => r.SupplierLot != null);
        foreach (var bottle in context.ReceiptStock.Join(named, s => s.ReceiptId, r => r.Id, (s, r) => new { Stock = s, r.SupplierLot }))
            bottle.Stock.SupplierLot = ReceiptStock.Sought(bottle.SupplierLot);
        context.SaveChanges();
        context.ChangeTracker.Clear();
    }

    /// <summary>What is left of each bottle.</summary>
    public static IEnumerable<ReceiptStock> Bottles(BooksSnapshot snapshot) => snapshot.Receipts.Select(r => new ReceiptStock
    {
        Bottle = snapshot.First(BookLists.Receipt, r.Id),
        ReceiptId = r.Id,
        Material = r.Material,
        SupplierLot = ReceiptStock.Sought(r.SupplierLot),
        Left = snapshot.Left(r),
    });

    /// <summary>What is left of each batch.</summary>
    public static IEnumerable<BatchStock> Lots(BooksSnapshot snapshot) => snapshot.Batches.Select(b => new BatchStock
    {
        Number = snapshot.First(BookLists.Batch, b.Id),
        BatchId = b.Id,
        Lot = b.Lot,
        Closings = snapshot.ClosingsOf(b).Count(),
        Made = snapshot.ClosingsOf(b).Sum(c => c.Made),
        Rejected = snapshot.ClosingsOf(b).Sum(c => c.Rejected),
        Sold = snapshot.SalesOf(b).Sum(s => s.Pieces),
        Returned = snapshot.ReturnsOf(b).Sum(r => r.Returned),
        BackOnShelf = snapshot.ReturnsOf(b).Sum(r => r.BackOnShelf),
        Disposed = (int)snapshot.DisposalsOf(b).Sum(d => d.Amount),
        Counted = (int)snapshot.CountsOf(b).Sum(c => c.Difference),
        Left = snapshot.PiecesLeft(b),
    });
}
