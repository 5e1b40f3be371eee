namespace LabelForge.Records.Books;

/// <summary>An inventory count: what is there, held against the books, and the difference booked as what it is.</summary>
public static class ShelfCount
{
    /// <summary>Writes down what was counted, all of it or nothing; what agrees with the books needs no entry.</summary>
    /// <param name="counted">For a lot, or for a bottle (M and its number), what is there.</param>
    /// <param name="by">Who counted.</param>
    /// <param name="note">Why it differs, where it is known; or null.</param>
    /// <returns>The entries: one for each difference.</returns>
    /// <exception cref="InputException">A lot or a bottle is not in the books, or a lot is still at the bench.</exception>
    public static IReadOnlyList<StockCount> Take(OpenBooks book, IReadOnlyList<(string LotOrBottle, decimal There)> counted, DateOnly on,
        string by, string? note = null) => book.Write((books, context) =>
    {
        var counts = counted.Select(c => Of(books, c.LotOrBottle, c.There, on, by, note)).Where(c => c.Difference != 0).ToArray();
        context.StockCounts.AddRange(counts);
        return (IReadOnlyList<StockCount>)counts;
    });

    private static StockCount Of(IBooks books, string what, decimal there, DateOnly on, string by, string? note)
    {
        if (what.Length > 1
            && what[0] is 'M' or 'm'
            && int.TryParse(what.AsSpan(1), System.Globalization.CultureInfo.InvariantCulture, out var bottle))
        {
            var receipt = books.ReceiptOf(bottle);
            return new StockCount
            {
                On = on,
                By = by,
                Note = note,
                ReceiptId = receipt.Id,
                Counted = there,
                Difference = there - books.Left(receipt),
            };
        }
        var code = Lots.LotCode.Parse(what) is { IsValue: true } read ? read.Value.ToString() : what;
        var batch = books.BatchOf(code);
        return books.ClosingOf(batch) is null
            ? throw new InputException("lot.not-closed-no-count", ("code", code))
            : new StockCount
            {
                On = on,
                By = by,
                Note = note,
                BatchId = batch.Id,
                Counted = there,
                Difference = there - books.PiecesLeft(batch),
            };
    }
}
