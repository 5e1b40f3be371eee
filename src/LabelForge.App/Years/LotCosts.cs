using LabelForge.Records.Books;

namespace LabelForge.Years;

/// <summary>What the pieces of lots cost by what was paid for the very bottles that went in, shared out to the cent.</summary>
public sealed class LotCosts
{
    private readonly IReadOnlyDictionary<int, int?> _movedReceipts;
    private readonly IReadOnlyDictionary<int, int?> _movedBatches;
    private readonly Dictionary<int, Receipt> _receipts;
    private readonly Dictionary<int, decimal> _costs = [];
    private readonly Dictionary<int, Closing> _closings = [];

    /// <summary>The costs of the lots in the books: each list of what went in is read once.</summary>
    public LotCosts(IBooks books)
    {
        (_movedReceipts, _movedBatches) = (books.Moved(BookLists.Receipt), books.Moved(BookLists.Batch));
        _receipts = books.Each<Receipt>().ToDictionary(r => r.Id);
        var unpriced = new SortedSet<string>(StringComparer.Ordinal);
        foreach (var weighing in books.Each<Weighing>())
        {
            Add(weighing.BatchId, weighing.ReceiptId, weighing.Grams);
            if (weighing.ReceiptId is null && BatchNow(weighing.BatchId) is not null)
                unpriced.Add(weighing.Material);
        }
        foreach (var packing in books.Each<PackingUse>())
            Add(packing.BatchId, packing.ReceiptId, packing.Used);
        foreach (var closing in books.Each<Closing>())
        {
            if (BatchNow(closing.BatchId) is { } batch)
                _closings.TryAdd(batch, closing);
        }
        WithoutAPrice = [.. unpriced];
    }

    /// <summary>Materials that went into lots without being kept in stock, so that nothing says what they cost.</summary>
    public IReadOnlyList<string> WithoutAPrice { get; }

    /// <summary>What came in.</summary>
    public IReadOnlyCollection<Receipt> Receipts => _receipts.Values;

    /// <summary>What one gram or piece of a receipt cost.</summary>
    public static decimal Each(Receipt receipt) => receipt.Price / receipt.Amount;

    /// <summary>What so much out of a bottle cost, by the number that the books gave it when that
    /// was written; 0 where it was struck for good.</summary>
    public decimal Paid(int? receipt, decimal amount) =>
        receipt is { } id && (_movedReceipts.TryGetValue(id, out var now) ? now : id) is { } at ? amount * Each(_receipts[at]) : 0;

    /// <summary>The batch that an entry belongs to, as it stands; null where it was struck.</summary>
    public int? BatchNow(int batch) => _movedBatches.TryGetValue(batch, out var now) ? now : batch;

    /// <summary>What went into a lot: materials as weighed, packaging as used up; not rounded.</summary>
    public decimal Of(Batch batch) => _costs.GetValueOrDefault(batch.Id);

    /// <summary>The closing of a batch, or null while it is open.</summary>
    public Closing? ClosingOf(Batch batch) => _closings.GetValueOrDefault(batch.Id);

    /// <summary>The good pieces that bear a lot's cost; 0 while it is open, or where none came out.</summary>
    public int Bearing(Batch batch) => ClosingOf(batch) is { } closing ? closing.Made - closing.Rejected : 0;

    /// <summary>What so many pieces of a lot cost, counted from its first piece, to the cent: the
    /// parts of a lot add up to the whole.</summary>
    /// <param name="batch">The lot.</param>
    /// <param name="from">How many pieces had gone before.</param>
    /// <param name="pieces">How many go now; below zero where they come back.</param>
    public decimal Of(Batch batch, int from, int pieces)
    {
        var good = Bearing(batch);
        decimal UpTo(int n) => good == 0 ? 0 : Math.Round(Of(batch) * n / good, 2, MidpointRounding.AwayFromZero);
        return UpTo(from + pieces) - UpTo(from);
    }

    private void Add(int batch, int? receipt, decimal amount)
    {
        if (BatchNow(batch) is { } now)
            _costs[now] = _costs.GetValueOrDefault(now) + Paid(receipt, amount);
    }
}
