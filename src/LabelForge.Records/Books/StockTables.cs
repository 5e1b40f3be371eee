using Microsoft.EntityFrameworkCore;

namespace LabelForge.Records.Books;

/// <summary>The tables of what is left, and what the database itself refuses in them.</summary>
internal static class StockTables
{
    /// <summary>Maps them.</summary>
    public static void Map(ModelBuilder model)
    {
        model.Entity<ReceiptStock>(stock =>
        {
            stock.ToTable("ReceiptStock", t => t.HasCheckConstraint("CK_ReceiptStock_Left", "\"LeftMillionths\" >= 0"));
            stock.HasKey(s => s.Bottle);
            stock.Property(s => s.Bottle).ValueGeneratedNever();
            stock.HasIndex(s => s.ReceiptId).IsUnique();
            stock.HasIndex(s => new { s.Material, s.Left });
            stock.HasIndex(s => s.SupplierLot);
        });
        model.Entity<BatchStock>(stock =>
        {
            stock.ToTable("BatchStock", t =>
            {
                t.HasCheckConstraint("CK_BatchStock_Left", "\"Left\" >= 0");
                t.HasCheckConstraint("CK_BatchStock_Balance",
                    "\"Left\" = \"Made\" - \"Rejected\" - \"Sold\" + \"BackOnShelf\" - \"Disposed\" + \"Counted\"");
                t.HasCheckConstraint("CK_BatchStock_Closings", "\"Closings\" = 1 OR (\"Closings\" = 0 AND \"Left\" = 0 AND \"Sold\" = 0)");
                t.HasCheckConstraint("CK_BatchStock_Returned", "\"Returned\" <= \"Sold\"");
            });
            stock.HasKey(s => s.Number);
            stock.Property(s => s.Number).ValueGeneratedNever();
            stock.HasIndex(s => s.BatchId).IsUnique();
            stock.HasIndex(s => s.Lot).IsUnique();
            // What is asked for each day: the open batches, and those with pieces in the house.
            stock.HasIndex(s => s.Closings);
            stock.HasIndex(s => s.Left);
        });
    }
}
