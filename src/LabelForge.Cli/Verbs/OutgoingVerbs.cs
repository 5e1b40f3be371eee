using LabelForge.Cli.Handover;
using LabelForge.Records.Books;

namespace LabelForge.Cli.Verbs;

/// <summary><c>sell</c>, <c>complaint</c>, <c>dispose</c>, <c>correct</c>: what happens to pieces and entries later.</summary>
internal static class OutgoingVerbs
{
    public static Command Sell()
    {
        var lot = BatchBenchVerbs.LotArgument();
        var pieces = new Argument<int>("PIECES") { Description = "How many" };
        var to = new Option<string>("--to") { Description = "To whom, or which market day", Required = true };
        var paid = new Option<string?>("--paid") { Description = "What was paid for all of them" };
        var gift = new Option<bool>("--gift") { Description = "They were given away" };
        var options = new BookOptions();
        var verb = options.AddAskingTo(new Command("sell", "Writes pieces sold or given into the books") { lot, pieces, to, paid, gift });
        verb.OpensBooks(r =>
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
        return verb;
    }

    public static Command Complaint()
    {
        var from = new Option<string>("--from") { Description = "Who told of it", Required = true };
        var what = new Option<string>("--what") { Description = "What they told", Required = true };
        var lot = new Option<string?>("--lot") { Description = "The lot, where it is known; or the code on the piece, as it was scanned" };
        var serious = new Option<bool>("--serious")
        {
            Description =
                "Death, a threat to life, hospital, lasting harm, an infection, or serious disfigurement (FD&C Act, section 604(5))",
        };
        var small = new Option<bool>("--small-business") { Description = "The business is small in the sense of FD&C Act, section 612" };
        var options = new BookOptions();
        var verb = options.AddTo(new Command("complaint", "Writes a complaint or a bad reaction into the books, with its dates")
        {
            from, what, lot, serious, small,
        });
        verb.OpensBooks(r =>
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
        return verb;
    }

    public static Command Dispose()
    {
        var what = new Argument<string>("LOT") { Description = "A finished lot, or a material lot (M3)" };
        var amount = new Argument<string>("AMOUNT") { Description = "Pieces of a lot, or an amount of the material" };
        var reason = new Option<string>("--reason") { Description = "Why, and how it was disposed of", Required = true };
        var options = new BookOptions();
        var verb = options.AddTo(new Command("dispose", "Writes pieces or material thrown away into the books") { what, amount, reason });
        verb.OpensBooks(r =>
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
        return verb;
    }

    public static Command Correct()
    {
        var list = new Argument<string>("LIST") { Description = string.Join(", ", BookLists.All) };
        var number = new Argument<int>("NUMBER") { Description = "The entry's number" };
        var set = new Option<string[]>("--set")
        {
            Description = "What becomes of a field: --set pieces=3 (none: the entry is struck)",
            AllowMultipleArgumentsPerToken = false,
        };
        var reason = new Option<string>("--reason") { Description = "Why", Required = true };
        var options = new BookOptions();
        var verb = options.AddTo(new Command("correct", "Corrects an entry: it stays, struck, beside the one that stands instead")
        {
            list, number, set, reason,
        });
        verb.OpensBooks(r =>
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
        return verb;
    }
}
