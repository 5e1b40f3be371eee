using LabelForge.Records.Books;

namespace LabelForge.Years;

/// <summary>What the pieces of lots cost by what was paid for the very bottles that went in, shared out to the cent.</summary>
public sealed class LotCosts
{
    private readonly BooksSnapshot _snapshot;
    private readonly Dictionary<int, Receipt> _receipts;
    private readonly Dictionary<int, decimal> _costs = [];

    /// <summary>The costs of the lots in the books.</summary>
    public LotCosts(BooksSnapshot snapshot) => (_snapshot, _receipts) = (snapshot, snapshot.Receipts.ToDictionary(r => r.Id));

    /// <summary>Materials that went into lots without being kept in stock, so that nothing says what they cost.</summary>
    public IReadOnlyList<string> WithoutAPrice => [.. _snapshot.Weighings.Where(w => w.ReceiptId is null && _snapshot.BatchNow(w.BatchId) is not null).Select(w => w.Material).Distinct().Order(StringComparer.Ordinal)];

    /// <summary>What one gram or piece of a receipt cost.</summary>
    public static decimal Each(Receipt receipt) => receipt.Price / receipt.Amount;

    /// <summary>What went into a lot: materials as weighed, packaging as used up; not rounded.</summary>
    public decimal Of(Batch batch)
    {
        if (_costs.TryGetValue(batch.Id, out var known))
            return known;
        decimal Paid(int? receipt, decimal amount) => receipt is { } id && _snapshot.Current(BookLists.Receipt, id) is { } now ? amount * Each(_receipts[now]) : 0;
        return _costs[batch.Id] = _snapshot.WeighedInto(batch).Sum(w => Paid(w.ReceiptId, w.Grams)) + _snapshot.PackedInto(batch).Sum(u => Paid(u.ReceiptId, u.Used));
    }

    /// <summary>The good pieces that bear a lot's cost; 0 while it is open, or where none came out.</summary>
    public int Bearing(Batch batch) => _snapshot.ClosingOf(batch) is { } closing ? closing.Made - closing.Rejected : 0;

    /// <summary>What so many pieces of a lot cost, counted from its first piece, to the cent: the parts of a lot add up to the whole.</summary>
    /// <param name="batch">The lot.</param>
    /// <param name="from">How many pieces had gone before.</param>
    /// <param name="pieces">How many go now; below zero where they come back.</param>
    public decimal Of(Batch batch, int from, int pieces)
    {
        var good = Bearing(batch);
        decimal UpTo(int n) => good == 0 ? 0 : Math.Round(Of(batch) * n / good, 2, MidpointRounding.AwayFromZero);
        return UpTo(from + pieces) - UpTo(from);
    }
}
