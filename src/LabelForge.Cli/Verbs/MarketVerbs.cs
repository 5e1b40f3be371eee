using LabelForge.Cli.Handover;
using LabelForge.Files;
using LabelForge.Papers;
using LabelForge.Print.Output;
using LabelForge.Records.Books;
using LabelForge.Records.Spreadsheets;
using LabelForge.Selling;

namespace LabelForge.Cli.Verbs;

/// <summary><c>market</c>: a day at the table, with a computer or with paper.</summary>
internal static class MarketVerbs
{
    private const string UsualPlace = "Market";

    public static Command Build() => new("market", "A day at the table: the tally sheet, sales in one go, the evening's form, the sums")
    {
        Sheet(), Sell(), Undo(), Book(), Day(),
    };

    private static Option<string> Place(Verb verb) => verb.Option<string>("--to", "Which market day: \"Fairport market\"", UsualPlace);

    private static Command Sheet()
    {
        var verb = new Verb("sheet", "The tally sheet to take along: products, prices, boxes to tick, float and takings");
        var place = Place(verb);
        var bring = verb.Argument<string[]>("PRODUCT=PIECES",
            "What is brought, in the order of the paper (default: every product in the house, all of it)", ArgumentArity.ZeroOrMore);
        var output = new OutputOption("The PDF to write", FileKind.Pdf).AddTo(verb);
        var options = new BookOptions().AddReadingTo(verb, dated: true);
        return verb.OpensBooks(r =>
        {
            var path = output.Path(r);
            var workshop = options.Workshop(r);
            var products = PriceList.Of(workshop, BookOptions.Book(workshop));
            (ProductOnTable Product, int Brought)[] rows = r.GetValue(bring) is { Length: > 0 } named
                ? [.. named.Select(Parse).Select(t => (PriceList.Find(products, t.Product), t.Pieces))]
                : [.. products.Where(p => p.Left > 0).Select(p => (p, p.Left))];
            if (rows.Length == 0)
                throw new InputException("call.nothing-to-bring");
            foreach (var none in rows.Where(p => p.Product.Price is null))
                Console.Error
                    .WriteLine(
                        $"Note: {none.Product.Recipe.Name} has no price; write it in {none.Product.Recipe.File} (price: 7.00), or "
                            + $"on the paper.");
            AtomicFile.Write(path,
                stream => MarketPapers.WriteTally(stream, workshop, r.GetValue(place)!, options.On(r), rows, PaperWords.English));
            return options.Told(r, new JsonObject
            {
                ["file"] = path,
                ["place"] = r.GetValue(place),
                ["products"] = rows.ToJson(p => new JsonObject
                {
                    ["product"] = p.Product.Product,
                    ["brought"] = p.Brought,
                    ["price"] = p.Product.Price,
                })
            }, $"{path}: {rows.Length} products, {rows.Sum(p => p.Brought)} pieces. Book it in the evening: labelforge market "
                    + $"book --to \"{r.GetValue(place)}\" PRODUCT=SOLD ...");
        });
    }

    private static Command Sell()
    {
        var verb = new Verb("sell", "Sells several products in one go, out of the oldest lots, at the prices in the recipes");
        var place = Place(verb);
        var items = verb.Argument<string[]>("PRODUCT=PIECES",
            "What one buyer takes: \"Moss Lane=2\" bramble-bar=1", ArgumentArity.OneOrMore);
        var payment = verb.Option<string?>("--payment", "How it is paid: cash, card, or in your own words");
        var paid = verb.Option<string?>("--paid", "What was agreed on for all of it (default: the prices in the recipes); 0 for a gift");
        var options = new BookOptions().AddTo(verb);
        return verb.OpensBooks(r =>
        {
            var workshop = options.Workshop(r);
            var book = BookOptions.Book(workshop);
            var bill = SellAtTable.Bill(workshop, PriceList.Of(workshop, book), [.. r.GetValue(items)!.Select(Parse)],
                r.GetValue(paid) is { } sum ? BookOptions.Money(sum, "--paid") : null);
            var sales = SellAtTable.Sell(book, bill, r.GetValue(place)!, r.GetValue(payment), options.On(r), options.By(r),
                options.Note(r));
            if (options.Json(r))
            {
                var lots = book.Ask(books => sales.Select(s => s.BatchId).Distinct()
                    .ToDictionary(id => id, id => ((Batch)books.Find(BookLists.Batch, id)!).Lot));
                JsonOut.Write(new JsonObject
                {
                    ["ticket"] = sales[0].Ticket,
                    ["paid"] = bill.Paid,
                    ["tax"] = bill.Tax,
                    ["payment"] = r.GetValue(payment),
                    ["sales"] = sales.ToJson(s => new JsonObject
                    {
                        ["sale"] = s.Id,
                        ["lot"] = lots[s.BatchId],
                        ["pieces"] = s.Pieces,
                        ["paid"] = s.Paid,
                        ["tax"] = s.Tax
                    })
                });
                return Exit.Done;
            }
            Console.WriteLine($"Ticket {sales[0].Ticket}: {string.Join(", ", bill.Items.Select(i => $"{i.Item.Pieces} {i.Product.Recipe.Name}"))}; {MarketPapers.Money(workshop, bill.Paid)}{(bill.Tax is { } tax ? $", of this {MarketPapers.Money(workshop, tax)} sales tax" : "")}{(r.GetValue(payment) is { } how ? $", {how}" : "")}.");
            return Exit.Done;
        });
    }

    private static Command Undo()
    {
        var verb = new Verb("undo", "Takes the last sale over the table back, or that of a ticket");
        var ticket = verb.Argument<string?>("TICKET", "The ticket (default: the last one)", ArgumentArity.ZeroOrOne);
        var reason = verb.Option<string>("--reason", "Why", "undone at the table");
        var options = new BookOptions().AddFileTo(verb);
        return verb.OpensBooks(r =>
        {
            var book = BookOptions.Book(options.Workshop(r));
            var which = r.GetValue(ticket) ?? book.Ask(books => books.LastTicket())
                ?? throw new InputException("call.nothing-sold-yet");
            var struck = TableSales.Undo(book, which, r.GetValue(reason)!, options.On(r), options.By(r));
            return options.Told(r, new JsonObject { ["ticket"] = which, ["struck"] = struck.ToJson(s => s.Id) },
                Invariant($"Ticket {which} is struck: {struck.Sum(s => s.Pieces)} pieces are back, {struck.Sum(s => s.Paid):0.00} is not taken."));
        });
    }

    private static Command Book()
    {
        var verb = new Verb("book", "Books the paper of a day in the evening, row by row, and holds the takings against it");
        var items = verb.Argument<string[]>("PRODUCT=SOLD",
            "The strokes on the paper, row by row: bramble-bar=6 \"Moss Lane=2\"", ArgumentArity.ZeroOrMore);
        var tally = verb.Option<string?>("--tally", "The same as a CSV: product,sold, and if you like given and brought");
        var given = verb.Option<string[]>("--given", "Given away, broken or a tester: --given bramble-bar=1; once for each");
        var atStart = verb.Option<string?>("--float", "What lay in the box at the start");
        var card = verb.Option<string?>("--card", "What the card reader took");
        var cash = verb.Option<string?>("--cash", "What was counted in the box at the end");
        var place = Place(verb);
        var options = new BookOptions().AddFileTo(verb).AddSureTo(verb);
        return verb.OpensBooks(r =>
        {
            var workshop = options.Workshop(r);
            var rows = r.GetValue(tally) is { } path ? TallyForm.ReadRows(path) : [];
            rows = [.. rows, .. r.GetValue(items)!.Select(Parse).Select(t => new TallyRow(t.Product, t.Pieces, 0, null)),
                .. (r.GetValue(given) ?? []).Select(Parse).Select(t => new TallyRow(t.Product, 0, t.Pieces, null))];
            if (rows.IsEmpty)
                throw new InputException("call.tally-empty");
            decimal Sum(Option<string?> option) => r.GetValue(option) is { } text ? BookOptions.Money(text, option.Name) : 0;
            var form = new TallyForm(r.GetValue(place)!, rows, Sum(atStart), Sum(card),
                r.GetValue(cash) is { } counted ? BookOptions.Money(counted, "--cash") : null);
            options.Ask(r, [.. form.Slips()]);
            var book = BookOptions.Book(workshop);
            var day = form.Book(workshop, book, options.On(r), options.By(r));
            return Told(r, options, workshop, day, PriceList.Of(workshop, book));
        });
    }

    private static Command Day()
    {
        var verb = new Verb("day", "The sums of a market day by product and payment, and the box against them");
        var place = Place(verb);
        var atStart = verb.Option<string?>("--float", "What lay in the box at the start");
        var card = verb.Option<string?>("--card", "What the card reader took");
        var cash = verb.Option<string?>("--cash", "What was counted in the box at the end: the box is booked");
        var output = OutputOption.Optional("The summary to keep: .pdf or .csv", FileKind.Pdf, FileKind.Csv).AddTo(verb);
        var options = new BookOptions().AddFileTo(verb);
        return verb.OpensBooks(r =>
        {
            var path = output.PathOrNone(r);
            var workshop = options.Workshop(r);
            var book = BookOptions.Book(workshop);
            decimal Sum(Option<string?> option) => r.GetValue(option) is { } text ? BookOptions.Money(text, option.Name) : 0;
            if (r.GetValue(cash) is { } counted)
                TableSales.BookDay(book, [], r.GetValue(place)!,
                    new Takings
                    {
                        On = options.On(r),
                        By = options.By(r),
                        Place = r.GetValue(place)!,
                        Float = Sum(atStart),
                        Card = Sum(card),
                        Cash = BookOptions.Money(counted, "--cash"),
                    }, options.On(r), options.By(r));
            var day = book.Ask(books => MarketDay.Of(books, r.GetValue(place)!, options.On(r)));
            if (day.Rows.IsEmpty)
                throw new InputException("call.nothing-booked", ("place", day.Place), ("iso", day.On.ToIso()),
                    ("list", string.Join("; ", book.Ask(books => books.LastBuyers(5)))));
            if (path is not null)
                Save(path, workshop, day);
            return Told(r, options, workshop, day, PriceList.Of(workshop, book));
        });
    }

    private static void Save(string path, Workshop workshop, MarketDay day)
    {
        if (Path.GetExtension(path).Equals(".csv", StringComparison.OrdinalIgnoreCase))
        {
            var (heading, rows) = day.Table();
            AtomicFile.Write(path, s => s.Write(SafeCsv.File(heading, rows)));
            return;
        }
        AtomicFile.Write(path, stream => MarketPapers.WriteSummary(stream, workshop, day, PaperWords.English));
    }

    private static int Told(ParseResult r, BookOptions options, Workshop workshop, MarketDay day, IReadOnlyList<ProductOnTable> products)
    {
        if (options.Json(r))
        {
            JsonOut.Write(new JsonObject
            {
                ["place"] = day.Place,
                ["on"] = day.On.ToJson(),
                ["paid"] = day.Paid,
                ["tax"] = day.Tax,
                ["tickets"] = day.Tickets,
                ["byPayment"] = new JsonObject(day.ByPayment.Select(p => KeyValuePair.Create(p.Key, (JsonNode?)p.Value))),
                ["expected"] = day.Expected,
                ["counted"] = day.Takings?.Cash,
                ["difference"] = day.Difference,
                ["cardDifference"] = day.CardDifference,
                ["products"] = day.Rows
                    .ToJson(m => new JsonObject
                    {
                        ["product"] = m.Product,
                        ["name"] = m.Name,
                        ["sold"] = m.Sold,
                        ["given"] = m.Given,
                        ["returned"] = m.Returned,
                        ["paid"] = m.Paid,
                        ["tax"] = m.Tax,
                        ["left"] = m.Left
                    }),
            });
            return Exit.Done;
        }
        foreach (var row in day.Rows)
            Console.WriteLine(Invariant($"  {row.Name,-24} {row.Sold,4} sold{(row.Given > 0 ? $", {row.Given} given" : "")}{(row.Returned > 0 ? $", {row.Returned} brought back" : "")}  {row.Paid,9:0.00}   {row.Left} left"));
        foreach (var (what, sum) in day.Box(PaperWords.English))
            Console.WriteLine($"{what}: {MarketPapers.Money(workshop, sum)}");
        if (day.WorthTheDifference(products).ToArray() is { Length: > 0 } worth)
            Console.WriteLine($"That is just one piece of {(worth.Length > 3 ? $"{worth.Length} products" : string.Join(" or ", worth))}: a stroke too {(day.Difference < 0 ? "many, or one given away" : "few")}?");
        if (day.CardDifference is { } off && off != 0)
            Console.WriteLine($"The card reader says {MarketPapers.Money(workshop, Math.Abs(off))} {(off > 0 ? "more" : "less")} than the sales.");
        return Exit.Done;
    }

    private static Taken Parse(string text)
    {
        var at = text.LastIndexOf('=');
        return at > 0
            && PlainFigure.Whole(text[(at + 1)..].Trim()) is >= 0 and <= 100_000 and var pieces
            ? new Taken(text[..at].Trim(), pieces)
            : throw new InputException("call.does-not-say-how", ("text", text));
    }
}
