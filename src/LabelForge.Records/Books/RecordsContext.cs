using Microsoft.EntityFrameworkCore;

namespace LabelForge.Records.Books;

/// <summary>The tables of the books. Rows are added and never changed; the database itself refuses otherwise.</summary>
public class RecordsContext : DbContext
{
    /// <summary>The tables in a file (SQLite).</summary>
    public RecordsContext(DbContextOptions<RecordsContext> options)
        : base(options)
    {
    }

    /// <summary>The tables in another place.</summary>
    private protected RecordsContext(DbContextOptions options)
        : base(options)
    {
    }

    /// <summary>The list of what came in.</summary>
    public DbSet<Receipt> Receipts => Set<Receipt>();

    /// <summary>The list of batches.</summary>
    public DbSet<Batch> Batches => Set<Batch>();

    /// <summary>The list of printings of labels.</summary>
    public DbSet<Printing> Printings => Set<Printing>();

    /// <summary>The list of weighings.</summary>
    public DbSet<Weighing> Weighings => Set<Weighing>();

    /// <summary>The list of deviations.</summary>
    public DbSet<Deviation> Deviations => Set<Deviation>();

    /// <summary>The list of closings of batches.</summary>
    public DbSet<Closing> Closings => Set<Closing>();

    /// <summary>The list of sales.</summary>
    public DbSet<Sale> Sales => Set<Sale>();

    /// <summary>The list of complaints.</summary>
    public DbSet<Complaint> Complaints => Set<Complaint>();

    /// <summary>The list of disposals.</summary>
    public DbSet<Disposal> Disposals => Set<Disposal>();

    /// <summary>The list of packaging used up.</summary>
    public DbSet<PackingUse> PackingUses => Set<PackingUse>();

    /// <summary>The list of counts.</summary>
    public DbSet<StockCount> StockCounts => Set<StockCount>();

    /// <summary>The list of what was brought back.</summary>
    public DbSet<PiecesReturned> Returns => Set<PiecesReturned>();

    /// <summary>The list of takings.</summary>
    public DbSet<Takings> Takings => Set<Takings>();

    /// <summary>The list of attached papers.</summary>
    public DbSet<Attachment> Attachments => Set<Attachment>();

    /// <summary>The list of corrections.</summary>
    public DbSet<Correction> Corrections => Set<Correction>();

    /// <summary>The recipes that batches froze, each once.</summary>
    public DbSet<FrozenText> FrozenRecipes => Set<FrozenText>();

    /// <summary>What is left of bottles.</summary>
    public DbSet<ReceiptStock> ReceiptStock => Set<ReceiptStock>();

    /// <summary>What is left of batches.</summary>
    public DbSet<BatchStock> BatchStock => Set<BatchStock>();

    /// <summary>The keys of forms that were written.</summary>
    public DbSet<OnceKey> OnceKeys => Set<OnceKey>();

    /// <summary>When what is added was written: by the store's own clock, which all who write
    /// into it share. Null where nothing is written.</summary>
    internal DateTime? Now { get; set; }

    /// <summary>The names of the tables.</summary>
    public static IReadOnlyList<string> Tables { get; } = ["Receipts", "Batches", "Printings", "Weighings", "Deviations", "Closings",
        "Sales", "Complaints", "Disposals", "PackingUses", "StockCounts", "Returns", "Takings", "Attachments", "Corrections"];

    /// <inheritdoc/>
    public override int SaveChanges(bool acceptAllChangesOnSuccess)
    {
        foreach (var entry in ChangeTracker.Entries<BookEntry>().Where(e => e.State == EntityState.Added).Select(e => e.Entity).ToArray())
        {
            EntryValidation.Check(entry);
            entry.WrittenAt ??= Now;
            if (entry is Batch batch
                && FrozenRecipes.Local.FindEntry(batch.FrozenDigest) is null
                && !FrozenRecipes.Any(f => f.Digest == batch.FrozenDigest))
                FrozenRecipes.Add(new FrozenText { Digest = batch.FrozenDigest, Json = batch.Frozen });
        }
        return base.SaveChanges(acceptAllChangesOnSuccess);
    }

    /// <inheritdoc/>
    protected override void OnModelCreating(ModelBuilder model)
    {
        model.Entity<Batch>().HasIndex(b => b.Lot);
        model.Entity<Printing>().HasIndex(p => p.Lot);
        model.Entity<OnceKey>().HasKey(k => k.Key);
        model.Entity<OnceKey>().Property(k => k.Key).HasMaxLength(OnceKey.MostCharacters);
        model.Entity<Weighing>().HasOne<Batch>().WithMany().HasForeignKey(w => w.BatchId).OnDelete(DeleteBehavior.Restrict);
        model.Entity<Weighing>().HasOne<Receipt>().WithMany().HasForeignKey(w => w.ReceiptId).OnDelete(DeleteBehavior.Restrict);
        model.Entity<Deviation>().HasOne<Batch>().WithMany().HasForeignKey(d => d.BatchId).OnDelete(DeleteBehavior.Restrict);
        model.Entity<Closing>().HasOne<Batch>().WithMany().HasForeignKey(c => c.BatchId).OnDelete(DeleteBehavior.Restrict);
        model.Entity<Sale>().HasOne<Batch>().WithMany().HasForeignKey(s => s.BatchId).OnDelete(DeleteBehavior.Restrict);
        model.Entity<Complaint>().HasOne<Batch>().WithMany().HasForeignKey(c => c.BatchId).OnDelete(DeleteBehavior.Restrict);
        model.Entity<Disposal>().HasOne<Batch>().WithMany().HasForeignKey(d => d.BatchId).OnDelete(DeleteBehavior.Restrict);
        model.Entity<Disposal>().HasOne<Receipt>().WithMany().HasForeignKey(d => d.ReceiptId).OnDelete(DeleteBehavior.Restrict);
        model.Entity<Printing>().Property(p => p.Spoiled).HasDefaultValue(0);
        model.Entity<PackingUse>().HasOne<Batch>().WithMany().HasForeignKey(u => u.BatchId).OnDelete(DeleteBehavior.Restrict);
        model.Entity<PackingUse>().HasOne<Receipt>().WithMany().HasForeignKey(u => u.ReceiptId).OnDelete(DeleteBehavior.Restrict);
        model.Entity<StockCount>().HasOne<Batch>().WithMany().HasForeignKey(c => c.BatchId).OnDelete(DeleteBehavior.Restrict);
        model.Entity<StockCount>().HasOne<Receipt>().WithMany().HasForeignKey(c => c.ReceiptId).OnDelete(DeleteBehavior.Restrict);
        model.Entity<PiecesReturned>().HasOne<Batch>().WithMany().HasForeignKey(r => r.BatchId).OnDelete(DeleteBehavior.Restrict);
        model.Entity<FrozenText>().HasKey(f => f.Digest);
        model.Entity<Batch>().Ignore(b => b.Frozen);
        // With the number, so that a product's last batch is found at once.
        model.Entity<Batch>().HasIndex(b => new { b.Recipe, b.Variant, b.Id });
        model.Entity<Batch>().HasIndex(b => b.Pot);
        model.Entity<Sale>().HasIndex(s => s.Ticket);
        model.Entity<Sale>().HasIndex(s => s.To);
        // A day, a stretch of days and a print run are asked for each day.
        model.Entity<Sale>().HasIndex(s => s.On);
        model.Entity<PiecesReturned>().HasIndex(r => r.On);
        model.Entity<Batch>().HasIndex(b => b.On);
        model.Entity<Printing>().HasIndex(p => p.Run);
        model.Entity<Printing>().HasIndex(p => p.On);
        model.Entity<Attachment>().HasIndex(a => a.About);
        StockTables.Map(model);
        AmountColumns.Map(model);
        foreach (var entry in model.Model.GetEntityTypes().Where(t => typeof(BookEntry).IsAssignableFrom(t.ClrType)))
        {
            model.Entity(entry.ClrType).Property<DateTime?>(nameof(BookEntry.WrittenAt)).HasColumnName("WrittenAtSeconds")
                .HasConversion(at => (long)(at!.Value - DateTime.UnixEpoch).TotalSeconds,
                    seconds => DateTime.UnixEpoch.AddSeconds(seconds));
        }
        // An entry is struck once; what stands instead can be struck in its turn.
        model.Entity<Correction>().HasIndex(c => new { c.List, c.EntryId }).IsUnique();
        model.Entity<Correction>().HasIndex(c => new { c.List, c.InsteadId });
    }
}

/// <summary>The same tables on a PostgreSQL server; a type of its own, since its migrations are written in other words.</summary>
public sealed class ServerRecordsContext(DbContextOptions<ServerRecordsContext> options) : RecordsContext(options);
