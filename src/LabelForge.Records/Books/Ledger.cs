using LabelForge.Measures;
using Microsoft.EntityFrameworkCore;

namespace LabelForge.Records.Books;

/// <summary>The books at one moment, as they stand after corrections: what is in stock, what went where.</summary>
public sealed class Ledger
{
    private readonly Dictionary<(string List, int Id), Correction> _struck;
    private readonly Dictionary<(string List, int Id), int> _insteadOf;
    private Dictionary<int, decimal>? _left;
    private ILookup<int, Weighing>? _weighings;
    private ILookup<int, Closing>? _closings;
    private ILookup<int, Sale>? _sales;
    private ILookup<int, Disposal>? _disposals;
    private ILookup<int, PackingUse>? _packing;
    private ILookup<int, StockCount>? _counts;
    private ILookup<int, PiecesReturned>? _returns;

    private Ledger(Func<Type, IEnumerable<BookEntry>> entries)
    {
        T[] All<T>() where T : BookEntry => [.. entries(typeof(T)).Cast<T>().OrderBy(e => e.Id)];
        Corrections = All<Correction>();
        _struck = Corrections.ToDictionary(c => (c.List, c.EntryId));
        _insteadOf = Corrections.Where(c => c.InsteadId is not null).ToDictionary(c => (c.List, c.InsteadId!.Value), c => c.EntryId);
        AllReceipts = All<Receipt>();
        AllBatches = All<Batch>();
        AllPrintings = All<Printing>();
        AllWeighings = All<Weighing>();
        AllDeviations = All<Deviation>();
        AllClosings = All<Closing>();
        AllSales = All<Sale>();
        AllComplaints = All<Complaint>();
        AllDisposals = All<Disposal>();
        AllPackingUses = All<PackingUse>();
        AllCounts = All<StockCount>();
        AllReturns = All<PiecesReturned>();
        AllTakings = All<Takings>();
        Receipts = Standing(BookLists.Receipt, AllReceipts);
        Batches = Standing(BookLists.Batch, AllBatches);
        Printings = Standing(BookLists.Printing, AllPrintings);
        Weighings = Standing(BookLists.Weighing, AllWeighings);
        Deviations = Standing(BookLists.Deviation, AllDeviations);
        Closings = Standing(BookLists.Closing, AllClosings);
        Sales = Standing(BookLists.Sale, AllSales);
        Complaints = Standing(BookLists.Complaint, AllComplaints);
        Disposals = Standing(BookLists.Disposal, AllDisposals);
        PackingUses = Standing(BookLists.Packing, AllPackingUses);
        Counts = Standing(BookLists.Count, AllCounts);
        Returns = Standing(BookLists.Return, AllReturns);
        Takings = Standing(BookLists.Takings, AllTakings);
    }

    /// <summary>Every entry of corrections, struck and replaced ones too.</summary>
    public IReadOnlyList<Correction> Corrections { get; }

    /// <summary>Every entry of what came in, struck and replaced ones too.</summary>
    public IReadOnlyList<Receipt> AllReceipts { get; }

    /// <summary>Every entry of batches, struck and replaced ones too.</summary>
    public IReadOnlyList<Batch> AllBatches { get; }

    /// <summary>Every entry of printings of labels, struck and replaced ones too.</summary>
    public IReadOnlyList<Printing> AllPrintings { get; }

    /// <summary>Every entry of weighings, struck and replaced ones too.</summary>
    public IReadOnlyList<Weighing> AllWeighings { get; }

    /// <summary>Every entry of deviations, struck and replaced ones too.</summary>
    public IReadOnlyList<Deviation> AllDeviations { get; }

    /// <summary>Every entry of closings of batches, struck and replaced ones too.</summary>
    public IReadOnlyList<Closing> AllClosings { get; }

    /// <summary>Every entry of sales, struck and replaced ones too.</summary>
    public IReadOnlyList<Sale> AllSales { get; }

    /// <summary>Every entry of complaints, struck and replaced ones too.</summary>
    public IReadOnlyList<Complaint> AllComplaints { get; }

    /// <summary>Every entry of disposals, struck and replaced ones too.</summary>
    public IReadOnlyList<Disposal> AllDisposals { get; }

    /// <summary>Every entry of packaging used up, struck and replaced ones too.</summary>
    public IReadOnlyList<PackingUse> AllPackingUses { get; }

    /// <summary>Every entry of counts, struck and replaced ones too.</summary>
    public IReadOnlyList<StockCount> AllCounts { get; }

    /// <summary>Every entry of what was brought back, struck and replaced ones too.</summary>
    public IReadOnlyList<PiecesReturned> AllReturns { get; }

    /// <summary>Every entry of takings, struck and replaced ones too.</summary>
    public IReadOnlyList<Takings> AllTakings { get; }

    /// <summary>The receipts that stand.</summary>
    public IReadOnlyList<Receipt> Receipts { get; }

    /// <summary>The batches that stand.</summary>
    public IReadOnlyList<Batch> Batches { get; }

    /// <summary>The printings of labels that stand.</summary>
    public IReadOnlyList<Printing> Printings { get; }

    /// <summary>The weighings that stand.</summary>
    public IReadOnlyList<Weighing> Weighings { get; }

    /// <summary>The deviations that stand.</summary>
    public IReadOnlyList<Deviation> Deviations { get; }

    /// <summary>The closings that stand.</summary>
    public IReadOnlyList<Closing> Closings { get; }

    /// <summary>The sales and gifts that stand.</summary>
    public IReadOnlyList<Sale> Sales { get; }

    /// <summary>The complaints that stand.</summary>
    public IReadOnlyList<Complaint> Complaints { get; }

    /// <summary>The disposals that stand.</summary>
    public IReadOnlyList<Disposal> Disposals { get; }

    /// <summary>The packaging used up, as it stands.</summary>
    public IReadOnlyList<PackingUse> PackingUses { get; }

    /// <summary>The counts that stand.</summary>
    public IReadOnlyList<StockCount> Counts { get; }

    /// <summary>What was brought back, as it stands.</summary>
    public IReadOnlyList<PiecesReturned> Returns { get; }

    /// <summary>The takings that stand.</summary>
    public IReadOnlyList<Takings> Takings { get; }

    internal static Ledger Load(RecordsContext context)
    {
        var tables = new Dictionary<Type, IEnumerable<BookEntry>>();
        void Table<T>() where T : BookEntry => tables[typeof(T)] = context.Set<T>().AsNoTracking().ToArray();
        Table<Receipt>();
        Table<Batch>();
        Table<Printing>();
        Table<Weighing>();
        Table<Deviation>();
        Table<Closing>();
        Table<Sale>();
        Table<Complaint>();
        Table<Disposal>();
        Table<PackingUse>();
        Table<StockCount>();
        Table<PiecesReturned>();
        Table<Takings>();
        Table<Correction>();
        return new Ledger(type => tables[type]);
    }

    /// <summary>The books with entries added to them.</summary>
    internal Ledger With(IReadOnlyCollection<BookEntry> added) => new(type => Of(type).Concat(added.Where(e => e.GetType() == type)));

    /// <summary>The correction that strikes an entry, or null where it stands.</summary>
    public Correction? StruckBy(string list, int id) => _struck.GetValueOrDefault((list, id));

    /// <summary>The entry that stands in the place of one: itself, or what corrections put instead; null where it was struck for good.</summary>
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

    /// <summary>What stands on the bottle of a receipt: M and the number that it was first given, whatever was corrected since.</summary>
    public string Bottle(int receiptId) => FormattableString.Invariant($"M{First(BookLists.Receipt, receiptId)}");

    /// <summary>The receipt that stands for a bottle's number.</summary>
    /// <exception cref="InputException">There is none, or it was struck for good.</exception>
    public Receipt ReceiptOf(int number) => Receipts.FirstOrDefault(r => r.Id == Current(BookLists.Receipt, number))
        ?? throw new InputException(new Problem(null, 0, FormattableString.Invariant($"There is no M{number}{(StruckBy(BookLists.Receipt, number) is { } c ? $" any more: {c.Reason}" : "")}."), "See the lots in the house: labelforge stock-in-hand") { Code = "material-lot.unknown" });

    /// <summary>The batch of a lot code.</summary>
    /// <exception cref="InputException">No batch has that lot.</exception>
    public Batch BatchOf(string lot) => Batches.FirstOrDefault(b => b.Lot == lot)
        ?? throw new InputException(new Problem(null, 0, $"No batch has the lot {lot}.",
            AllBatches.Count == 0 ? "Begin one with: labelforge batch start RECIPE" : $"The last lots are {string.Join(", ", Batches.TakeLast(5).Select(b => b.Lot))}.")
        { Code = AllBatches.Count == 0 ? "batches.none" : null });

    /// <summary>The batch that an entry belongs to, as it stands; null where it was struck.</summary>
    public int? BatchNow(int? batchId) => batchId is { } id ? Current(BookLists.Batch, id) : null;

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
            if (receiptId is { } id && Current(BookLists.Receipt, id) is { } now)
                left[now] -= amount;
        }
        foreach (var weighing in Weighings.Where(w => BatchNow(w.BatchId) is not null))
            Take(weighing.ReceiptId, weighing.Grams);
        foreach (var disposal in Disposals)
            Take(disposal.ReceiptId, disposal.Amount);
        foreach (var packing in PackingUses.Where(u => BatchNow(u.BatchId) is not null))
            Take(packing.ReceiptId, packing.Used);
        foreach (var count in Counts)
            Take(count.ReceiptId, -count.Difference);
        return _left = left;
    }

    /// <summary>The receipts of a material that have something left, first to expire first, then first come first.</summary>
    public IEnumerable<(Receipt Receipt, decimal Left)> InStock(string material) => Receipts
        .Where(r => r.Material == material)
        .Select(r => (Receipt: r, Left: Left(r)))
        .Where(r => r.Left > 0)
        .OrderBy(r => r.Receipt.BestBefore ?? DateOnly.MaxValue).ThenBy(r => r.Receipt.On).ThenBy(r => r.Receipt.Id);

    /// <summary>The closing of a batch, or null while it is open.</summary>
    public Closing? ClosingOf(Batch batch) => ClosingsOf(batch).FirstOrDefault();

    /// <summary>Good pieces of a batch still in the house.</summary>
    public int PiecesLeft(Batch batch) => ClosingOf(batch) is not { } closing ? 0
        : closing.Made - closing.Rejected - SalesOf(batch).Sum(s => s.Pieces) - (int)DisposalsOf(batch).Sum(d => d.Amount)
            + ReturnsOf(batch).Sum(r => r.BackOnShelf) + (int)CountsOf(batch).Sum(c => c.Difference);

    /// <summary>What was weighed into a batch.</summary>
    public IEnumerable<Weighing> WeighedInto(Batch batch) => (_weighings ??= ByBatch(Weighings, w => w.BatchId))[batch.Id];

    /// <summary>What of a batch was sold and given.</summary>
    public IEnumerable<Sale> SalesOf(Batch batch) => (_sales ??= ByBatch(Sales, s => s.BatchId))[batch.Id];

    /// <summary>What of a batch was thrown away or taken back.</summary>
    public IEnumerable<Disposal> DisposalsOf(Batch batch) => (_disposals ??= ByBatch(Disposals, d => d.BatchId))[batch.Id];

    /// <summary>What packaging a batch used up.</summary>
    public IEnumerable<PackingUse> PackedInto(Batch batch) => (_packing ??= ByBatch(PackingUses, u => u.BatchId))[batch.Id];

    /// <summary>The counts of a batch's pieces.</summary>
    public IEnumerable<StockCount> CountsOf(Batch batch) => (_counts ??= ByBatch(Counts, c => c.BatchId))[batch.Id];

    /// <summary>What of a batch was brought back.</summary>
    public IEnumerable<PiecesReturned> ReturnsOf(Batch batch) => (_returns ??= ByBatch(Returns, r => r.BatchId))[batch.Id];

    /// <summary>The batches whose base was melted in one pot, in the order they were begun.</summary>
    public IEnumerable<Batch> BatchesOfPot(string pot) => Batches.Where(b => b.Pot == pot);

    /// <summary>The closings of a batch: one, where the books balance.</summary>
    public IEnumerable<Closing> ClosingsOf(Batch batch) => (_closings ??= ByBatch(Closings, c => c.BatchId))[batch.Id];

    // Asked for batch after batch, so that going through the whole list each time would grow with the square of the books.
    private ILookup<int, T> ByBatch<T>(IReadOnlyList<T> all, Func<T, int?> batch) =>
        all.Select(e => (Entry: e, Batch: BatchNow(batch(e)))).Where(e => e.Batch is not null).ToLookup(e => e.Batch!.Value, e => e.Entry);

    private IEnumerable<BookEntry> Of(Type type) => new IEnumerable<BookEntry>[]
    {
        AllReceipts, AllBatches, AllPrintings, AllWeighings, AllDeviations, AllClosings, AllSales, AllComplaints, AllDisposals, AllPackingUses, AllCounts, AllReturns, AllTakings, Corrections,
    }.SelectMany(list => list).Where(e => e.GetType() == type);

    private T[] Standing<T>(string list, IReadOnlyList<T> all) where T : BookEntry => [.. all.Where(e => !_struck.ContainsKey((list, e.Id)))];
}
