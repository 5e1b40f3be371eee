using LabelForge.Cli.Handover;
using LabelForge.Records.Books;

namespace LabelForge.Cli.Verbs;

/// <summary><c>sell</c>, <c>complaint</c>, <c>dispose</c>, <c>correct</c>: what happens to pieces and entries later.</summary>
internal static class OutgoingVerbs
{
    public static Command Sell()
    {
        var verb = new Verb("sell", "Writes pieces sold or given into the books");
        var lot = BatchBenchVerbs.LotArgument(verb);
        var pieces = verb.Argument<int>("PIECES", "How many");
        var to = verb.Option<string>("--to", "To whom, or which market day", required: true);
        var paid = verb.Option<string?>("--paid", "What was paid for all of them");
        var gift = verb.Option<bool>("--gift", "They were given away");
        var options = new BookOptions().AddAskingTo(verb);
        return verb.OpensBooks(r =>
        {
            if (r.GetValue(gift) == (r.GetValue(paid) is not null))
                throw new InputException("call.sold-or-given");
            var book = BookOptions.Book(options.Workshop(r));
            var code = BookOptions.Lot(r.GetValue(lot)!);
            options.Ask(r, book.Ask(books => Slips.OfPiecesOut(books, code, options.On(r), BookOptions.Today)));
            var sale = StockMovements.Sell(book, code, r.GetValue(pieces), r.GetValue(to)!,
                r.GetValue(paid) is { } p ? BookOptions.Money(p, "--paid") : 0, options.On(r), options.By(r), options.Note(r));
            var left = book.Ask(books => books.PiecesLeft(books.BatchOf(code)));
            return options.Told(r, new JsonObject
            {
                ["sale"] = sale.Id,
                ["lot"] = code,
                ["pieces"] = sale.Pieces,
                ["paid"] = sale.Paid,
                ["left"] = left,
            }, Invariant($"Sale {sale.Id}: {sale.Pieces} of lot {code} to {sale.To}; {left} left."));
        });
    }

    public static Command Complaint()
    {
        var verb = new Verb("complaint", "Writes a complaint or a bad reaction into the books, with its dates");
        var from = verb.Option<string>("--from", "Who told of it", required: true);
        var what = verb.Option<string>("--what", "What they told", required: true);
        var lot = verb.Option<string?>("--lot", "The lot, where it is known; or the code on the piece, as it was scanned");
        var serious = verb.Option<bool>("--serious",
            "Death, a threat to life, hospital, lasting harm, an infection, or serious disfigurement (FD&C Act, section 604(5))");
        var small = verb.Option<bool>("--small-business", "The business is small in the sense of FD&C Act, section 612");
        var options = new BookOptions().AddTo(verb);
        return verb.OpensBooks(r =>
        {
            var workshop = options.Workshop(r);
            var entry = StockMovements.Complain(BookOptions.Book(workshop), workshop.Markets,
                r.GetValue(lot) is { } l ? Shared.Need(Lots.PieceCode.LotOf(l)).ToString() : null,
                r.GetValue(from)!, r.GetValue(what)!, r.GetValue(serious), r.GetValue(small), options.On(r), options.By(r),
                options.Note(r));
            if (options.Json(r))
            {
                JsonOut.Write(new JsonObject
                {
                    ["complaint"] = entry.Id,
                    ["serious"] = entry.Serious,
                    ["reportBy"] = entry.ReportBy?.ToJson(),
                    ["keepUntil"] = entry.KeepUntil.ToJson()
                });
                return Exit.Done;
            }
            Console.WriteLine(Invariant($"Complaint {entry.Id}. Keep the record until {entry.KeepUntil:yyyy-MM-dd} [FD&C Act, section 605(e)]."));
            if (entry.ReportBy is { } by)
                Console.WriteLine(Invariant($"SERIOUS: report it to FDA by {by:yyyy-MM-dd}, 15 business days (holidays not left out, so never late) [FD&C Act, section 605(a)]."));
            else
                Console.WriteLine("If it turns out serious, correct this entry at once: the days to report run from when you were told.");
            return Exit.Done;
        });
    }

    public static Command Dispose()
    {
        var verb = new Verb("dispose", "Writes pieces or material thrown away into the books");
        var what = verb.Argument<string>("LOT", "A finished lot, or a material lot (M3)");
        var amount = verb.Argument<string>("AMOUNT", "Pieces of a lot, or an amount of the material");
        var reason = verb.Option<string>("--reason", "Why, and how it was disposed of", required: true);
        var options = new BookOptions().AddTo(verb);
        return verb.OpensBooks(r =>
        {
            var workshop = options.Workshop(r);
            var book = BookOptions.Book(workshop);
            var (text, why) = (r.GetValue(what)!, r.GetValue(reason)!);
            Disposal disposal;
            if (text.StartsWith("M", StringComparison.OrdinalIgnoreCase))
            {
                var id = BookOptions.MaterialLot(text);
                var receipt = book.Ask(books => books.ReceiptOf(id));
                disposal = StockMovements.DisposeMaterial(book, id,
                    Shared.Need(MaterialAmount.Read(workshop.Material(receipt.Material, "the books", 0), r.GetValue(amount)!,
                        workshop.Dictionary)), why,
                    options.On(r), options.By(r), options.Note(r));
            }
            else
            {
                if (PlainFigure.Whole(r.GetValue(amount)) is not { } pieces)
                    throw new InputException("call.not-a-number-pieces", ("amount", r.GetValue(amount)));
                disposal = StockMovements.DisposePieces(book, BookOptions.Lot(text), pieces, why, options.On(r), options.By(r),
                    options.Note(r));
            }
            return options.Told(r, new JsonObject
            {
                ["disposal"] = disposal.Id,
                ["of"] = text,
                ["amount"] = disposal.Amount,
                ["reason"] = disposal.Reason,
            }, "Written down.");
        });
    }

    public static Command Correct()
    {
        var verb = new Verb("correct", "Corrects an entry: it stays, struck, beside the one that stands instead");
        var list = verb.Argument<string>("LIST", string.Join(", ", BookLists.All));
        var number = verb.Argument<int>("NUMBER", "The entry's number");
        var set = verb.Option<string[]>("--set", "What becomes of a field: --set pieces=3 (none: the entry is struck)");
        var reason = verb.Option<string>("--reason", "Why", required: true);
        var options = new BookOptions().AddTo(verb);
        return verb.OpensBooks(r =>
        {
            var changes = new Dictionary<string, string>(StringComparer.OrdinalIgnoreCase);
            foreach (var pair in r.GetValue(set) ?? [])
            {
                var at = pair.IndexOf('=');
                if (at < 1 || !changes.TryAdd(pair[..at].Trim(), pair[(at + 1)..].Trim()))
                    throw new InputException("call.one-field-each", ("pair", pair));
            }
            var workshop = options.Workshop(r);
            var correction = Correcting.Of(BookOptions.Book(workshop), workshop.Markets, r.GetValue(list)!, r.GetValue(number), changes,
                r.GetValue(reason)!, options.On(r), options.By(r), options.Note(r));
            return options.Told(r, new JsonObject
            {
                ["correction"] = correction.Id,
                ["list"] = correction.List,
                ["struck"] = correction.EntryId,
                ["instead"] = correction.InsteadId
            }, correction.InsteadId is { } now
                ? $"Correction {correction.Id}: {correction.List} {correction.EntryId} is struck; {correction.List} {now} stands instead."
                : $"Correction {correction.Id}: {correction.List} {correction.EntryId} is struck.");
        });
    }
}
