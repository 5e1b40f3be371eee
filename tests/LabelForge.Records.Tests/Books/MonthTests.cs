using LabelForge.Lots;
using LabelForge.Measures;
using LabelForge.Recipes;
using LabelForge.Records.Books;
using LabelForge.Records.Money;
using LabelForge.Records.Spreadsheets;
using Trace = LabelForge.Records.Tracing.Trace;

namespace LabelForge.Records.Tests.Books;

public class MonthTests
{
    /// <summary>40 batches, 300 sales, mistakes and corrections; beside them a plain tally kept by hand.</summary>
    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void A_month_of_a_makers_life_leaves_books_that_balance_to_the_gram_and_the_cent(bool server)
    {
        using var shop = server ? TestShop.OnServer() : new TestShop();
        var random = new Random(6);
        var book = shop.Book;
        var stock = new Dictionary<string, decimal> { ["base"] = 0, ["castor-oil"] = 0, ["scent"] = 0 };
        var pieces = new Dictionary<string, int>();
        var (money, spent) = (0m, 0m);

        void Buy(string material, decimal grams, decimal price)
        {
            shop.Receive(material, grams, price, TestShop.Day.AddDays(random.Next(30, 900)));
            stock[material] += grams;
            spent += price;
        }

        var sales = 0;
        for (var i = 0; i < 40; i++)
        {
            if (i % 8 == 0)
            {
                Buy("base", 9_071.8474m, 47.00m);
                Buy("castor-oil", 454.249414m, 9.50m);
                Buy("scent", 250.5m, 31.25m);
            }
            var lot = new LotCode(TestShop.Day.AddDays(i / 2), 1 + i % 2).ToString();
            shop.Start(lot);
            foreach (var (material, planned) in new[] { ("base", 900m), ("castor-oil", 27m), ("scent", 18m) })
            {
                var grams = planned + random.Next(-50, 50) / 10m * planned / 900m;
                var written = Production.Weigh(book, lot, material, grams, null, TestShop.Day, "A");
                if (random.Next(5) == 0)
                {
                    // A slip of the pen: the last part was a gram less.
                    var last = written[^1];
                    if (last.Grams > 1)
                    {
                        Correcting.Of(book, Shipped.Markets, "weighing", last.Id,
                            new Dictionary<string, string>
                            {
                                ["grams"] = (last.Grams - 1).ToString(System.Globalization.CultureInfo.InvariantCulture),
                            }, "misread", TestShop.Day, "A");
                        grams -= 1;
                    }
                }
                stock[material] -= grams;
            }
            var rejected = random.Next(2);
            Production.Close(book, lot, 8, rejected, 905m, TestShop.Day, "A");
            pieces[lot] = 8 - rejected;
            while (sales < 300 * (i + 1) / 40)
            {
                sales++;
                var from = pieces.Where(p => p.Value > 0).Select(p => p.Key).FirstOrDefault();
                if (from is null)
                {
                    Assert.Contains("less than nothing",
                        TestShop.Refusal(() => StockMovements.Sell(book, lot, 1, "too much", 7, TestShop.Day, "A")));
                    continue;
                }
                var paid = random.Next(10) == 0 ? 0 : 6.95m;
                var sale = StockMovements.Sell(book, from, 1, $"buyer {sales}", paid, TestShop.Day, "A");
                if (random.Next(12) == 0)
                {
                    Correcting.Of(book, Shipped.Markets, "sale", sale.Id, new Dictionary<string, string> { ["paid"] = "5.05", ["to"] = "=someone" },
                        "wrong price", TestShop.Day, "A");
                    paid = 5.05m;
                }
                pieces[from]--;
                money += paid;
            }
        }

        var snapshot = book.Read();
        foreach (var (material, left) in stock)
            Assert.Equal(left, snapshot.Receipts.Where(r => r.Material == material).Sum(snapshot.Left));
        foreach (var (lot, left) in pieces)
            Assert.Equal(left, snapshot.PiecesLeft(snapshot.BatchOf(lot)));
        Assert.Equal(money, snapshot.Sales.Sum(s => s.Paid));
        Assert.Equal(spent, snapshot.Receipts.Sum(r => r.Price));
        Assert.InRange(snapshot.Sales.Count, 270, 300);
        Assert.NotEmpty(snapshot.Corrections);
        BooksInvariants.Check(snapshot.Whole);

        // Every cent paid for materials is in a batch or still on the shelf.
        var inBatches = snapshot.Batches.Sum(b => CostSheet.Of(shop.Workshop, b, CostsFile.None, snapshot).Batch);
        var onTheShelf = snapshot.Receipts.Sum(r => r.Price * snapshot.Left(r) / r.Amount);
        Assert.Equal(spent, Math.Round(inBatches + onTheShelf, 12));
        // Each piece that left is found from the material lots, once.
        Assert.Equal(snapshot.Sales.Count, Trace.Of(book, "base").Deliveries.Count);
        Assert.Equal(Trace.Of(book, "castor-oil").Deliveries.Sum(d => d.Pieces), snapshot.Sales.Sum(s => s.Pieces));

        // All lists written, and read back into books that are new, say the same.
        using var other = server ? TestShop.OnServer() : new TestShop();
        var lists = (string[])[.. BookLists.All, BookLists.Correction];
        string Csv(ReckonedBooks of, string list) => SafeCsv.Write(BookTables.Of(of, list).Heading, BookTables.Of(of, list).Rows);
        BookFolder.Write(snapshot, other.Folder);
        string[] files = [.. lists.Select(l => Path.Combine(other.Folder, $"{l}.csv"))];
        var (added, known) = ListImport.ReadFiles(other.Book, files, TestShop.Day, "B");
        Assert.Equal((snapshot.Corrections.Count + BookLists.All.Sum(l => Correcting.All(snapshot.Whole, l).Count), 0), (added, known));
        foreach (var list in lists)
            Assert.Equal(Csv(snapshot, list), Csv(other.Book.Read(), list));
        // A second time nothing is new; and what is written next gets a new number.
        Assert.Equal((0, added), ListImport.ReadFiles(other.Book, files, TestShop.Day, "B"));
        Assert.Equal(snapshot.AllReceipts[^1].Id + 1, other.Receive("base", 1, 1).Id);
    }
}
