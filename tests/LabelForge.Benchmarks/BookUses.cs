using System.Data.Common;
using LabelForge.Days;
using LabelForge.Lookup;
using LabelForge.Lots;
using LabelForge.Recipes;
using LabelForge.Records.Books;
using LabelForge.Records.Money;
using LabelForge.Records.Tracing;
using LabelForge.Selling;
using LabelForge.Years;
using Microsoft.Data.Sqlite;
using Npgsql;

namespace LabelForge.Benchmarks;

/// <summary>One use of the books, as an action on them.</summary>
internal sealed record BookUse(string What, Action Ask);

/// <summary>What a maker does with books and what the pages ask of them, each as the command and the page do it.</summary>
internal sealed class BookUses
{
    private const int OnAPage = 50;

    private readonly string _folder;
    private readonly int _batches;
    private readonly Workshop _workshop;
    private readonly OpenBooks _book;
    private readonly DbConnection _store;
    private readonly string _open = new LotCode(BenchWorkshop.Day, 1).ToString();
    private int _next;

    /// <summary>The uses of a workshop's books; one batch is begun in them, to be weighed into.</summary>
    public BookUses(string folder, int batches)
    {
        (_folder, _batches, _workshop, _book) = (folder, batches, Workshop.Open(folder), OpenBooks.Open(folder));
        Production.Start(_book, Frozen, _open, BenchWorkshop.Day, "A");
        _store = Opened(_book.Place);
    }

    private FrozenRecipe Frozen =>
        FrozenRecipe.Of(_workshop, BatchFormula.Of(_workshop, _workshop.Recipe(BenchWorkshop.Recipe)), "us", null);

    private string Middle => BookFill.Lot(_batches / 2 + 1);

    // One of the last lots, each in its turn.
    private string InTheHouse => BookFill.Lot(_batches - _next++ % BookFill.LotsInTheHouse);

    // The number of the last full bottle of the base.
    private int Bottle => (_batches - 1) / 20 * 2 + 1;

    /// <summary>What is written, each in a transaction of its own.</summary>
    public IReadOnlyList<BookUse> Acts =>
    [
        new("the store alone: one row, on the disk", Alone),
        new("sell a piece of a lot", () => StockMovements.Sell(_book, InTheHouse, 1, "Market", 5, BenchWorkshop.Day, "A")),
        new("sell over the table, oldest lot first",
            () => TableSales.Sell(_book, [new(BenchWorkshop.Recipe, null, 1, 5, null)], "Market", "cash",
                BenchWorkshop.Day.AddDays(1 + _next++), "A")),
        new("receive a bottle",
            () => StockMovements.Receive(_book,
                new Receipt { On = BenchWorkshop.Day, By = "A", Material = "lye", Amount = 500, Price = 9 })),
        new("weigh into an open batch, out of a bottle named",
            () => Production.Weigh(_book, _open, "white-base", 0.01m, Bottle, BenchWorkshop.Day, "A")),
        new("begin, weigh and finish a batch (4 writes)", Batch),
        new("sell a piece and correct the entry (2 writes)",
            () => Correcting.Of(_book, Shipped.Markets, BookLists.Sale,
            StockMovements.Sell(_book, InTheHouse, 1, "Market", 5, BenchWorkshop.Day, "A").Id,
                new Dictionary<string, string> { ["paid"] = "6" }, "misread", BenchWorkshop.Day, "A")),
        new("count a lot", () => ShelfCount.Take(_book, [(InTheHouse, 5 + _next % 2)], BenchWorkshop.Day, "A")),
        new("write down a complaint",
            () => StockMovements.Complain(_book, Shipped.Markets, Middle, "A. Reader", "itch", false, true, BenchWorkshop.Day, "A")),
    ];

    /// <summary>What pages and verbs show.</summary>
    public IReadOnlyList<BookUse> Pages =>
    [
        new("Today", () => Ask(b => OpenToday.Of(_workshop, b, BenchWorkshop.Day))),
        new("Sell: what is on the table, the day's sums",
            () => Ask(b => (PriceList.In(_workshop, b), b.WasMade(BenchWorkshop.Recipe, null),
                MarketDay.Of(b, "Market", BenchWorkshop.Day)))),
        new("Pour: a page of batches", () => Ask(b => b.Lots(null, OnAPage + 1))),
        new("a batch, with the bottles to take from", () => Ask(Bench)),
        new("what is in the house", () => Ask(b => (b.InStock(), b.LotsInStock(), b.OpenBatches()))),
        new("a page of the sales", () => Ask(b => BookTables.Of(b, BookLists.Sale, b.Page(BookLists.Sale, null, OnAPage)))),
        new("the cost of a finished batch", () => Ask(b => CostSheet.Of(_workshop, b.BatchOf(Middle), CostsFile.None, b))),
        new("complaints", () => Ask(b => b.ComplaintsSince(BenchWorkshop.Day.AddYears(-6)))),
        new("what to pour next", () => Ask(b => NextPour.Of(_workshop, b, BenchWorkshop.Day))),
        new("trace a lot back to bottles and buyers", () => Trace.Of(_book, Middle)),
        new("trace a bottle to who has what was made of it", () => Trace.Of(_book, "M1")),
    ];

    /// <summary>What lists or adds up all that was ever made.</summary>
    public IReadOnlyList<BookUse> Whole =>
    [
        new("Find: names read, once for many words", () => Ask(b => new FindAnything(_workshop, b))),
        new("Find: two words that are in every lot", Finding()),
        new("a product's history, for its papers", () => Ask(b => b.HistoryOf(BenchWorkshop.Recipe, null))),
        new("trace a material that went into every batch", () => Trace.Of(_book, "castor-oil")),
        new("the year's totals", () => Ask(b => YearBook.Of(b, BenchWorkshop.Day.Year))),
        new("all lists as CSV", () => Ask(b => { BookFolder.Write(b, Path.Combine(_folder, "lists")); return 0; })),
        new("verify: every balance reckoned anew", () => _book.Check()),
    ];

    // What no program can go below on this store and disk.
    private void Alone()
    {
        using var command = _store.CreateCommand();
        command.CommandText = $"INSERT INTO \"OnceKeys\" (\"Key\") VALUES ('{Guid.NewGuid():N}')";
        command.ExecuteNonQuery();
    }

    private static DbConnection Opened(BookPlace place)
    {
        DbConnection store = place.Server is { } server
            ? new NpgsqlConnection(server)
            : new SqliteConnection($"Data Source={place.File};Pooling=False");
        store.Open();
        if (place.Server is null)
        {
            using var command = store.CreateCommand();
            command.CommandText = "PRAGMA synchronous=FULL;";
            command.ExecuteNonQuery();
        }
        return store;
    }

    private Action Finding()
    {
        var find = new Lazy<FindAnything>(() => _book.Ask(b => new FindAnything(_workshop, b)));
        return () => Ask(b => find.Value.In(b, "guest bar"));
    }

    private void Batch()
    {
        var (lot, on) = (new LotCode(BenchWorkshop.Day.AddDays(-1 - _next++), 1).ToString(), BenchWorkshop.Day);
        Production.Start(_book, Frozen, lot, on, "A");
        Production.Weigh(_book, lot, "white-base", 0.01m, Bottle, on, "A");
        Production.Weigh(_book, lot, "castor-oil", 0.01m, Bottle + 1, on, "A");
        Production.Close(_book, lot, 24, 0, null, on, "A");
    }

    private object Bench(IBooks books)
    {
        var batch = books.BatchOf(_open);
        var lines = Production.Compare(books, batch);
        return (books.ClosingOf(batch), books.WeighedInto(batch).ToArray(), books.DeviationsOf(batch).ToArray(),
            lines.Select(l => (books.InStock(l.Line.Material).ToArray(),
                Production.Propose(books, [(l.Line.Material, l.Line.Grams)], BenchWorkshop.Day))).ToArray());
    }

    private void Ask<T>(Func<IBooks, T> ask) => _book.Ask(ask);
}
