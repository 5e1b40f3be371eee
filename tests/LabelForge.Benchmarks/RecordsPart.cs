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
        var book = OpenBooks.Open(folder);
        var (middle, next, open) = (BookFill.Lot(batches / 2 + 1), 0, new Lots.LotCode(BenchWorkshop.Day, 1).ToString());
        Production.Start(book, FrozenRecipe.Of(workshop, BatchFormula.Of(workshop, workshop.Recipe(BenchWorkshop.Recipe)), "us", null), open, BenchWorkshop.Day, "A");
        return
        [
            ("sell a piece: the lot found, written, balanced, committed", () => StockMovements.Sell(book, BookFill.Lot(next++ % batches + 1), 1, "Market", 5, BenchWorkshop.Day, "A")),
            ("receive a bottle", () => StockMovements.Receive(book, new Receipt { On = BenchWorkshop.Day, By = "A", Material = "lye", Amount = 500, Price = 9 })),
            ("weigh into an open batch, out of a bottle named", () => Production.Weigh(book, open, "white-base", 0.01m, 1 + next++ % (batches / 20) * 2, BenchWorkshop.Day, "A")),
            ("what is left of a lot", () => book.Ask(b => b.PiecesLeft(b.BatchOf(middle)))),
            ("the bottles of one material with something left, first to expire first", () => book.Ask(b => b.InStock("castor-oil").Count())),
            ("a page of a hundred sales", () => book.Ask(b => b.Page(BookLists.Sale, null, 100))),
            ("the record of a batch: what was weighed in, sold, closed", () => book.Ask(b => b.BatchOf(middle) is var batch ? (b.WeighedInto(batch).Count(), b.SalesOf(batch).Count(), b.ClosingOf(batch)) : default)),
            ("trace a lot back to its bottles and its buyers", () => Trace.Of(book, middle)),
            ("trace a bottle to the people who have what was made of it", () => Trace.Of(book, "M1")),
            ("trace a material that went into every batch", () => Trace.Of(book, "castor-oil")),
            ("the cost of a finished batch, by what was paid for the bottles used", () => book.Ask(b => CostSheet.Of(workshop, b.BatchOf(middle), CostsFile.None, b))),
            ("verify: every entry read, every balance reckoned anew", () => book.Check()),
        ];
    }

    public static string Measure()
    {
        var command = Published.Command;
        var machine = Machine.Line();
        var folder = BookFill.Make(Batches);
        var size = new FileInfo(Path.Combine(folder, OpenBooks.FileName)).Length;
        var text = new StringBuilder(string.Create(CultureInfo.InvariantCulture, $"{machine} {Batches:#,0} batches, {2 * Batches:#,0} weighings, {Batches / 10:#,0} bottles, {Batches:#,0} sales: {Figures.Bytes(size)} in SQLite. In one process; the best of some.\n\n| what | time |\n| --- | ---: |\n"));
        foreach (var (what, ask) in Questions(folder, Batches))
            text.Append(CultureInfo.InvariantCulture, $"| {what} | {Figures.Time(Timing.Best(ask))} |\n");
        var trace = ChildRun.Of(command, "trace", "M1", "--workshop", folder);
        text.Append(CultureInfo.InvariantCulture, $"\n`labelforge trace M1` as a process of its own: {Figures.Time(trace.Wall)}, {Figures.Bytes(trace.PeakBytes)} at most.\n");
        return text.ToString();
    }
}
