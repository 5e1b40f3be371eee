using System.CommandLine;
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
        var verb = options.AddTo(new Command("stock-in-hand", "Materials and pieces in the house, first to expire first"));
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
                    materials = materials.Select(m => new { lot = $"M{m.Receipt.Id}", material = m.Receipt.Material, left = m.Left, supplier = m.Receipt.Supplier, supplierLot = m.Receipt.SupplierLot, bestBefore = m.Receipt.BestBefore, expired = m.Receipt.BestBefore < on }),
                    pieces = pieces.Select(p => new { lot = p.Batch.Lot, product = p.Batch.Product, left = p.Left }),
                });
                return Exit.Done;
            }
            foreach (var (receipt, left) in materials)
            {
                var unit = workshop.Materials.TryGetValue(receipt.Material, out var m) && m.Kind == MaterialKind.Packaging ? "pieces" : "g";
                Console.WriteLine(FormattableString.Invariant($"  M{receipt.Id,-4} {receipt.Material,-24} {left,10:0.##} {unit,-6} {receipt.Supplier} {receipt.SupplierLot}{(receipt.BestBefore is { } best ? FormattableString.Invariant($" best before {best:yyyy-MM-dd}{(best < on ? " EXPIRED" : "")}") : "")}"));
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
        var list = new Argument<string>("LIST") { Description = string.Join(", ", [.. BookLists.All, BookLists.Correction]) };
        var output = new Option<string?>("--out") { Description = "The CSV to write (default: the screen)" };
        var options = new BookOptions();
        var verb = options.AddTo(new Command("books", "A list of the books as CSV, struck entries marked") { list, output });
        verb.SetAction(r => Exit.Run(() =>
        {
            var name = r.GetValue(list)!;
            if (name != BookLists.Correction && !BookLists.All.Contains(name))
                throw new InputException(new Problem(null, 0, $"\"{name}\" is not a list in the books.", $"Write one of: {string.Join(", ", [.. BookLists.All, BookLists.Correction])}."));
            var (heading, rows) = BookTables.Of(BookOptions.Book(options.Workshop(r)).Read(), name);
            var csv = SafeCsv.Write(heading, rows);
            if (r.GetValue(output) is { } path)
                AtomicFile.Write(path, s => s.Write(System.Text.Encoding.UTF8.GetBytes(csv)));
            else
                Console.Out.Write(csv);
            return Exit.Done;
        }));
        return verb;
    }
}
