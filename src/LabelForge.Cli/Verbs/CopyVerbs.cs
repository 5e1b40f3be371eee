using System.CommandLine;
using LabelForge.Records.Books;

namespace LabelForge.Cli.Verbs;

/// <summary><c>backup</c>, <c>restore</c> and <c>receive-list</c>: the books as a whole.</summary>
internal static class CopyVerbs
{
    public static Command Backup()
    {
        var file = new Argument<string>("FILE") { Description = "The copy to write, best on another disk" };
        var workshop = Shared.Workshop();
        var force = new Option<bool>("--force") { Description = "Write over a file that is no copy of books" };
        var verb = new Command("backup", "A checked copy of the books, made while they are in use") { file, workshop, force };
        verb.SetAction(r => Exit.Run(() =>
        {
            var entries = BookCopy.Backup(r.GetValue(workshop) ?? Directory.GetCurrentDirectory(), r.GetValue(file)!, r.GetValue(force));
            Console.WriteLine($"{r.GetValue(file)}: {entries} entries, read back and found whole. Copy the YAML files too: the books hold only what was made and sold.");
            return Exit.Done;
        }));
        return verb;
    }

    public static Command Restore()
    {
        var file = new Argument<string>("FILE") { Description = "A copy made by backup" };
        var workshop = Shared.Workshop();
        var verb = new Command("restore", "Puts a copy in the place of the books; the old ones are kept beside it") { file, workshop };
        verb.SetAction(r => Exit.Run(() =>
        {
            var (entries, kept) = BookCopy.Restore(r.GetValue(workshop) ?? Directory.GetCurrentDirectory(), r.GetValue(file)!);
            Console.WriteLine($"Restored: {entries} entries.{(kept is null ? "" : $" The books that were there are kept as {kept}.")}");
            return Exit.Done;
        }));
        return verb;
    }

    public static Command AgreeServer()
    {
        var workshop = Shared.Workshop();
        var verb = new Command("agree-server", "Agrees, once, to the server on another machine that a workshop names for its books") { workshop };
        verb.SetAction(r => Exit.Run(() =>
        {
            Console.WriteLine($"Agreed: the books may be kept in {KnownServers.Agree(r.GetValue(workshop) ?? Directory.GetCurrentDirectory())}.");
            return Exit.Done;
        }));
        return verb;
    }

    public static Command ReceiveList()
    {
        var file = new Argument<string>("CSV") { Description = "Columns material, amount, price, and any of supplier, supplier lot, best before, certificate, on, by, note" };
        var options = new BookOptions();
        var verb = options.AddAskingTo(new Command("receive-list", "Writes a CSV of materials that came in into the books, one line after the other") { file });
        verb.SetAction(r => Exit.Run(() =>
        {
            var workshop = options.Workshop(r);
            var list = ReceiptList.ReadFile(r.GetValue(file)!, workshop, options.On(r), options.By(r));
            options.Ask(r, [.. list.SelectMany(receipt => Slips.OfReceipt(receipt, workshop.Material(receipt.Material, "the list", 0), BookOptions.Today))]);
            var book = BookOptions.Book(workshop);
            foreach (var receipt in list)
            {
                // A line on the screen means that the entry is on the disk.
                Console.Out.WriteLine($"M{Shop.Receive(book, receipt).Id} {receipt.Material}");
                Console.Out.Flush();
            }
            return Exit.Done;
        }));
        return verb;
    }
}
