using System.Globalization;
using LabelForge.Records.Books;

namespace LabelForge.Tests.Shared;

/// <summary>All books questions answered anew from all entries: what the queries' answers are held against.</summary>
internal sealed class ReckonedBooks(BooksSnapshot whole) : IBooks
{
    public BooksSnapshot Whole { get; } = whole;

    private ILookup<int, Weighing>? _weighings;
    private ILookup<int, Deviation>? _deviations;
    private ILookup<int, PackingUse>? _packing;
    private Dictionary<string, int>? _printed;

    public IReadOnlyList<Correction> Corrections => Whole.Corrections;

    public IReadOnlyList<Batch> AllBatches => Whole.AllBatches;

    public IReadOnlyList<Receipt> Receipts => Whole.Receipts;

    public IReadOnlyList<Batch> Batches => Whole.Batches;

    public IReadOnlyList<Printing> Printings => Whole.Printings;

    public IReadOnlyList<Weighing> Weighings => Whole.Weighings;

    public IReadOnlyList<Closing> Closings => Whole.Closings;

    public IReadOnlyList<Sale> Sales => Whole.Sales;

    public IReadOnlyList<Disposal> Disposals => Whole.Disposals;

    public IReadOnlyList<PackingUse> PackingUses => Whole.PackingUses;

    public IReadOnlyList<StockCount> Counts => Whole.Counts;

    public IReadOnlyList<PiecesReturned> Returns => Whole.Returns;

    public Correction? StruckBy(string list, int id) => Whole.StruckBy(list, id);

    public int? Current(string list, int id) => Whole.Current(list, id);

    public int First(string list, int id) => Whole.First(list, id);

    public BookEntry? Find(string list, int id) => Whole.Find(list, id);

    public int? Last(string list) => Whole.Last(list);

    public Receipt? FindReceipt(int number) => Whole.FindReceipt(number);

    public Batch? FindBatch(string lot) => Whole.FindBatch(lot);

    public IReadOnlyList<string> LastLots(int most) => Whole.LastLots(most);

    public IReadOnlyList<BookEntry> AllOf(EntryKind kind) => Whole.AllOf(kind);

    public decimal Left(Receipt receipt) => Whole.Left(receipt);

    public IReadOnlyDictionary<int, decimal> LeftOfAll() => Whole.LeftOfAll();

    public Closing? ClosingOf(Batch batch) => Whole.ClosingOf(batch);

    public IEnumerable<Closing> ClosingsOf(Batch batch) => Whole.ClosingsOf(batch);

    public int PiecesLeft(Batch batch) => Whole.PiecesLeft(batch);

    public IEnumerable<Sale> SalesOf(Batch batch) => Whole.SalesOf(batch);

    public IEnumerable<Disposal> DisposalsOf(Batch batch) => Whole.DisposalsOf(batch);

    public IEnumerable<StockCount> CountsOf(Batch batch) => Whole.CountsOf(batch);

    public IEnumerable<PiecesReturned> ReturnsOf(Batch batch) => Whole.ReturnsOf(batch);

    public IReadOnlyList<Receipt> AllReceipts => Whole.All<Receipt>();

    public IReadOnlyList<Printing> AllPrintings => Whole.All<Printing>();

    public IReadOnlyList<Weighing> AllWeighings => Whole.All<Weighing>();

    public IReadOnlyList<Deviation> AllDeviations => Whole.All<Deviation>();

    public IReadOnlyList<Sale> AllSales => Whole.All<Sale>();

    public IReadOnlyList<Complaint> AllComplaints => Whole.All<Complaint>();

    public IReadOnlyList<Disposal> AllDisposals => Whole.All<Disposal>();

    public IReadOnlyList<Deviation> Deviations => Whole.Standing<Deviation>();

    public IReadOnlyList<Complaint> Complaints => Whole.Standing<Complaint>();

    public IReadOnlyList<Takings> Takings => Whole.Standing<Takings>();

    public bool IsKept(string material) => Receipts.Any(r => r.Material == material);

    public IReadOnlyList<Batch> OpenBatches() => [.. Batches.Where(b => ClosingOf(b) is null)];

    public bool IsNumberTaken(string code) => AllBatches.Any(b => b.Lot == code || b.Pot == code);

    public IReadOnlyList<Printing> PrintingsOf(string lot) => [.. Printings.Where(p => p.Lot == lot)];

    public IReadOnlyList<(Batch Batch, int Left)> LotsInStock(string recipe, string? variant) =>
    [
        .. Batches.Where(b => b.Recipe == recipe && string.Equals(b.Variant, variant, StringComparison.OrdinalIgnoreCase))
            .Select(b => (Batch: b, Left: PiecesLeft(b))).Where(b => b.Left > 0).OrderBy(b => b.Batch.On).ThenBy(b => b.Batch.Id),
    ];

    public IReadOnlyList<Sale> SalesOfTicket(string ticket) => [.. Sales.Where(s => s.Ticket == ticket)];

    public IReadOnlyList<string> TicketsOn(DateOnly day) =>
        [.. AllSales.Where(s => s.On == day).Select(s => s.Ticket).OfType<string>().Distinct()];

    public DateOnly? OpenedOn(Receipt receipt) =>
        Weighings.Where(w => w.ReceiptId is { } r && Current(BookLists.Receipt, r) == receipt.Id).Select(w => (DateOnly?)w.On).Min();

    public IEnumerable<(Receipt Receipt, decimal Left)> InStock(string material) => Receipts
        .Where(r => r.Material == material)
        .Select(r => (Receipt: r, Left: Left(r)))
        .Where(r => r.Left >= Millionths.Rest)
        .OrderBy(r => r.Receipt.BestBefore ?? DateOnly.MaxValue).ThenBy(r => r.Receipt.On).ThenBy(r => r.Receipt.Id);

    public IEnumerable<Weighing> WeighedInto(Batch batch) => (_weighings ??= ByBatch(Weighings, w => w.BatchId))[batch.Id];

    public IEnumerable<Deviation> DeviationsOf(Batch batch) => (_deviations ??= ByBatch(Deviations, d => d.BatchId))[batch.Id];

    public IEnumerable<PackingUse> PackedInto(Batch batch) => (_packing ??= ByBatch(PackingUses, u => u.BatchId))[batch.Id];

    public IEnumerable<Batch> BatchesOfPot(string pot) => Batches.Where(b => b.Pot == pot);

    public IReadOnlyList<Sale> SalesOn(DateOnly day) => [.. Sales.Where(s => s.On == day)];

    public IReadOnlyList<PiecesReturned> ReturnsOn(DateOnly day) => [.. Returns.Where(r => r.On == day)];

    public IReadOnlyList<Takings> TakingsOn(DateOnly day) => [.. Takings.Where(t => t.On == day)];

    public IReadOnlyList<string> LastBuyers(int most) =>
        [.. Sales.GroupBy(s => s.To).OrderBy(g => g.Max(s => s.Id)).Select(g => g.Key).TakeLast(most)];

    public string? LastTicket() => Sales.LastOrDefault(s => s.Ticket is not null)?.Ticket;

    public int LastRun() => AllPrintings.Max(p => p.Run) ?? 0;

    public IReadOnlyList<Printing> PrintingsOfRun(int run) => [.. Printings.Where(p => p.Run == run)];

    public IReadOnlyList<Printing> PrintingsOn(DateOnly day) => [.. Printings.Where(p => p.On == day)];

    public IReadOnlyList<string> LastPots(int most) => [.. Batches.Reverse().Select(b => b.Pot).OfType<string>().Distinct().Take(most)];

    public IReadOnlyList<ProductSold> SoldBetween(DateOnly from, DateOnly to) => ProductSold.Of(this,
        Sales.Where(s => s.On >= from && s.On <= to && s.Paid > 0).Select(s => (s.BatchId, s.Pieces, 0))
            .Concat(Returns.Where(r => r.On >= from && r.On <= to).Select(r => (r.BatchId, 0, r.Returned))));

    public IReadOnlyDictionary<int, Correction> StruckIn(string list, int first, int last) =>
        Corrections.Where(c => c.List == list && c.EntryId >= first && c.EntryId <= last).ToDictionary(c => c.EntryId);

    public IReadOnlyDictionary<int, (string Lot, int Left)> LotsOf(IReadOnlyCollection<int> batches)
    {
        var wanted = batches.ToHashSet();
        return AllBatches.Where(b => wanted.Contains(b.Id))
            .ToDictionary(b => b.Id, b => (b.Lot, StruckBy(BookLists.Batch, b.Id) is null ? PiecesLeft(b) : 0));
    }

    public IReadOnlyList<Batch> BatchesOn(DateOnly day) => [.. Batches.Where(b => b.On == day)];

    public IReadOnlyList<BookEntry> Page(string list, int? before, int most) =>
        EntryKind.Of(list) is { } kind ? [.. Whole.AllOf(kind).Where(e => before is null || e.Id < before).TakeLast(most)] : [];

    public IReadOnlyList<(Receipt Receipt, decimal Left)> InStock() => [.. KeptMaterials().SelectMany(InStock)];

    public IReadOnlyList<string> KeptMaterials() => [.. Receipts.Select(r => r.Material).Distinct().Order(StringComparer.Ordinal)];

    public IReadOnlyList<(Batch Batch, int Left)> LotsInStock() =>
        [.. Batches.Select(b => (Batch: b, Left: PiecesLeft(b))).Where(b => b.Left > 0)];

    public IReadOnlyList<LotInHand> LotsInHand(DateOnly from) =>
        [.. Batches.Where(b => b.On >= from).Select(InHand).Where(l => l.Open || l.Left > 0)];

    private LotInHand InHand(Batch batch) =>
        new(batch, ClosingOf(batch) is null, ClosingOf(batch) is { } closing ? closing.Made - closing.Rejected : 0, PiecesLeft(batch),
            (_printed ??= Printings.GroupBy(p => p.Lot).ToDictionary(g => g.Key, g => g.Sum(p => p.Labels - p.Spoiled)))
                .GetValueOrDefault(batch.Lot));

    public IReadOnlyList<ProductMade> ProductsMade() =>
        [.. Batches.GroupBy(b => (b.Recipe, b.Variant))
            .Select(g => new ProductMade(g.Key.Recipe, g.Key.Variant, g.Last().Product, g.Sum(PiecesLeft)))];

    public DateOnly? FirstPrinting() => AllPrintings.Count == 0 ? null : AllPrintings.Min(p => p.On);

    public IReadOnlyList<Complaint> ComplaintsSince(DateOnly day) => [.. Complaints.Where(c => c.On >= day || c.ReportBy >= day)];

    public IReadOnlyList<LotInHand> Lots(int? before, int most, string? recipe = null) =>
        [.. Batches.Where(b => (before is null || b.Id < before) && (recipe is null || b.Recipe == recipe)).TakeLast(most).Reverse()
            .Select(InHand)];

    public (bool Begun, bool Finished) WasMade(string recipe, string? variant) =>
        Batches.Where(b => b.Recipe == recipe && b.Variant == variant).ToArray() is var mine
            ? (mine.Length > 0, mine.Any(b => ClosingOf(b) is not null))
            : default;

    public IReadOnlyList<string> Names(NameList list) => [.. (list switch
    {
        NameList.Products => Batches.Select(b => b.Product),
        NameList.Suppliers => Receipts.Select(r => r.Supplier).OfType<string>(),
        _ => Sales.Select(s => s.To),
    }).Distinct().Order(StringComparer.Ordinal)];

    public IReadOnlyList<Batch> LotsWith(IReadOnlyList<SoughtWord> words, IReadOnlyCollection<string> near, int most) =>
    [
        .. Batches.Where(
            b => words.All(w => b.Lot.ToUpperInvariant().Contains(w.Code, StringComparison.Ordinal) || w.Names.Contains(b.Product)))
            .OrderBy(b => !near.Contains(b.Product)).ThenByDescending(b => b.On).ThenByDescending(b => b.Id).Take(most),
    ];

    public IReadOnlyList<Receipt> BottlesWith(IReadOnlyList<SoughtWord> words, IReadOnlyCollection<string> near, int most) =>
    [
        .. Receipts.Where(
            r => words.All(w => string.Create(CultureInfo.InvariantCulture, $"M{First(BookLists.Receipt, r.Id)}")
                .Contains(w.Code, StringComparison.Ordinal)
                || ReceiptStock.Sought(r.SupplierLot)?.Contains(w.Plain, StringComparison.Ordinal) == true
                || w.Names.Contains(r.Material)
                || (r.Supplier is { } supplier && w.Names.Contains(supplier))))
            .OrderBy(r => !near.Contains(r.Material)).ThenByDescending(r => r.On).ThenByDescending(r => r.Id).Take(most),
    ];

    public IReadOnlyDictionary<string, (int Pieces, DateOnly Last)> BoughtBy(IReadOnlyCollection<string> buyers) =>
        Sales.Where(s => buyers.Contains(s.To)).GroupBy(s => s.To).ToDictionary(g => g.Key, g => (g.Sum(s => s.Pieces), g.Max(s => s.On)));

    public IEnumerable<T> Each<T>() where T : BookEntry => Whole.Standing<T>();

    public IReadOnlyDictionary<int, int?> Moved(string list) => Records.Books.Corrections.Moved(Corrections.Where(c => c.List == list));

    public IReadOnlyDictionary<int, int> Firsts(string list, IReadOnlyCollection<int> entries) =>
        entries.Distinct().Where(e => First(list, e) != e).ToDictionary(e => e, e => First(list, e));

    public IReadOnlyDictionary<int, decimal> LeftOf(IReadOnlyCollection<int> receipts) =>
        LeftOfAll().Where(l => receipts.Contains(l.Key)).ToDictionary(l => l.Key, l => l.Value);

    public IEnumerable<(string Digest, string Json)> FrozenTexts() =>
        AllBatches.Select(b => (b.FrozenDigest, b.Frozen)).DistinctBy(f => f.FrozenDigest)
            .OrderBy(f => f.FrozenDigest, StringComparer.Ordinal);

    public Batch? LastBatch(string recipe, string? variant) => Batches.LastOrDefault(b => b.Recipe == recipe && b.Variant == variant);

    public ProductHistory HistoryOf(string recipe, string? variant)
    {
        var mine = AllBatches.Where(b => b.Recipe == recipe && b.Variant == variant).Select(b => b.Id).ToHashSet();
        var standing = Batches.Where(b => mine.Contains(b.Id)).ToArray();
        return new ProductHistory(standing.Length, standing.LastOrDefault(),
            Sales.Where(s => mine.Contains(s.BatchId)).Select(s => (DateOnly?)s.On).Min(),
            [.. Complaints.Where(c => c.BatchId is { } id && mine.Contains(id))], AttachmentsOf(AttachedTo.Product(recipe, variant)));
    }

    public IReadOnlyList<Attachment> AttachmentsOf(string about) => [.. Whole.Standing<Attachment>().Where(a => a.About == about)];

    public IReadOnlyList<Attachment> Attachments() => Whole.Standing<Attachment>();

    // Asked for batch after batch, so that going through the whole list each time would grow with the square of the books.
    private ILookup<int, T> ByBatch<T>(IReadOnlyList<T> all, Func<T, int?> batch) =>
        all.Select(e => (Entry: e, Batch: this.BatchNow(batch(e)))).Where(e => e.Batch is not null)
            .ToLookup(e => e.Batch!.Value, e => e.Entry);
}

/// <summary>Books read Whole.</summary>
internal static class BooksReadWhole
{
    public static ReckonedBooks Read(this OpenBooks books) => new(books.ReadWhole());
}
