using System.CommandLine;
using LabelForge.Files;
using LabelForge.Measures;
using LabelForge.Print.Output;
using LabelForge.Recipes;
using LabelForge.Records.Books;
using LabelForge.Records.Spreadsheets;

namespace LabelForge.Cli.Verbs;

/// <summary><c>stock-in-hand</c> and <c>books</c>: what is there, and the lists as CSV.</summary>
internal static class BooksVerbs
{
    public static Command StockInHand()
    {
        var options = new BookOptions();
        var verb = options.AddReadingTo(new Command("stock-in-hand", "Materials and pieces in the house, first to expire first"), dated: true);
        verb.SetAction(r => Exit.Run(() =>
        {
            var workshop = options.Workshop(r);
            var (ledger, on) = (BookOptions.Book(workshop).Read(), options.On(r));
            var materials = ledger.Receipts.Select(x => x.Material).Distinct().Order(StringComparer.Ordinal).SelectMany(ledger.InStock).ToArray();
            var pieces = ledger.Batches.Select(b => (Batch: b, Left: ledger.PiecesLeft(b))).Where(b => b.Left > 0).ToArray();
            if (options.Json(r))
            {
                JsonOut.Write(new
                {
                    materials = materials.Select(m => new { lot = ledger.Bottle(m.Receipt.Id), material = m.Receipt.Material, left = m.Left, supplier = m.Receipt.Supplier, supplierLot = m.Receipt.SupplierLot, bestBefore = m.Receipt.BestBefore, expired = m.Receipt.BestBefore < on }),
                    pieces = pieces.Select(p => new { lot = p.Batch.Lot, product = p.Batch.Product, left = p.Left }),
                });
                return Exit.Done;
            }
            foreach (var (receipt, left) in materials)
            {
                var unit = workshop.Materials.TryGetValue(receipt.Material, out var m) && m.Kind == MaterialKind.Packaging ? "pieces" : "g";
                Console.WriteLine(FormattableString.Invariant($"  {ledger.Bottle(receipt.Id),-5} {receipt.Material,-24} {left,10:0.##} {unit,-6} {receipt.Supplier} {receipt.SupplierLot}{(receipt.BestBefore is { } best ? FormattableString.Invariant($" best before {best:yyyy-MM-dd}{(best < on ? " EXPIRED" : "")}") : "")}"));
            }
            foreach (var (batch, left) in pieces)
                Console.WriteLine(FormattableString.Invariant($"  {batch.Lot} {batch.Product,-24} {left,6} pieces"));
            if (materials.Length + pieces.Length == 0)
                Console.WriteLine("Nothing is in the books. Write down what you have: labelforge receive MATERIAL AMOUNT --price 0.00");
            return Exit.Done;
        }));
        return verb;
    }

    public static Command Books()
    {
        var list = new Argument<string>("LIST") { Description = string.Join(", ", [.. BookLists.All, BookLists.Correction]) + "; or all" };
        var output = OutputOption.Optional("The CSV to write (default: the screen); for all, a folder", FileKind.Csv);
        var options = new BookOptions();
        var verb = options.AddReadingTo(new Command("books", "A list of the books as CSV, struck entries marked") { list }, dated: false);
        output.AddTo(verb);
        verb.SetAction(r => Exit.Run(() =>
        {
            var name = r.GetValue(list)!;
            if (name == "all")
                return All(BookOptions.Book(options.Workshop(r)).Read(), output.Written(r), output.Force(r));
            if (name != BookLists.Correction && !BookLists.All.Contains(name))
                throw new InputException(new Problem(null, 0, $"\"{name}\" is not a list in the books.", $"Write one of: {string.Join(", ", [.. BookLists.All, BookLists.Correction])}."));
            var path = output.PathOrNone(r);
            var ledger = BookOptions.Book(options.Workshop(r)).Read();
            if (path is not null)
                Save(path, ledger, name);
            else
                Console.Out.Write(Csv(ledger, name));
            return Exit.Done;
        }));
        return verb;
    }

    public static Command Import()
    {
        var files = new Argument<string[]>("CSV") { Description = "Lists as labelforge books writes them, or typed in their columns; or the folder of all", Arity = ArgumentArity.OneOrMore };
        var options = new BookOptions();
        var verb = options.AddTo(new Command("import", "Reads lists of the books back: rows with a number that is there already must agree, all others are added") { files });
        verb.SetAction(r => Exit.Run(() =>
        {
            var paths = r.GetValue(files)!.SelectMany(f => Directory.Exists(f) ? Directory.EnumerateFiles(f, "*.csv").Order(StringComparer.Ordinal) : (IEnumerable<string>)[f]).ToArray();
            var (added, known) = ListImport.ReadFiles(BookOptions.Book(options.Workshop(r)), paths, options.On(r), options.By(r));
            if (options.Json(r))
                JsonOut.Write(new { added, known });
            else
                Console.WriteLine($"{added} entries added; {known} were in the books already, and agree.");
            return Exit.Done;
        }));
        return verb;
    }

    private static int All(Ledger ledger, string? folder, bool force)
    {
        if (folder is null)
            throw new InputException(new Problem(null, 0, "All lists together need a folder.", "Write --out FOLDER."));
        var files = ((string[])[.. BookLists.All, BookLists.Correction]).Select(list => (List: list, Path: Path.Combine(folder, $"{list}.csv"))).ToList();
        foreach (var (_, path) in files)
            OutputPath.RefuseUnlessFree(path, [FileKind.Csv], force);
        Directory.CreateDirectory(folder);
        foreach (var (list, path) in files)
            Save(path, ledger, list);
        Console.WriteLine($"{folder}: {BookLists.All.Count + 1} lists.");
        return Exit.Done;
    }

    // The mark at the beginning tells spreadsheets that the letters are UTF-8.
    private static void Save(string path, Ledger ledger, string list) =>
        AtomicFile.Write(path, s => s.Write([0xEF, 0xBB, 0xBF, .. System.Text.Encoding.UTF8.GetBytes(Csv(ledger, list))]));

    private static string Csv(Ledger ledger, string list)
    {
        var (heading, rows) = BookTables.Of(ledger, list);
        return SafeCsv.Write(heading, rows);
    }
}
