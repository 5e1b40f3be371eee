using LabelForge.Lots;
using LabelForge.Recipes;
using LabelForge.Records.Books;

namespace LabelForge.Records.Tests.Books;

/// <summary>What a market day leaves in the books: sales by product, returns, counts, packaging used up, the box.</summary>
public sealed class DayEntryTests : IDisposable
{
    private static readonly string First = new LotCode(TestShop.Day, 1).ToString();
    private static readonly string Second = new LotCode(TestShop.Day, 2).ToString();

    private readonly TestShop _shop = new();

    public DayEntryTests()
    {
        _shop.Stock();
        _shop.Finish(First);
        _shop.Finish(Second);
    }

    public void Dispose() => _shop.Dispose();

    private ReckonedBooks Books => _shop.Book.Read();

    private IReadOnlyList<Sale> Sell(int pieces, decimal paid, decimal? tax = null) =>
        TableSales.Sell(_shop.Book, [new SoldItem("bar", null, pieces, paid, tax)], "Fairport market", "cash", TestShop.Day, "A");

    [Fact]
    public void The_oldest_lot_is_sold_first_and_a_sum_over_two_lots_is_shared_to_the_cent()
    {
        var sales = Sell(11, 76.99m, 4.01m);
        Assert.Equal([(8, First), (3, Second)], sales.Select(s => (s.Pieces, Books.Batches.First(b => b.Id == s.BatchId).Lot)));
        Assert.Equal((76.99m, 4.01m), (sales.Sum(s => s.Paid), sales.Sum(s => s.Tax)));
        Assert.Single(sales.Select(s => s.Ticket).Distinct());
        Assert.Equal(5, TableSales.Left(Books, "bar", null));
    }

    [Fact]
    public void More_than_there_is_is_not_sold_and_nothing_is_written()
    {
        Assert.Contains("Only 16 of bar are in the house, not 17", TestShop.Refusal(() => Sell(17, 119)), StringComparison.Ordinal);
        Assert.Empty(Books.Sales);
    }

    [Fact]
    public void One_go_is_undone_as_a_whole_and_the_next_gets_a_ticket_of_its_own()
    {
        var sales = Sell(11, 77);
        TableSales.Undo(_shop.Book, sales[0].Ticket!, "the wrong bar", TestShop.Day, "A");
        Assert.Empty(Books.Sales);
        Assert.Equal(16, TableSales.Left(Books, "bar", null));
        Assert.NotEqual(sales[0].Ticket, Sell(1, 7)[0].Ticket);
        Assert.Contains("No sale has the ticket",
            TestShop.Refusal(() => TableSales.Undo(_shop.Book, sales[0].Ticket!, "again", TestShop.Day, "A")), StringComparison.Ordinal);
    }

    [Fact]
    public void What_comes_back_is_on_the_shelf_again_only_where_it_can_be_sold()
    {
        Sell(3, 21);
        TableSales.TakeBack(_shop.Book, First, b => Returned(b, 2, 1));
        Assert.Equal(6, Books.PiecesLeft(Books.BatchOf(First)));
        Assert.Contains("more of lot", TestShop.Refusal(() => TableSales.TakeBack(_shop.Book, First, b => Returned(b, 2, 0))),
            StringComparison.Ordinal);
        Assert.Contains("cannot be back on the shelf",
            TestShop.Refusal(() => TableSales.TakeBack(_shop.Book, First, b => Returned(b, 1, 2))), StringComparison.Ordinal);
    }

    [Fact]
    public void A_count_holds_from_then_on_and_one_that_agrees_is_no_entry()
    {
        var counts = ShelfCount.Take(_shop.Book, [(First, 7), (Second, 8), ("M1", 8196m)], TestShop.Day, "A");
        Assert.Equal([-1m, -4m], counts.Select(c => c.Difference));
        Assert.Equal((7, 8196m), (Books.PiecesLeft(Books.BatchOf(First)), Books.Left(Books.ReceiptOf(1))));
        Assert.Empty(ShelfCount.Take(_shop.Book, [(First, 7)], TestShop.Day, "A"));
        Correcting.Of(_shop.Book, Shipped.Markets, BookLists.Count, counts[0].Id, new Dictionary<string, string>(),
            "it lay behind the box", TestShop.Day,
            "A");
        Assert.Equal(8, Books.PiecesLeft(Books.BatchOf(First)));
    }

    [Fact]
    public void Bags_used_up_leave_the_stock_and_never_more_than_there_are()
    {
        _shop.Receive("bag", 10, 0.60m);
        var bags = Books.Receipts[^1];
        void Use(decimal pieces) =>
        _shop.Book
            .Write((snapshot,
                context) => context.PackingUses
                    .Add(new PackingUse
                    {
                        On = TestShop.Day,
                        By = "A",
                        BatchId = snapshot.BatchOf(First).Id,
                        ReceiptId = bags.Id,
                        Used = pieces,
                    }));
        Use(8);
        Assert.Equal(2, Books.Left(bags));
        Assert.Contains("less than nothing", TestShop.Refusal(() => Use(3)), StringComparison.Ordinal);
        Assert.Contains("would be struck",
            TestShop.Refusal(() => Correcting.Of(_shop.Book, Shipped.Markets, BookLists.Receipt, bags.Id,
                new Dictionary<string, string>(), "wrong",
                TestShop.Day, "A")), StringComparison.Ordinal);
    }

    [Fact]
    public void Books_of_a_market_day_are_read_back_from_their_lists_as_they_were()
    {
        Sell(3, 21, 1.09m);
        TableSales.TakeBack(_shop.Book, First, b => Returned(b, 1, 1));
        ShelfCount.Take(_shop.Book, [(Second, 9)], TestShop.Day, "A");
        _shop.Book
            .Write((_,
                context) => context.Takings
                    .Add(new Takings { On = TestShop.Day, By = "A", Place = "Fairport market", Float = 40, Cash = 54, Card = 7 }));
        using var other = new TestShop();
        string[] lists = [.. BookLists.All, BookLists.Correction];
        string Csv(ReckonedBooks of, string list) =>
        LabelForge.Records.Spreadsheets.SafeCsv.Write(BookTables.Of(of, list).Heading, BookTables.Of(of, list).Rows);
        BookFolder.Write(Books, other.Folder);
        ListImport.ReadFiles(other.Book, [.. lists.Select(l => Path.Combine(other.Folder, $"{l}.csv"))], TestShop.Day, "B");
        foreach (var list in lists)
            Assert.Equal(Csv(Books, list), Csv(other.Book.Read(), list));
    }

    [Fact]
    public void A_pots_number_is_no_lots()
    {
        var pot = NextLot.Of(Books, TestShop.Day).ToString();
        var frozen = Books.Batches[0].Frozen;
        _shop.Book
            .Write((_,
                context) => context.Batches
                    .Add(new Batch
                    {
                        On = TestShop.Day,
                        By = "A",
                        Lot = new LotCode(TestShop.Day, 4).ToString(),
                        Pot = pot,
                        Recipe = "bar",
                        Product = "Bar",
                        Frozen = frozen,
                        PiecesPlanned = 8,
                    }));
        Assert.Equal(new LotCode(TestShop.Day, 5), NextLot.Of(Books, TestShop.Day));
        Assert.Single(Books.BatchesOfPot(pot));
    }

    private static PiecesReturned Returned(Batch batch, int pieces, int back) => new()
    {
        On = TestShop.Day,
        By = "A",
        BatchId = batch.Id,
        Returned = pieces,
        BackOnShelf = back,
        From = "a buyer",
        PaidBack = 7m * pieces,
        Payment = "cash",
        Reason = "a dent",
    };
}
