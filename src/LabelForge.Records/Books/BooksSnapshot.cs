using System.Collections.Concurrent;
using Microsoft.EntityFrameworkCore;

namespace LabelForge.Records.Books;

/// <summary>All entries of the books in one transaction, read whole, and what they come to after corrections.</summary>
/// <remarks>
/// Everything is reckoned anew from the entries, so that this is what balances kept in tables are held against, and what backups and
/// imports read. One use asks <see cref="BookQueries"/> instead, since this grows with the shop.
/// </remarks>
public sealed class BooksSnapshot : IEntries
{
    private readonly Dictionary<Type, BookEntry[]> _all;
    private readonly ConcurrentDictionary<Type, Array> _standing = [];
    private readonly Dictionary<(string List, int Id), Correction> _struck;
    private readonly Dictionary<(string List, int Id), int> _insteadOf;
    private Dictionary<int, decimal>? _left;
    private ILookup<int, Closing>? _closings;
    private ILookup<int, Sale>? _sales;
    private ILookup<int, Disposal>? _disposals;
    private ILookup<int, StockCount>? _counts;
    private ILookup<int, PiecesReturned>? _returns;

    private BooksSnapshot(Dictionary<Type, BookEntry[]> all)
    {
        _all = all;
        Corrections = All<Correction>();
        _struck = Corrections.ToDictionary(c => (c.List, c.EntryId));
        _insteadOf = Corrections.Where(c => c.InsteadId is not null).ToDictionary(c => (c.List, c.InsteadId!.Value), c => c.EntryId);
    }

    /// <summary>Every correction.</summary>
    public IReadOnlyList<Correction> Corrections { get; }

    /// <summary>Every entry of batches, struck and replaced ones too.</summary>
    public IReadOnlyList<Batch> AllBatches => All<Batch>();

    /// <summary>The receipts that stand.</summary>
    public IReadOnlyList<Receipt> Receipts => Standing<Receipt>();

    /// <summary>The batches that stand.</summary>
    public IReadOnlyList<Batch> Batches => Standing<Batch>();

    /// <summary>The printings of labels that stand.</summary>
    public IReadOnlyList<Printing> Printings => Standing<Printing>();

    /// <summary>The weighings that stand.</summary>
    public IReadOnlyList<Weighing> Weighings => Standing<Weighing>();

    /// <summary>The closings that stand.</summary>
    public IReadOnlyList<Closing> Closings => Standing<Closing>();

    /// <summary>The sales and gifts that stand.</summary>
    public IReadOnlyList<Sale> Sales => Standing<Sale>();

    /// <summary>The disposals that stand.</summary>
    public IReadOnlyList<Disposal> Disposals => Standing<Disposal>();

    /// <summary>The uses of packaging that stand.</summary>
    public IReadOnlyList<PackingUse> PackingUses => Standing<PackingUse>();

    /// <summary>The counts that stand.</summary>
    public IReadOnlyList<StockCount> Counts => Standing<StockCount>();

    /// <summary>The returns that stand.</summary>
    public IReadOnlyList<PiecesReturned> Returns => Standing<PiecesReturned>();

    internal static BooksSnapshot Load(RecordsContext context)
    {
        var all = EntryKind.All.ToDictionary(k => k.Type, k => k.Load(context));
        var frozen = context.FrozenRecipes.AsNoTracking().ToDictionary(f => f.Digest, f => f.Json);
        foreach (var batch in all[typeof(Batch)].Cast<Batch>().Where(b => frozen.ContainsKey(b.FrozenDigest)))
            batch.With(frozen[batch.FrozenDigest]);
        return new BooksSnapshot(all);
    }

    /// <summary>The books with entries added to them.</summary>
    internal BooksSnapshot With(IReadOnlyCollection<BookEntry> added)
    {
        var more = added.ToLookup(e => e.GetType());
        return new BooksSnapshot(EntryKind.All
            .ToDictionary(k => k.Type,
                k => more.Contains(k.Type) ? k.Typed(_all[k.Type].Concat(more[k.Type]).OrderBy(e => e.Id)) : _all[k.Type]));
    }

    /// <summary>Every entry of a kind, struck and replaced ones too, the first one first.</summary>
    public IReadOnlyList<BookEntry> AllOf(EntryKind kind) => _all[kind.Type];

    /// <summary>The correction that strikes an entry, or null where it stands.</summary>
    public Correction? StruckBy(string list, int id) => _struck.GetValueOrDefault((list, id));

    /// <summary>The entry that stands in the place of one: itself, or what corrections put
    /// instead; null where it was struck for good.</summary>
    public int? Current(string list, int id)
    {
        int? now = id;
        while (now is { } at && _struck.TryGetValue((list, at), out var correction))
            now = correction.InsteadId;
        return now;
    }

    /// <summary>The number of an entry as it was first written: corrections do not change it.</summary>
    public int First(string list, int id)
    {
        while (_insteadOf.TryGetValue((list, id), out var earlier))
            id = earlier;
        return id;
    }

    /// <inheritdoc/>
    public BookEntry? Find(string list, int id) => EntryKind.Of(list) is { } kind ? Numbered(_all[kind.Type], id) : null;

    // In the order of their numbers, with gaps where others gave them.
    private static BookEntry? Numbered(BookEntry[] entries, int id)
    {
        var (low, high) = (0, entries.Length - 1);
        while (low <= high)
        {
            var middle = (low + high) / 2;
            if (entries[middle].Id == id)
                return entries[middle];
            (low, high) = entries[middle].Id < id ? (middle + 1, high) : (low, middle - 1);
        }
        return null;
    }

    /// <inheritdoc/>
    public int? Last(string list) => EntryKind.Of(list) is { } kind && _all[kind.Type] is [.., var last] ? last.Id : null;

    /// <inheritdoc/>
    public Receipt? FindReceipt(int number) => Receipts.FirstOrDefault(r => r.Id == Current(BookLists.Receipt, number));

    /// <inheritdoc/>
    public Batch? FindBatch(string lot) => Batches.FirstOrDefault(b => b.Lot == lot);

    /// <inheritdoc/>
    public IReadOnlyList<string> LastLots(int most) => [.. Batches.TakeLast(most).Select(b => b.Lot)];

    /// <summary>Grams (or pieces of packaging) left of a receipt that stands.</summary>
    public decimal Left(Receipt receipt) => LeftOfAll()[receipt.Id];

    /// <summary>What is left of every receipt that stands, by its number.</summary>
    public IReadOnlyDictionary<int, decimal> LeftOfAll()
    {
        if (_left is { } known)
            return known;
        var left = Receipts.ToDictionary(r => r.Id, r => r.Amount);
        void Take(int? receiptId, decimal amount)
        {
            if (receiptId is { } id && Current(BookLists.Receipt, id) is { } now && left.ContainsKey(now))
                left[now] -= amount;
        }
        foreach (var weighing in Weighings.Where(w => this.BatchNow(w.BatchId) is not null))
            Take(weighing.ReceiptId, weighing.Grams);
        foreach (var disposal in Disposals)
            Take(disposal.ReceiptId, disposal.Amount);
        foreach (var packing in PackingUses.Where(u => this.BatchNow(u.BatchId) is not null))
            Take(packing.ReceiptId, packing.Used);
        foreach (var count in Counts)
            Take(count.ReceiptId, -count.Difference);
        return _left = left;
    }

    /// <summary>The closing of a batch, or null while it is open.</summary>
    public Closing? ClosingOf(Batch batch) => ClosingsOf(batch).FirstOrDefault();

    /// <summary>Good pieces of a batch still in the house.</summary>
    public int PiecesLeft(Batch batch) => ClosingOf(batch) is not { } closing ? 0
        : closing.Made - closing.Rejected - SalesOf(batch).Sum(s => s.Pieces) - (int)DisposalsOf(batch).Sum(d => d.Amount)
            + ReturnsOf(batch).Sum(r => r.BackOnShelf) + (int)CountsOf(batch).Sum(c => c.Difference);

    /// <summary>What of a batch was sold and given.</summary>
    public IEnumerable<Sale> SalesOf(Batch batch) => (_sales ??= ByBatch(Sales, s => s.BatchId))[batch.Id];

    /// <summary>What of a batch was thrown away or taken back.</summary>
    public IEnumerable<Disposal> DisposalsOf(Batch batch) => (_disposals ??= ByBatch(Disposals, d => d.BatchId))[batch.Id];

    /// <summary>The counts of a batch's pieces.</summary>
    public IEnumerable<StockCount> CountsOf(Batch batch) => (_counts ??= ByBatch(Counts, c => c.BatchId))[batch.Id];

    /// <summary>What of a batch was brought back.</summary>
    public IEnumerable<PiecesReturned> ReturnsOf(Batch batch) => (_returns ??= ByBatch(Returns, r => r.BatchId))[batch.Id];

    /// <summary>The closings of a batch: one, where the books balance.</summary>
    public IEnumerable<Closing> ClosingsOf(Batch batch) => (_closings ??= ByBatch(Closings, c => c.BatchId))[batch.Id];

    // Asked for batch after batch, so that going through the whole list each time would grow with the square of the books.
    private ILookup<int, T> ByBatch<T>(IReadOnlyList<T> all, Func<T, int?> batch) =>
        all.Select(e => (Entry: e, Batch: this.BatchNow(batch(e)))).Where(e => e.Batch is not null)
            .ToLookup(e => e.Batch!.Value, e => e.Entry);

    /// <summary>Every entry of a kind, struck and replaced ones too, the first one first.</summary>
    public IReadOnlyList<T> All<T>() where T : BookEntry => (T[])_all[typeof(T)];

    /// <summary>Every entry of a kind that stands, the first one first.</summary>
    public IReadOnlyList<T> Standing<T>() where T : BookEntry
    {
        return (T[])_standing.GetOrAdd(typeof(T), type =>
        {
            var list = EntryKind.All.First(k => k.Type == type).List;
            return All<T>().Where(e => !_struck.ContainsKey((list, e.Id))).ToArray();
        });
    }
}
