using LabelForge.Cli.Handover;
using LabelForge.Lots;
using LabelForge.Records.Books;

namespace LabelForge.Cli.Verbs;

/// <summary><c>count</c> and <c>return</c>: what is really on the shelf, and what came back to it.</summary>
internal static class ShelfVerbs
{
    public static Command Count()
    {
        var verb = new Verb("count",
            "Counts the shelf: what differs from the books is booked as a difference, and the count holds from then on");
        var counted = verb.Argument<string[]>("LOT=THERE",
            "What is there: 26R25-01E=7, or a bottle: \"M3=412 g\", M7=60", ArgumentArity.OneOrMore);
        var options = new BookOptions().AddTo(verb);
        return verb.OpensBooks(r =>
        {
            var workshop = options.Workshop(r);
            var book = BookOptions.Book(workshop);
            var there = book.Ask(books => r.GetValue(counted)!.Select(t => Read(t, workshop, books)).ToArray());
            var counts = ShelfCount.Take(book, there, options.On(r), options.By(r), options.Note(r));
            var names = book.Ask(books => counts.ToDictionary(c => c.Id,
                c => c.ReceiptId is { } id
                    ? $"{books.Bottle(id)} {books.FindReceipt(id)?.Material}"
                    : $"lot {(books.Find(BookLists.Batch, c.BatchId!.Value) as Batch)?.Lot}"));
            string What(StockCount c) => names[c.Id];
            if (options.Json(r))
                JsonOut.Write(new JsonObject
                {
                    ["counted"] = r.GetValue(counted)!.Length,
                    ["differences"] = counts.ToJson(c => new JsonObject
                    {
                        ["count"] = c.Id,
                        ["what"] = What(c),
                        ["there"] = c.Counted,
                        ["difference"] = c.Difference
                    })
                });
            else if (counts.Count == 0)
                Console.WriteLine("The books agree: nothing to write.");
            foreach (var count in options.Json(r) ? [] : counts)
                Console.WriteLine(Invariant($"Count {count.Id}: {What(count)} has {count.Counted:0.###}, {Math.Abs(count.Difference):0.###} {(count.Difference < 0 ? "less" : "more")} than the books had."));
            return Exit.Done;
        });
    }

    public static Command Return()
    {
        var verb = new Verb("return", "Writes pieces that were brought back into the books, and the money that went back");
        var lot = verb.Argument<string>("LOT", "The lot on the piece, or the code on it as it was scanned");
        var pieces = verb.Argument<int>("PIECES", "How many came back");
        var back = verb.Option<int>("--back", "Of these, how many can be sold again and are on the shelf");
        var from = verb.Option<string>("--from", "Who brought them; at a market, which market day", required: true);
        var paidBack = verb.Option<string>("--paid-back", "What was paid back for all of them", required: true);
        var payment = verb.Option<string?>("--payment", "How it was paid back: cash, card");
        var reason = verb.Option<string>("--reason", "Why they came back", required: true);
        var options = new BookOptions().AddTo(verb);
        return verb.OpensBooks(r =>
        {
            var workshop = options.Workshop(r);
            var book = BookOptions.Book(workshop);
            var sum = BookOptions.Money(r.GetValue(paidBack)!, "--paid-back");
            var code = Shared.Need(PieceCode.LotOf(r.GetValue(lot)!)).ToString();
            var entry = TableSales.TakeBack(book, code, batch => new PiecesReturned
            {
                On = options.On(r),
                By = options.By(r),
                Note = options.Note(r),
                BatchId = batch.Id,
                Returned = r.GetValue(pieces),
                BackOnShelf = r.GetValue(back),
                From = r.GetValue(from)!,
                PaidBack = sum,
                Tax = workshop.Business.SalesTax is { } tax && sum > 0 ? tax.In(sum) : null,
                Payment = r.GetValue(payment),
                Reason = r.GetValue(reason)!,
            });
            var left = book.Ask(books => books.PiecesLeft(books.BatchOf(code)));
            return options.Told(r, new JsonObject
            {
                ["return"] = entry.Id,
                ["lot"] = code,
                ["returned"] = entry.Returned,
                ["backOnShelf"] = entry.BackOnShelf,
                ["paidBack"] = entry.PaidBack,
                ["left"] = left
            }, Invariant($"Return {entry.Id}: {entry.Returned} of lot {code}, {entry.BackOnShelf} back on the shelf, {entry.PaidBack:0.00} paid back; {left} left. Was it more than a change of mind? labelforge complaint --lot {code} ..."));
        });
    }

    private static (string, decimal) Read(string text, Workshop workshop, IBooks books)
    {
        var at = text.LastIndexOf('=');
        var (what, there) = at > 0 ? (text[..at].Trim(), text[(at + 1)..].Trim()) : throw Unreadable(text);
        if (PlainFigure.Read(there) is { } plain)
            return (what, plain);
        if (what.Length < 2 || what[0] is not ('M' or 'm'))
            throw Unreadable(text);
        var receipt = books.ReceiptOf(BookOptions.MaterialLot(what));
        return (what, Shared.Need(MaterialAmount.Read(workshop.Material(receipt.Material, "the books", 0), there, workshop.Dictionary)));
    }

    private static InputException Unreadable(string text) => new(null, 0, "call.how-much-of-what", ("text", text));
}
