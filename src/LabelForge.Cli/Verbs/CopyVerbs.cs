using LabelForge.Cli.Handover;
using LabelForge.Records.Books;

namespace LabelForge.Cli.Verbs;

/// <summary><c>backup</c>, <c>restore</c> and <c>receive-list</c>: the books as a whole.</summary>
internal static class CopyVerbs
{
    public static Command Backup()
    {
        var verb = new Verb("backup", "A checked copy of the whole workshop or of its books, made while they are in use");
        var file = verb.Argument<string>("FILE",
            "The copy to write, best on another disk: .zip for the whole workshop, .db for the books alone");
        var workshop = verb.Workshop();
        var force = verb.Option<bool>("--force", "Write over a file that is no such copy");
        var format = verb.Format();
        return verb.OpensBooks(r =>
        {
            var (folder, path) = (r.GetValue(workshop) ?? Directory.GetCurrentDirectory(), r.GetValue(file)!);
            if (!WorkshopCopy.IsNamed(path))
            {
                var entries = BookCopy.Backup(folder, path, r.GetValue(force));
                var differences = OpenBooks.Open(folder).Check().Differences;
                Shared.Say(r, format,
                    () => new JsonObject { ["file"] = path, ["entries"] = entries, ["differences"] = differences.ToJson() },
                    $"{path}: {entries} entries, read back and found whole. The YAML files are not in it: labelforge backup workshop.zip "
                        + $"copies them too.");
                return Agrees(differences);
            }
            var report = WorkshopCopy.Backup(folder, path, r.GetValue(force));
            Shared.Say(r, format,
                () => new JsonObject
                {
                    ["file"] = path,
                    ["files"] = report.Files,
                    ["entries"] = report.Entries,
                    ["differences"] = report.Differences.ToJson(),
                },
                $"{path}: {report.Files} files and {report.Entries} entries of the books, put back elsewhere, compared and found whole.");
            return Agrees(report.Differences);
        });
    }

    public static Command Restore()
    {
        var verb = new Verb("restore", "Puts a copy in the place of a workshop or of its books; what was there is kept beside it");
        var file = verb.Argument<string>("FILE", "A copy made by backup");
        var workshop = verb.Workshop();
        var format = verb.Format();
        return verb.OpensBooks(r =>
        {
            var (folder, path) = (r.GetValue(workshop) ?? Directory.GetCurrentDirectory(), r.GetValue(file)!);
            if (!WorkshopCopy.IsNamed(path))
            {
                var (entries, kept) = BookCopy.Restore(folder, path);
                Shared.Say(r, format, () => new JsonObject { ["entries"] = entries, ["kept"] = kept },
                    $"Restored: {entries} entries.{(kept is null ? "" : $" The books that were there are kept as {kept}.")}");
                return Exit.Done;
            }
            var report = WorkshopCopy.Restore(folder, path);
            Shared.Say(r, format,
                () => new JsonObject
                {
                    ["files"] = report.Files,
                    ["entries"] = report.Entries,
                    ["kept"] = report.Kept,
                    ["differences"] = report.Differences.ToJson(),
                },
                $"Restored: {report.Files} files and {report.Entries} entries of the books.{(report.Kept is null ? "" : $" What was there and differed is kept as {report.Kept}.")}");
            return Agrees(report.Differences);
        });
    }

    // A copy of books that do not agree with themselves is better than none; but it is told.
    private static int Agrees(IReadOnlyList<string> differences)
    {
        foreach (var difference in differences)
            Console.Error.WriteLine($"The books do not agree with themselves: {difference}");
        return differences.Count == 0 ? Exit.Done : Exit.FindingStands;
    }

    public static Command AgreeServer()
    {
        var verb = new Verb("agree-server", "Agrees, once, to the server on another machine that a workshop names for its books");
        var workshop = verb.Workshop();
        var format = verb.Format();
        return verb.OpensBooks(r =>
        {
            var server = KnownServers.Agree(r.GetValue(workshop) ?? Directory.GetCurrentDirectory());
            Shared.Say(r, format, () => new JsonObject { ["server"] = server }, $"Agreed: the books may be kept in {server}.");
            return Exit.Done;
        });
    }

    public static Command ReceiveList()
    {
        var verb = new Verb("receive-list", "Writes a CSV of materials that came in into the books: all of its lines, or none");
        var file = verb.Argument<string>("CSV",
            "Columns material, amount, price, and any of supplier, supplier lot, best before, certificate, on, by, note");
        var options = new BookOptions().AddSureTo(verb).AddFileTo(verb);
        return verb.OpensBooks(r =>
        {
            var workshop = options.Workshop(r);
            var list = ReceiptList.Read(r.GetValue(file)!, workshop, options.On(r), options.By(r));
            var book = BookOptions.Book(workshop);
            options.Ask(r, book.Ask(books => list.Slips(books, workshop, BookOptions.Today)));
            var received = list.Write(book);
            if (options.Json(r))
                JsonOut.Write(
                    new JsonObject
                    {
                        ["received"] = received.ToJson(e => new JsonObject
                        {
                            ["materialLot"] = $"M{e.Id}",
                            ["material"] = e.Material,
                            ["amount"] = e.Amount,
                            ["price"] = e.Price
                        })
                    });
            foreach (var receipt in options.Json(r) ? [] : received)
                Console.WriteLine($"M{receipt.Id} {receipt.Material}");
            return Exit.Done;
        });
    }
}
