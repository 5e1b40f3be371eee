using LabelForge.Days;
using LabelForge.Records.Books;

namespace LabelForge.Years;

/// <summary>A line of a year's totals.</summary>
/// <param name="By">What it sums up by: month, product, market or year.</param>
/// <param name="Name">Which.</param>
/// <param name="Sold">Pieces sold.</param>
/// <param name="Given">Pieces given away.</param>
/// <param name="Returned">Pieces brought back.</param>
/// <param name="Paid">What came in less what was paid back, sales tax included.</param>
/// <param name="Tax">Of this, the sales tax.</param>
/// <param name="Cost">What the sold and given pieces had cost, less those back on the shelf.</param>
public sealed record YearLine(string By, string Name, int Sold, int Given, int Returned, decimal Paid, decimal Tax, decimal Cost)
{
    /// <summary>What came in without the sales tax.</summary>
    public decimal Net => Paid - Tax;

    /// <summary>What is left of it when the goods are paid for.</summary>
    public decimal Margin => Net - Cost;
}

/// <summary>Something that was lost.</summary>
/// <param name="What">What, and why.</param>
/// <param name="On">The day.</param>
/// <param name="Cost">What it had cost; below zero where a count found more than the books had.</param>
public sealed record Waste(string What, DateOnly On, decimal Cost);

/// <summary>A year in the books, for taxes: what was sold, what the goods had cost first in,
/// first out, what was lost, what is there at its end.</summary>
public sealed record YearBook
{
    /// <summary>The year.</summary>
    public required int Year { get; init; }

    /// <summary>The lines: the year, then by month, product and market.</summary>
    public required ImmutableArray<YearLine> Lines { get; init; }

    /// <summary>What was lost.</summary>
    public required ImmutableArray<Waste> Waste { get; init; }

    /// <summary>What was paid for materials and packaging in the year.</summary>
    public required decimal Bought { get; init; }

    /// <summary>What lay in the house when the year began: materials, batches at the bench, pieces.</summary>
    public required decimal AtStart { get; init; }

    /// <summary>What lies in the house at its end.</summary>
    public required decimal AtEnd { get; init; }

    /// <summary>Materials that nothing says the cost of: they were weighed in and never received.</summary>
    public required ImmutableArray<string> WithoutAPrice { get; init; }

    /// <summary>The whole year.</summary>
    public YearLine Whole => Lines[0];

    /// <summary>What does not add up: start and bought less sold, lost and end. Nothing but what is not yet a whole cent.</summary>
    public decimal OutOfBalance => AtStart + Bought - Whole.Cost - Waste.Sum(w => w.Cost) - AtEnd;

    /// <summary>A year out of the books.</summary>
    /// <param name="books">The books: each of their lists is read once.</param>
    public static YearBook Of(IBooks books, int year)
    {
        var costs = new LotCosts(books);
        var flows = Flows(books, costs).ToArray();
        Flow[] inYear = [.. flows.Where(f => f.On.Year == year)];
        var sales = inYear.Where(f => f.Waste is null).ToArray();
        YearLine Line(string by, string name, IEnumerable<Flow> of)
        {
            var all = of.ToArray();
            return new YearLine(by, name, all.Sum(f => f.Sold), all.Sum(f => f.Given), all.Sum(f => f.Returned), all.Sum(f => f.Paid),
                all.Sum(f => f.Tax), all.Sum(f => f.Cost));
        }
        IEnumerable<YearLine> By(string by, Func<Flow, string> key) =>
        sales.GroupBy(key).OrderBy(g => g.Key, StringComparer.OrdinalIgnoreCase).Select(g => Line(by, g.Key, g));
        return new YearBook
        {
            Year = year,
            Lines =
            [
                Line("year", year.ToString(CultureInfo.InvariantCulture), sales),
                .. By("month", f => f.On.ToString("yyyy-MM", CultureInfo.InvariantCulture)), .. By("product", f => f.Product),
                .. By("market", f => f.Market),
            ],
            Waste = [.. inYear.Where(f => f.Waste is not null).Select(f => new Waste(f.Waste!, f.On, f.Cost)).OrderBy(w => w.On)],
            Bought = costs.Receipts.Where(r => r.On.Year == year).Sum(r => r.Price),
            AtStart = InHouse(costs, flows, new DateOnly(year - 1, 12, 31)),
            AtEnd = InHouse(costs, flows, new DateOnly(year, 12, 31)),
            WithoutAPrice = [.. costs.WithoutAPrice],
        };
    }

    /// <summary>The lines as a table for a spreadsheet.</summary>
    public (IReadOnlyList<string> Heading, IReadOnlyList<IReadOnlyList<object?>> Rows) Table() => (
        ["by", "name", "sold", "given", "returned", "paid", "tax", "net", "cost of goods", "margin"],
        [
            .. Lines.Select(l => (IReadOnlyList<object?>)[l.By, l.Name, l.Sold, l.Given, l.Returned, l.Paid, l.Tax, l.Net, Cents(l.Cost),
                Cents(l.Margin)]),
            .. Waste.Select(w => (IReadOnlyList<object?>)["waste",
                Invariant($"{w.On:yyyy-MM-dd} {w.What}"), null, null, null, null, null, null,
                Cents(w.Cost), null]),
            ["bought", Year, null, null, null, null, null, null, Bought, null],
            ["in the house at the start", Year, null, null, null, null, null, null, Cents(AtStart), null],
            ["in the house at the end", Year, null, null, null, null, null, null, Cents(AtEnd), null],
        ]);

    /// <summary>A sum to the cent.</summary>
    public static decimal Cents(decimal sum) => Math.Round(sum, 2, MidpointRounding.AwayFromZero);

    // Everything that takes value out of the house, or brings it back.
    private sealed record Flow(DateOnly On, string Product, string Market, int Sold, int Given, int Returned, decimal Paid, decimal Tax,
        decimal Cost, string? Waste);

    private static IEnumerable<Flow> Flows(IBooks books, LotCosts costs)
    {
        var events = Events(books, costs);
        foreach (var batch in books.Each<Batch>())
        {
            foreach (var flow in Pieces(costs, batch, events[batch.Id]))
                yield return flow;
            if (costs.ClosingOf(batch) is { } closing && closing.Made == closing.Rejected)
                yield return Lost(closing.On, costs.Of(batch), $"{closing.Made} of {batch.Product}, lot {batch.Lot}: none was good");
        }
        foreach (var thrown in books.Each<Disposal>().Where(d => d.ReceiptId is not null))
            yield return Lost(thrown.On, costs.Paid(thrown.ReceiptId, thrown.Amount),
                $"{books.Bottle(thrown.ReceiptId!.Value)}: {thrown.Reason}");
        foreach (var count in books.Each<StockCount>().Where(c => c.ReceiptId is not null))
            yield return Lost(count.On, costs.Paid(count.ReceiptId, -count.Difference),
                $"{books.Bottle(count.ReceiptId!.Value)}: counted");
    }

    // What moved pieces, by the batch as it stands.
    private static ILookup<int, BookEntry> Events(IBooks books, LotCosts costs)
    {
        IEnumerable<(int? Batch, BookEntry Entry)> all =
        [
            .. books.Each<Sale>().Select(s => (costs.BatchNow(s.BatchId), (BookEntry)s)),
            .. books.Each<PiecesReturned>().Select(r => (costs.BatchNow(r.BatchId), (BookEntry)r)),
            .. books.Each<Disposal>().Where(d => d.BatchId is not null).Select(d => (costs.BatchNow(d.BatchId!.Value), (BookEntry)d)),
            .. books.Each<StockCount>().Where(c => c.BatchId is not null).Select(c => (costs.BatchNow(c.BatchId!.Value), (BookEntry)c)),
        ];
        return all.Where(e => e.Batch is not null).ToLookup(e => e.Batch!.Value, e => e.Entry);
    }

    private static Flow Lost(DateOnly on, decimal cost, string what) => new(on, "", "", 0, 0, 0, 0, 0, cost, what);

    // In the order of the days, so that each piece takes the next cents of its lot.
    private static IEnumerable<Flow> Pieces(LotCosts costs, Batch batch, IEnumerable<BookEntry> events)
    {
        var product = OpenToday.ProductOf(batch);
        var gone = 0;
        decimal Take(int pieces)
        {
            var cost = costs.Of(batch, gone, pieces);
            gone += pieces;
            return cost;
        }
        foreach (var entry in events.OrderBy(e => e.On).ThenBy(e => e is PiecesReturned).ThenBy(e => e.Id))
        {
            yield return entry switch
            {
                Sale s =>
                    new Flow(s.On, product, s.To.Trim(), s.Paid > 0 ? s.Pieces : 0, s.Paid == 0 ? s.Pieces : 0, 0, s.Paid, s.Tax ?? 0,
                        Take(s.Pieces), null),
                PiecesReturned r =>
                    new Flow(r.On, product, r.From.Trim(), 0, 0, r.Returned, -r.PaidBack, -(r.Tax ?? 0), Take(-r.BackOnShelf), null),
                Disposal d => Lost(d.On, Take((int)d.Amount), $"{d.Amount:0} of {batch.Product}, lot {batch.Lot}: {d.Reason}"),
                StockCount c => Lost(c.On, Take(-(int)c.Difference), $"{batch.Product}, lot {batch.Lot}: counted"),
                _ => throw new InvalidOperationException("No such entry of pieces."),
            };
        }
    }

    // All that was bought until then, less all that left until then.
    private static decimal InHouse(LotCosts costs, IEnumerable<Flow> flows, DateOnly day) =>
        costs.Receipts.Where(r => r.On <= day).Sum(r => r.Price) - flows.Where(f => f.On <= day).Sum(f => f.Cost);
}
