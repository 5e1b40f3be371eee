using CsCheck;
using LabelForge.Lots;
using LabelForge.Measures;
using LabelForge.Recipes;
using LabelForge.Records.Books;
using LabelForge.Records.Tests.Tracing;
using Trace = LabelForge.Records.Tracing.Trace;

namespace LabelForge.Records.Tests.Books;

/// <summary>Histories drawn at random, with mistakes, corrections, undoing and lists read in:
/// what is kept agrees with what is reckoned anew from all entries.</summary>
public sealed class RandomHistoryTests
{
    private static readonly string[] Materials = ["base", "castor-oil", "scent"];

    // What is done, and three numbers that say to what and how much.
    private static readonly Gen<(int Act, int A, int B, int C)[]> History =
        Gen.Select(Gen.Int[0, 18], Gen.Int[0, 1000], Gen.Int[0, 1000], Gen.Int[0, 1000]).Array[5, 40];

    private const string Scents = """
        name: Scents
        identity: Glycerin bar soap
        product: soap-bar
        materials:
          - { use: base, amount: 90 g }
          - { use: castor-oil, amount: 3 g }
        pieces: 4
        net: 20 g
        variants:
          - { name: Red, add: [ { use: scent, amount: 1 g } ] }
          - { name: Rosé, add: [ { use: scent, amount: 2 g } ] }
        """;

    [Theory]
    [InlineData(false, 30)]
    [InlineData(true, 6)]
    public void Balances_kept_are_those_reckoned_from_all_entries(bool server, int histories) => History.Sample(history =>
    {
        using var shop = server ? TestShop.OnServer() : new TestShop();
        shop.Write("recipes/scents.yaml", Scents);
        shop.Stock();
        foreach (var (act, a, b, c) in history)
        {
            try
            {
                Do(shop, act, a, b, c);
            }
            catch (InputException)
            {
                // Refused, so nothing of it was written: the check below would tell.
            }
        }
        Agree(shop);
    }, iter: histories, threads: 1);

    private static void Do(TestShop shop, int act, int a, int b, int c)
    {
        var (book, snapshot) = (shop.Book, shop.Book.Read());
        var lot = snapshot.AllBatches.Count == 0
            ? new LotCode(TestShop.Day, 1).ToString()
            : snapshot.AllBatches[a % snapshot.AllBatches.Count].Lot;
        var bottle = 1 + b % Math.Max(1, snapshot.AllReceipts.Count);
        switch (act)
        {
            case 0 or 1:
                shop.Receive(Materials[a % 3], 1 + b * 1.234567m, c / 100m, TestShop.Day.AddDays(b % 90));
                break;
            case 2 or 3:
                var made = shop.Finish(NextLot.Of(snapshot, TestShop.Day).ToString(), 8, a % 3);
                StockMovements.Sell(book, made, 1 + b % 3, $"buyer {c % 4}", c / 100m, TestShop.Day, "A");
                break;
            case 4:
                shop.Start(NextLot.Of(snapshot, TestShop.Day).ToString());
                break;
            case 5:
                Production.Weigh(book, lot, Materials[b % 3], c / 7m, c % 2 == 0 ? bottle : null, TestShop.Day, "A");
                break;
            case 6:
                Production.Close(book, lot, b % 12, c % 3, null, TestShop.Day, "A");
                break;
            case 7 or 8:
                StockMovements.Sell(book, lot, 1 + b % 6, $"buyer {c % 4}", c / 100m, TestShop.Day, "A");
                break;
            case 9:
                StockMovements.DisposeMaterial(book, bottle, c / 13m, "spilt", TestShop.Day, "A");
                break;
            case 10:
                StockMovements.DisposePieces(book, lot, 1 + c % 3, "broken", TestShop.Day, "A");
                break;
            case 11:
                ShelfCount.Take(book, [(lot, b % 10), ($"M{bottle}", c * 1.5m)], TestShop.Day, "A");
                break;
            case 12:
                TableSales.TakeBack(book, lot,
                    of => new PiecesReturned
                    {
                        On = TestShop.Day,
                        By = "A",
                        BatchId = of.Id,
                        Returned = 1 + b % 3,
                        BackOnShelf = c % 2,
                        From = "Ann",
                        PaidBack = 5,
                        Reason = "a dent",
                    });
                break;
            case 13:
                Strike(book, snapshot, a, b);
                break;
            case 14:
                Change(book, snapshot, a, b, c);
                break;
            case 16:
                var (workshop, scents) = (shop.Workshop, shop.Workshop.Recipe("scents"));
                Pots.Begin(book, [.. new[] { "Red", "Rosé" }.Skip(b % 2).Select(scents.Variant)
                    .Select(r => (r, FrozenRecipe.Of(workshop, BatchFormula.Of(workshop, r), "us", null)))], TestShop.Day, "A");
                break;
            case 17:
                Pour(book, snapshot, b, c);
                break;
            case 18:
                TableSales.Sell(book,
                    [new("scents", b % 2 == 0 ? "Red" : "rosé", 1 + b % 3, c / 100m, null), new("bar", null, 1, 5, 0.4m)],
                    $"buyer {c % 4}", "cash", TestShop.Day.AddDays(c % 2), "A");
                break;
            default:
                shop.Write("in.csv", $"lot,pieces,to,paid\n{lot},{1 + b % 3},Fairport market,{c}\n{lot},1,Ann,7\n");
                ListImport.ReadFiles(book, [Path.Combine(shop.Folder, "in.csv")], TestShop.Day, "B");
                break;
        }
    }

    private static void Pour(OpenBooks book, ReckonedBooks snapshot, int b, int c)
    {
        if (snapshot.Batches.LastOrDefault(batch => batch.Pot is not null) is not { Pot: { } pot })
            return;
        foreach (var material in Materials)
            Pots.Weigh(book, pot, material, 1 + b / 10m, null, TestShop.Day, "A");
        Production.CloseAll(book, [.. snapshot.BatchesOfPot(pot).Select(batch => batch.Lot)], 2 + b % 3, c % 2, TestShop.Day, "A");
    }

    private static void Strike(OpenBooks book, ReckonedBooks snapshot, int a, int b)
    {
        var list = BookLists.All[a % BookLists.All.Count];
        if (Correcting.All(snapshot.Whole, list) is { Count: > 0 } entries)
            Correcting.Of(book, Shipped.Markets, list, entries[b % entries.Count].Id, new Dictionary<string, string>(), "never happened",
                TestShop.Day,
                "A");
    }

    private static void Change(OpenBooks book, ReckonedBooks snapshot, int a, int b, int c)
    {
        var (list, field, value) = (a % 8) switch
        {
            0 => (BookLists.Receipt, "amount", $"{c * 3 + 1}"),
            1 => (BookLists.Receipt, "material", Materials[c % 3]),
            2 => (BookLists.Weighing, "grams", $"{c + 1}"),
            3 => (BookLists.Weighing, "from", $"M{1 + c % Math.Max(1, snapshot.AllReceipts.Count)}"),
            4 => (BookLists.Sale, "pieces", $"{1 + c % 9}"),
            5 => (BookLists.Sale, "lot", snapshot.AllBatches.Count == 0 ? "x" : snapshot.AllBatches[c % snapshot.AllBatches.Count].Lot),
            6 => (BookLists.Closing, "made", $"{c % 12}"),
            _ => (BookLists.Batch, "lot", new LotCode(TestShop.Day, 20 + c % 5).ToString()),
        };
        if (Correcting.All(snapshot.Whole, list) is { Count: > 0 } entries)
            Correcting.Of(book, Shipped.Markets, list, entries[b % entries.Count].Id, new Dictionary<string, string> { [field] = value },
                "misread",
                TestShop.Day, "A");
    }

    // As it would be written: 0.00 is 0.
    private static string Lines(IEnumerable<IReadOnlyList<object?>> rows) => LabelForge.Records.Spreadsheets.SafeCsv.Write(["row"], rows);

    private static void Agree(TestShop shop)
    {
        var (book, snapshot) = (shop.Book, shop.Book.Read());
        Assert.Empty(book.Check().Differences);
        book.Ask(books =>
        {
            foreach (var batch in snapshot.Batches)
            {
                Assert.Equal(snapshot.PiecesLeft(batch), books.PiecesLeft(batch));
                Assert.Equal(snapshot.WeighedInto(batch).Select(w => w.Id), books.WeighedInto(batch).Select(w => w.Id));
                Assert.Equal(snapshot.SalesOf(batch).Select(s => s.Id), books.SalesOf(batch).Select(s => s.Id));
                Assert.Equal(snapshot.CountsOf(batch).Select(s => s.Id), books.CountsOf(batch).Select(s => s.Id));
                Assert.Equal((batch.Id, batch.Frozen), (books.BatchOf(batch.Lot).Id, books.BatchOf(batch.Lot).Frozen));
                Assert.Equal(snapshot.ClosingOf(batch)?.Id, books.ClosingOf(batch)?.Id);
            }
            foreach (var material in Materials)
                Assert.Equal(snapshot.InStock(material).Select(s => (s.Receipt.Id, s.Left)),
                    books.InStock(material).Select(s => (s.Receipt.Id, s.Left)));
            Assert.Equal(snapshot.OpenBatches().Select(b => b.Id).Order(), books.OpenBatches().Select(b => b.Id).Order());
            for (var day = TestShop.Day.AddDays(-2); day <= TestShop.Day.AddDays(4); day = day.AddDays(1))
            {
                Assert.Equal(snapshot.SalesOn(day).Select(s => s.Id), books.SalesOn(day).Select(s => s.Id));
                Assert.Equal(snapshot.ReturnsOn(day).Select(r => r.Id), books.ReturnsOn(day).Select(r => r.Id));
                Assert.Equal(snapshot.TakingsOn(day).Select(t => t.Id), books.TakingsOn(day).Select(t => t.Id));
                Assert.Equal(snapshot.SoldBetween(TestShop.Day, day), books.SoldBetween(TestShop.Day, day));
                Assert.Equal(snapshot.BatchesOn(day).Select(b => b.Id), books.BatchesOn(day).Select(b => b.Id));
                Assert.Equal(snapshot.PrintingsOn(day).Select(p => p.Id), books.PrintingsOn(day).Select(p => p.Id));
            }
            Assert.Equal((snapshot.LastTicket(), snapshot.LastRun()), (books.LastTicket(), books.LastRun()));
            Assert.Equal(snapshot.LastBuyers(3), books.LastBuyers(3));
            Assert.Equal(snapshot.LastPots(3), books.LastPots(3));
            var (asked, oracle) = (books.HistoryOf("bar", null), snapshot.HistoryOf("bar", null));
            Assert.Equal((oracle.Batches, oracle.Last?.Id, oracle.FirstSale, string.Join(' ', oracle.Complaints.Select(c => c.Id))),
                (asked.Batches, asked.Last?.Id, asked.FirstSale, string.Join(' ', asked.Complaints.Select(c => c.Id))));
            SameAnswers.Lists(shop, snapshot, books);
            SameAnswers.Years(snapshot, books);
            // A list in pages is the list.
            foreach (var list in BookFolder.Lists)
                Assert.Equal(Lines(BookTables.Of(snapshot, list).Rows), Lines(BookTables.InPages(books, list)));
            return 0;
        });
        foreach (var from in snapshot.Receipts.Take(3).Select(r => snapshot.Bottle(r.Id)).Concat(Materials)
            .Concat(snapshot.Batches.Take(3).Select(b => b.Lot)).Concat(snapshot.Sales.Take(2).Select(s => s.To)))
            Assert.Equal(Said(() => LedgerTrace.Of(snapshot, from)), Said(() => Trace.Of(book, from)));
    }

    // One amount is one text: 0.00 is 0.
    private static decimal Plain(decimal amount) => amount / 1.000000000000000000000000000m;

    // What the one does not know the other must not know either.
    private static string Said(Func<Trace> follow)
    {
        try
        {
            return Said(follow());
        }
        catch (InputException e)
        {
            return e.Problem.Wrong;
        }
    }

    private static string Said(Trace trace) => string.Join('\n',
    [
        .. trace.Bottles.Select(b => (b with { Left = Plain(b.Left) }).ToString()).Order(StringComparer.Ordinal),
        .. trace.Uses.Select(u => u.ToString()).Order(StringComparer.Ordinal),
        .. trace.Batches.Select(b => b.ToString()).Order(StringComparer.Ordinal),
        .. trace.Deliveries.Select(d => d.ToString()).Order(StringComparer.Ordinal),
        .. trace.Complaints.Select(c => $"{c.Id}").Order(StringComparer.Ordinal),
    ]);
}
