using LabelForge.Papers;
using LabelForge.Records.Books;

namespace LabelForge.Selling;

/// <summary>A product on a market day.</summary>
/// <param name="Product">As it is named where a recipe is asked for.</param>
/// <param name="Name">Its name.</param>
/// <param name="Sold">Pieces sold.</param>
/// <param name="Given">Pieces given away.</param>
/// <param name="Returned">Pieces brought back.</param>
/// <param name="Paid">What came in for them less what was paid back, sales tax included.</param>
/// <param name="Tax">Of this, the sales tax.</param>
/// <param name="Left">Pieces in the house at the end.</param>
public sealed record MarketRow(string Product, string Name, int Sold, int Given, int Returned, decimal Paid, decimal Tax, int Left);

/// <summary>A day's table: what went, for what, and whether the box agrees.</summary>
public sealed record MarketDay
{
    /// <summary>Which market day, as its sales name it.</summary>
    public required string Place { get; init; }

    /// <summary>The day.</summary>
    public required DateOnly On { get; init; }

    /// <summary>The products, in the order of their names.</summary>
    public required ImmutableArray<MarketRow> Rows { get; init; }

    /// <summary>What came in by each kind of payment that was told, less what was paid back so; <c>""</c> for what nobody told.</summary>
    public required ImmutableSortedDictionary<string, decimal> ByPayment { get; init; }

    /// <summary>What was counted; null where nobody has counted yet.</summary>
    public Takings? Takings { get; init; }

    /// <summary>How many buyers' goes there were, where they were told apart.</summary>
    public int Tickets { get; init; }

    /// <summary>What came in, sales tax included.</summary>
    public decimal Paid => Rows.Sum(r => r.Paid);

    /// <summary>Of this, the sales tax.</summary>
    public decimal Tax => Rows.Sum(r => r.Tax);

    /// <summary>What went past the box: what the card reader says where it was told, else what
    /// the sales say was not paid in cash.</summary>
    public decimal NotCash => Takings?.Card ?? ByPayment.Where(p => p.Key is not ("" or "cash")).Sum(p => p.Value);

    /// <summary>What the box should hold; null where nobody has told what lay in it at the start.</summary>
    public decimal? Expected => Takings is { } t ? t.Float + Paid - NotCash : null;

    /// <summary>What the box holds beyond that; below zero where it is short; null where nobody has counted.</summary>
    public decimal? Difference => Takings?.Cash - Expected;

    /// <summary>What the sales say was paid by card and the card reader does not, or the other
    /// way round; null where the sales do not all tell.</summary>
    public decimal? CardDifference =>
        Takings is { } t && !ByPayment.ContainsKey("") && ByPayment.ContainsKey("card") ? t.Card - ByPayment["card"] : null;

    /// <summary>The products of which one piece is worth just the difference: a stroke too many, or one too few.</summary>
    public IEnumerable<string> WorthTheDifference(IEnumerable<ProductOnTable> products) => Difference is { } d && d != 0
        ? products.Where(p => p.Price == Math.Abs(d) && Rows.Any(r => r.Product == p.Product)).Select(p => p.Recipe.Name) : [];

    /// <summary>A day's sums out of the books.</summary>
    /// <param name="books">The books; of them the day alone is asked for.</param>
    /// <param name="place">Which market day.</param>
    public static MarketDay Of(IBooks books, string place, DateOnly on)
    {
        bool Here(string text) => string.Equals(text.Trim(), place.Trim(), StringComparison.OrdinalIgnoreCase);
        Sale[] sales = [.. books.SalesOn(on).Where(s => Here(s.To))];
        PiecesReturned[] returns = [.. books.ReturnsOn(on).Where(r => Here(r.From) || Here(r.Note ?? ""))];
        var batches = sales.Select(s => s.BatchId).Concat(returns.Select(r => r.BatchId)).Distinct()
            .ToDictionary(id => id, id => books.BatchNow(id) is { } now ? books.Find(BookLists.Batch, now) as Batch : null);
        string Product(int batch) => batches[batch] is { } now ? NameOf(now) : "";
        var made = books.ProductsMade().ToDictionary(p => p.Variant is null ? p.Recipe : $"{p.Recipe}/{p.Variant}");
        var rows = sales.Select(s => Product(s.BatchId)).Concat(returns.Select(r => Product(r.BatchId))).Distinct()
            .Select(p => (Product: p, Sales: sales.Where(s => Product(s.BatchId) == p).ToArray(),
                Returns: returns.Where(r => Product(r.BatchId) == p).ToArray()));
        return new MarketDay
        {
            Place = place.Trim(),
            On = on,
            Rows =
            [
                .. rows.Select(r => new MarketRow(r.Product, made.GetValueOrDefault(r.Product)?.Product ?? r.Product,
                    r.Sales.Where(s => s.Paid > 0).Sum(s => s.Pieces), r.Sales.Where(s => s.Paid == 0).Sum(s => s.Pieces),
                    r.Returns.Sum(x => x.Returned), r.Sales.Sum(s => s.Paid) - r.Returns.Sum(x => x.PaidBack),
                    r.Sales.Sum(s => s.Tax ?? 0) - r.Returns.Sum(x => x.Tax ?? 0), made.GetValueOrDefault(r.Product)?.Left ?? 0))
                    .OrderBy(r => r.Name, StringComparer.OrdinalIgnoreCase),
            ],
            ByPayment = sales.Where(s => s.Paid > 0).Select(s => (Payment: s.Payment ?? "", Sum: s.Paid))
                .Concat(returns.Where(r => r.PaidBack > 0).Select(r => (Payment: r.Payment ?? "", Sum: -r.PaidBack)))
                .GroupBy(p => p.Payment).ToImmutableSortedDictionary(g => g.Key, g => g.Sum(p => p.Sum), StringComparer.Ordinal),
            Takings = books.TakingsOn(on).LastOrDefault(t => Here(t.Place)),
            Tickets = sales.Where(s => s.Payment is not null).Select(s => s.Ticket).Distinct().Count(),
        };
    }

    /// <summary>The day's sums as a table for a spreadsheet.</summary>
    public (IReadOnlyList<string> Heading, IReadOnlyList<IReadOnlyList<object?>> Rows) Table() => (
        ["on", "place", "product", "name", "sold", "given", "returned", "paid", "tax", "left"],
        [.. Rows.Select(r => (IReadOnlyList<object?>)[On, Place, r.Product, r.Name, r.Sold, r.Given, r.Returned, r.Paid, r.Tax, r.Left])]);

    /// <summary>The sums of the box in words and money, one row each.</summary>
    public IEnumerable<(string What, decimal Sum)> Box(PaperWords words)
    {
        yield return (words["day-sold"], Paid);
        if (Tax != 0)
            yield return (words["day-tax"], Tax);
        foreach (var (payment, sum) in ByPayment.Where(p => p.Key.Length > 0))
            yield return (payment switch
            {
                "cash" => words["day-paid-cash"],
                "card" => words["day-paid-card"],
                "other" => words["day-paid-other"],
                _ => words["day-paid-by", payment],
            }, sum);
        if (Takings is not { } t)
            yield break;
        yield return (words["box-start"], t.Float);
        yield return (words["day-card"], t.Card);
        yield return (words["day-cash"], Paid - NotCash);
        yield return (words["day-should"], Expected!.Value);
        yield return (words["day-counted"], t.Cash);
        yield return (words[Difference < 0 ? "day-short" : "day-over"], Math.Abs(Difference!.Value));
    }

    private static string NameOf(Batch batch) => Days.OpenToday.ProductOf(batch);
}
