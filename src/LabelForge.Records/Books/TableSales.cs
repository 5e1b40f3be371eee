namespace LabelForge.Records.Books;

/// <summary>Pieces of one product that a buyer takes, and what for.</summary>
/// <param name="Recipe">The recipe's id.</param>
/// <param name="Variant">The variant's name; null for a recipe without variants.</param>
/// <param name="Pieces">How many.</param>
/// <param name="Paid">What was paid for all of them, sales tax included; 0 for a gift.</param>
/// <param name="Tax">Of what was paid, the sales tax; null where no rate is set.</param>
public sealed record SoldItem(string Recipe, string? Variant, int Pieces, decimal Paid, decimal? Tax);

/// <summary>Sales over the table: by product, several in one go, out of the oldest lot first.</summary>
public static class TableSales
{
    /// <summary>Writes down what one buyer took, all of it or nothing.</summary>
    /// <param name="items">What was taken.</param>
    /// <param name="to">To whom, or which market day.</param>
    /// <param name="payment">How it was paid; null where nobody said.</param>
    /// <param name="by">Who sold it.</param>
    /// <param name="note">A note, or null.</param>
    /// <returns>The entries: one for each lot that pieces came from.</returns>
    /// <exception cref="InputException">There are not so many pieces of a product in the house.</exception>
    public static IReadOnlyList<Sale> Sell(OpenBooks book, IReadOnlyList<SoldItem> items, string to, string? payment, DateOnly on,
        string by, string? note = null) => book.Write((books, context) =>
        Written(books, context, items, to, payment, on, by, note));

    /// <summary>Books the paper of a whole day, all of it or nothing.</summary>
    /// <param name="items">What was sold and given; empty where only the box is booked.</param>
    /// <param name="place">Which market day.</param>
    /// <param name="takings">What the box held; null where nobody counted.</param>
    /// <param name="by">Who books it.</param>
    public static IReadOnlyList<Sale> BookDay(OpenBooks book, IReadOnlyList<SoldItem> items, string place, Takings? takings, DateOnly on,
        string by) => book.Write((books, context) =>
    {
        if (takings is not null)
            context.Takings.Add(takings);
        return Written(books, context, items, place, null, on, by, null);
    });

    private static IReadOnlyList<Sale> Written(IBooks books, RecordsContext context, IReadOnlyList<SoldItem> items, string to,
        string? payment, DateOnly on, string by, string? note)
    {
        var ticket = NextTicket(books, on);
        var taken = new Dictionary<int, int>();
        var sales = items.SelectMany(item => Split(books, item, on, taken)).Select(part => new Sale
        {
            On = on,
            By = by,
            BatchId = part.Batch.Id,
            Pieces = part.Pieces,
            To = to,
            Paid = part.Paid,
            Tax = part.Tax,
            Payment = payment,
            Ticket = ticket,
            Note = note,
        }).ToArray();
        context.Sales.AddRange(sales);
        return sales;
    }

    /// <summary>Takes back what was written down as one go.</summary>
    /// <param name="ticket">The ticket that its entries bear.</param>
    /// <param name="reason">Why.</param>
    /// <param name="by">Who takes it back.</param>
    /// <returns>The entries that were struck.</returns>
    /// <exception cref="InputException">No sale bears that ticket.</exception>
    public static IReadOnlyList<Sale> Undo(OpenBooks book, string ticket, string reason, DateOnly on, string by) =>
        book.Write((books, context) =>
        {
            var sales = books.SalesOfTicket(ticket);
            if (sales.Count == 0)
                throw new InputException("ticket.unknown", ("ticket", ticket));
            context.Corrections
                .AddRange(sales.Select(s => new Correction { On = on, By = by, List = BookLists.Sale, EntryId = s.Id, Reason = reason }));
            return sales;
        });

    /// <summary>Pieces of a product in the house, over all its lots.</summary>
    public static int Left(IBooks books, string recipe, string? variant) => books.LotsInStock(recipe, variant).Sum(l => l.Left);

    /// <summary>Writes down pieces that were brought back.</summary>
    /// <exception cref="InputException">More would come back than left the house.</exception>
    public static PiecesReturned TakeBack(OpenBooks book, string lot, Func<Batch, PiecesReturned> returned) =>
        book.Write((books, context) =>
        {
            var entry = returned(books.BatchOf(lot));
            context.Returns.Add(entry);
            return entry;
        });

    // A sum over several lots is shared out by pieces, to the cent, so that the parts are the whole again.
    private static IEnumerable<(Batch Batch, int Pieces, decimal Paid, decimal? Tax)> Split(IBooks books, SoldItem item, DateOnly on,
        Dictionary<int, int> taken)
    {
        var (open, paid, tax) = (item.Pieces, item.Paid, item.Tax);
        foreach (var (batch, left) in books.LotsInStock(item.Recipe, item.Variant))
        {
            var now = Math.Min(open, left - taken.GetValueOrDefault(batch.Id));
            if (now <= 0)
                continue;
            taken[batch.Id] = taken.GetValueOrDefault(batch.Id) + now;
            var part = now == open ? paid : Math.Round(paid * now / open, 2);
            var partTax = now == open ? tax : tax is { } t ? Math.Min(part, Math.Round(t * now / open, 2)) : null;
            yield return (batch, now, part, partTax);
            (open, paid, tax) = (open - now, paid - part, tax - partTax);
            if (open == 0)
                yield break;
        }
        var name = item.Variant is { } v ? $"{item.Recipe}/{v}" : item.Recipe;
        throw new InputException("pieces.short", ("pieces", item.Pieces - open), ("name", name), ("pieces-2", item.Pieces),
            ("who", LastSold(books, item, on) is { } last ? PostingRules.Who(last) : ""));
    }

    // Who sells beside others wants to know who was quicker.
    private static Sale? LastSold(IBooks books, SoldItem item, DateOnly on) => books.SalesOn(on)
        .LastOrDefault(s => books.BatchNow(s.BatchId) is { } id
            && books.Find(BookLists.Batch, id) is Batch batch
            && batch.Recipe == item.Recipe && string.Equals(batch.Variant, item.Variant, StringComparison.OrdinalIgnoreCase));

    private static string NextTicket(IBooks books, DateOnly on)
    {
        var day = Invariant($"{on:yyyyMMdd}-");
        var last = books.TicketsOn(on).Where(t => t.StartsWith(day, StringComparison.Ordinal))
            .Select(t => int.TryParse(t.AsSpan(day.Length), System.Globalization.CultureInfo.InvariantCulture, out var n) ? n : 0)
            .DefaultIfEmpty().Max();
        return Invariant($"{day}{last + 1:000}");
    }
}
