using System.Globalization;
using System.Text;
using LabelForge.Recipes;
using LabelForge.Records.Books;
using LabelForge.Records.Money;
using LabelForge.Records.Tracing;

namespace LabelForge.Benchmarks;

/// <summary>The books of a shop with 100,000 batches: reading them, and what is asked of them.</summary>
internal static class RecordsPart
{
    private const int Batches = 100_000;

    /// <summary>What is asked of books, each as an action on them.</summary>
    public static IReadOnlyList<(string What, Action Ask)> Questions(string folder, int batches)
    {
        var workshop = Workshop.Open(folder);
        var book = RecordBook.Open(folder);
        var ledger = book.Read();
        var (middle, next) = (BookFill.Lot(batches / 2 + 1), 0);
        return
        [
            ("read the books", () => book.Read()),
            ("trace a lot back to its bottles and its buyers", () => Trace.Of(book, middle)),
            ("trace a bottle to the people who have what was made of it", () => Trace.Of(book, "M1")),
            ("trace a material that went into every batch", () => Trace.Of(book, "castor-oil")),
            ("the stock: what is left of every bottle", () => Stock(ledger)),
            ("the cost of a finished batch, by what was paid for the bottles used", () => CostSheet.Of(workshop, ledger.BatchOf(middle), CostsFile.None, ledger)),
            ("sell a piece: read, write, balance, commit", () => Shop.Sell(book, BookFill.Lot(next++ % batches + 1), 1, "Market", 5, BenchWorkshop.Day, "A")),
        ];
    }

    public static string Measure()
    {
        var command = Published.Command;
        var machine = Machine.Line();
        var folder = BookFill.Make(Batches);
        var size = new FileInfo(Path.Combine(folder, RecordBook.FileName)).Length;
        var text = new StringBuilder(string.Create(CultureInfo.InvariantCulture, $"{machine} {Batches:#,0} batches, {2 * Batches:#,0} weighings, {Batches / 10:#,0} bottles, {Batches:#,0} sales: {Figures.Bytes(size)} in SQLite. In one process; the best of some.\n\n| what | time |\n| --- | ---: |\n"));
        foreach (var (what, ask) in Questions(folder, Batches))
            text.Append(CultureInfo.InvariantCulture, $"| {what} | {Figures.Time(Timing.Best(ask))} |\n");
        var trace = ChildRun.Of(command, "trace", "M1", "--workshop", folder);
        text.Append(CultureInfo.InvariantCulture, $"\n`labelforge trace M1` as a process of its own: {Figures.Time(trace.Wall)}, {Figures.Bytes(trace.PeakBytes)} at most.\n");
        return text.ToString();
    }

    // Asked anew, as after every write: the books keep what they have worked out.
    private static void Stock(Ledger ledger)
    {
        foreach (var material in new[] { "white-base", "castor-oil" })
            _ = ledger.InStock(material).Sum(r => r.Left);
    }
}
