using LabelForge.Cli.Handover;
using LabelForge.Files;
using LabelForge.Print.Output;
using LabelForge.Records.Books;
using LabelForge.Records.Spreadsheets;

namespace LabelForge.Cli.Verbs;

/// <summary><c>stock-in-hand</c> and <c>books</c>: what is there, and the lists as CSV.</summary>
internal static class BooksVerbs
{
    public static Command StockInHand()
    {
        var verb = new Verb("stock-in-hand", "Materials and pieces in the house, first to expire first");
        var options = new BookOptions().AddReadingTo(verb, dated: true);
        return verb.OpensBooks(r =>
        {
            var workshop = options.Workshop(r);
            var on = options.On(r);
            return BookOptions.Book(workshop).Ask(books =>
            {
                var (materials, pieces) = (books.InStock(), books.LotsInStock());
                if (options.Json(r))
                {
                    JsonOut.Write(new JsonObject
                    {
                        ["materials"] = materials.ToJson(m => new JsonObject
                        {
                            ["lot"] = books.Bottle(m.Receipt.Id),
                            ["material"] = m.Receipt.Material,
                            ["left"] = m.Left,
                            ["unit"] = UnitOf(workshop, m.Receipt.Material),
                            ["supplier"] = m.Receipt.Supplier,
                            ["supplierLot"] = m.Receipt.SupplierLot,
                            ["bestBefore"] = m.Receipt.BestBefore?.ToJson(),
                            ["expired"] = m.Receipt.BestBefore < on
                        }),
                        ["reserved"] = Reserved.Of(books).ToJson(m => new JsonObject
                        {
                            ["material"] = m.Key,
                            ["amount"] = Math.Round(m.Value, 3),
                        }),
                        ["pieces"] = pieces.ToJson(p => new JsonObject
                        {
                            ["lot"] = p.Batch.Lot,
                            ["product"] = p.Batch.Product,
                            ["left"] = p.Left,
                        }),
                    });
                    return Exit.Done;
                }
                foreach (var (receipt, left) in materials)
                    Console.WriteLine(Invariant($"  {books.Bottle(receipt.Id),-5} {receipt.Material,-24} {left,10:0.##} {UnitOf(workshop, receipt.Material),-6} {receipt.Supplier} {receipt.SupplierLot}{(receipt.BestBefore is { } best ? Invariant($" best before {best:yyyy-MM-dd}{(best < on ? " EXPIRED" : "")}") : "")}"));
                foreach (var (batch, left) in pieces)
                    Console.WriteLine(Invariant($"  {batch.Lot} {batch.Product,-24} {left,6} pieces"));
                foreach (var (material, grams) in Reserved.Of(books).OrderBy(m => m.Key, StringComparer.Ordinal))
                    Console.WriteLine(Invariant($"  for what is at the bench: {material,-24} {grams,10:0.##} {UnitOf(workshop, material)}"));
                if (materials.Count + pieces.Count == 0)
                    Console.WriteLine("Nothing is in the books. Write down what you have: labelforge receive MATERIAL AMOUNT --price 0.00");
                return Exit.Done;
            });
        });
    }

    private static string UnitOf(Workshop workshop, string material) =>
        workshop.Materials.TryGetValue(material, out var m) && m.Kind == MaterialKind.Packaging ? "pieces" : "g";

    public static Command Books()
    {
        var verb = new Verb("books", "A list of the books as CSV, struck entries marked");
        var list = verb.Argument<string>("LIST",
            string.Join(", ", BookFolder.Lists) + "; all; or verify, which reckons every balance anew");
        var last = verb.Option<int?>("--last", "Only so many entries, the last of the list");
        var options = new BookOptions().AddReadingTo(verb, dated: false);
        var output = OutputOption.Optional("The CSV to write (default: the screen); for all, a folder", FileKind.Csv).AddTo(verb);
        return verb.OpensBooks(r =>
        {
            var name = r.GetValue(list)!;
            if (r.GetValue(last) is { } && name is "all" or "verify")
                throw new InputException("call.last-of-one-list", ("name", name));
            if (r.GetValue(last) is <= 0)
                throw new InputException("call.last-not-a-number");
            if (name == "verify")
                return Verify(BookOptions.Book(options.Workshop(r)), options.Workshop(r).Folder, options.Json(r));
            if (name == "all")
                return All(BookOptions.Book(options.Workshop(r)), output.Written(r), output.Force(r), options.Json(r));
            if (!BookFolder.Lists.Contains(name))
                throw new InputException("call.not-a-list-books", ("name", name), ("list", string.Join(", ", BookFolder.Lists)));
            var path = output.PathOrNone(r);
            var book = BookOptions.Book(options.Workshop(r));
            return book.Ask(books =>
            {
                var heading = BookTables.Of(books, name, []).Heading;
                var rows = r.GetValue(last) is { } most
                    ? BookTables.Of(books, name, books.Page(name, null, most)).Rows
                    : BookTables.InPages(books, name);
                if (path is not null)
                    AtomicFile.Write(path, s => SafeCsv.WriteFile(s, heading, rows));
                if (options.Json(r))
                    JsonOut.Write(new JsonObject
                    {
                        ["list"] = name,
                        ["entries"] = rows.ToJson(row => new JsonObject(heading.Zip(row).Where(c => c.Second is not null and not "")
                            .Select(c => KeyValuePair.Create(Key(c.First), PlainJson.Of(c.Second)))))
                    });
                else if (path is null)
                    SafeCsv.WriteTo(Console.Out, heading, rows);
                return Exit.Done;
            });
        });
    }

    // supplier lot -> supplierLot, as in the other answers.
    private static string Key(string heading) =>
        string.Concat(heading.Split(' ').Select((w, i) => i == 0 ? w : char.ToUpperInvariant(w[0]) + w[1..]));

    private static int Verify(OpenBooks book, string folder, bool json)
    {
        var check = book.Check();
        check = check with { Differences = [.. check.Differences, .. AttachmentFolder.Faults(book, folder)] };
        if (json)
            JsonOut.Write(new JsonObject
            {
                ["entries"] = check.Entries,
                ["bottles"] = check.Bottles,
                ["batches"] = check.Lots,
                ["differences"] = check.Differences.ToJson(),
            });
        foreach (var difference in json ? [] : check.Differences)
            Console.WriteLine(difference);
        if (!json)
        {
            Console.WriteLine(Invariant($"{check.Entries} entries read; {check.Bottles} bottles and {check.Lots} batches reckoned anew: {(check.Differences.Count == 0 ? "all agrees with what is kept." : $"{check.Differences.Count} do not agree.")}"));
            if (check.Differences.Count > 0)
                Console.WriteLine(
                    "The entries are what counts. Keep a copy of the books as they are, and restore the last backup that verifies: "
                        + "labelforge restore BACKUP");
        }
        return check.Differences.Count == 0 ? Exit.Done : Exit.FindingStands;
    }

    public static Command Import()
    {
        var verb = new Verb("import",
            "Reads lists of the books back: rows with a number that is there already must agree, all others are added");
        var files = verb.Argument<string[]>("CSV",
            "Lists as labelforge books writes them, or typed in their columns; or the folder of all", ArgumentArity.OneOrMore);
        var options = new BookOptions().AddFileTo(verb);
        return verb.OpensBooks(r =>
        {
            var paths = r.GetValue(files)!
                .SelectMany(f => Directory.Exists(f)
                    ? Directory.EnumerateFiles(f, "*.csv").Order(StringComparer.Ordinal)
                    : (IEnumerable<string>)[f]).ToArray();
            var workshop = options.Workshop(r);
            var (added, known) = ListImport.ReadFiles(BookOptions.Book(workshop), paths, options.On(r), options.By(r), workshop);
            return options.Told(r, new JsonObject { ["added"] = added, ["known"] = known },
                $"{added} entries added; {known} were in the books already, and agree.");
        });
    }

    private static int All(OpenBooks book, string? folder, bool force, bool json)
    {
        if (folder is null)
            throw new InputException("call.lists-need-a-folder");
        foreach (var list in BookFolder.Lists)
            OutputPath.RefuseUnlessFree(Path.Combine(folder, $"{list}.csv"), [FileKind.Csv], force);
        book.Ask(books => { BookFolder.Write(books, folder); return 0; });
        if (json)
            JsonOut.Write(new JsonObject { ["folder"] = folder, ["lists"] = BookFolder.Lists.ToJson() });
        else
            Console.WriteLine($"{folder}: {BookFolder.Lists.Count} lists, and what batches froze.");
        return Exit.Done;
    }
}
