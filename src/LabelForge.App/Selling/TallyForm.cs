using LabelForge.Records.Books;
using LabelForge.Records.Spreadsheets;

namespace LabelForge.Selling;

/// <summary>A row of the evening's form.</summary>
/// <param name="Product">The product, as a person names it.</param>
/// <param name="Sold">Strokes for pieces sold.</param>
/// <param name="Given">Pieces given away, broken or used as testers.</param>
/// <param name="Brought">Pieces that were brought; null where it was not written down.</param>
public sealed record TallyRow(string Product, int Sold, int Given, int? Brought);

/// <summary>The paper of a market day, as it is booked in the evening.</summary>
/// <param name="Place">Which market day.</param>
/// <param name="Rows">The rows, in the order of the paper.</param>
/// <param name="Float">What lay in the box at the start.</param>
/// <param name="Card">What the card reader took.</param>
/// <param name="Cash">What was counted in the box; null where nobody counted.</param>
public sealed record TallyForm(string Place, ImmutableArray<TallyRow> Rows, decimal Float, decimal Card, decimal? Cash)
{
    private static readonly string[] Known = ["product", "brought", "sold", "given", "price", "name", "money"];

    /// <summary>Reads rows out of a CSV with the columns product and sold, and perhaps given and brought.</summary>
    /// <exception cref="InputException">Something in it cannot be read, with its line.</exception>
    public static ImmutableArray<TallyRow> ReadRows(string path)
    {
        var rows = TextTable.ReadFile(path);
        string[] heading = rows.Count == 0 ? [] : [.. rows[0].Cells.Select(c => c.ToLowerInvariant())];
        if (!heading.Contains("product") || !heading.Contains("sold") || heading.Any(h => !Known.Contains(h)))
            throw new InputException(path, rows.Count == 0 ? 0 : rows[0].Line, "tally.heading");
        return [.. rows.Skip(1).Select(row =>
        {
            string Cell(string column) =>
            Array.IndexOf(heading, column) is var at and >= 0 && at < row.Cells.Count ? SafeCsv.Plain(row.Cells[at]).Trim() : "";
            int? Count(string column) => Cell(column) is not { Length: > 0 } text ? null
                : PlainFigure.Whole(text) is { } n ? n
                : throw new InputException(path, row.Line, "tally.not-a-number-pieces", ("text", text));
            return new TallyRow(Cell("product"), Count("sold") ?? 0, Count("given") ?? 0, Count("brought"));
        }).Where(r => r.Product.Length > 0)];
    }

    /// <summary>What looks like a slip: more gone than brought.</summary>
    public IEnumerable<Problem> Slips() => Rows.Where(r => r.Brought < r.Sold + r.Given)
        .Select(r => new Problem("slip.more-went", ("gone", r.Sold + r.Given), ("product", r.Product), ("brought", r.Brought)));

    /// <summary>Books the day, all of it or nothing.</summary>
    /// <param name="workshop">The workshop, for prices and sales tax.</param>
    /// <param name="by">Who books it.</param>
    /// <returns>The day's sums as they stand now.</returns>
    /// <exception cref="InputException">A product is not known, has no price, or there are not so many pieces in the house.</exception>
    public MarketDay Book(Workshop workshop, OpenBooks book, DateOnly on, string by)
    {
        var products = PriceList.Of(workshop, book);
        Taken[] sold = [.. Rows.Where(r => r.Sold > 0).Select(r => new Taken(r.Product, r.Sold))];
        Taken[] given = [.. Rows.Where(r => r.Given > 0).Select(r => new Taken(r.Product, r.Given))];
        SoldItem[] items =
        [
            .. sold.Length == 0 ? [] : SellAtTable.Bill(workshop, products, sold).Items.Select(i => i.Item),
            .. given.Length == 0 ? [] : SellAtTable.Bill(workshop, products, given, agreed: 0).Items.Select(i => i.Item),
        ];
        var takings = Cash is { } cash ? new Takings { On = on, By = by, Place = Place, Float = Float, Cash = cash, Card = Card } : null;
        TableSales.BookDay(book, items, Place, takings, on, by);
        return book.Ask(books => MarketDay.Of(books, Place, on));
    }
}
