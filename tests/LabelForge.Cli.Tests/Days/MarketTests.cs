using CsCheck;
using LabelForge.Markets;
using LabelForge.Measures;
using LabelForge.Papers;
using LabelForge.Print.Designs;
using LabelForge.Recipes;
using LabelForge.Records.Books;
using LabelForge.Selling;
using LabelForge.Years;

namespace LabelForge.Cli.Tests.Days;

/// <summary>The table: prices, sales tax, the evening's form, the box, cards; and what a year makes of it.</summary>
public sealed class MarketTests : IDisposable
{
    private static readonly DateOnly Day = new(2026, 11, 28);

    private readonly ExampleWorkshop _example = new();

    public MarketTests()
    {
        File.AppendAllText(Path.Combine(Folder, "workshop.yaml"), "sales tax: { rate: 5.5 %, prices: with tax }\n");
        // All but one have a price.
        var unpriced = Path.Combine(Folder, "recipes/tideline-bar.yaml");
        File.WriteAllText(unpriced, File.ReadAllText(unpriced).Replace("price: 7.00\n", "", StringComparison.Ordinal));
        foreach (var product in Workshop.ProductsOf("meadow-bar").Take(2))
            Make(product, 6);
    }

    private string Folder => _example.Opened.Folder;

    private Workshop Workshop => Workshop.Open(Folder);

    private OpenBooks Book => OpenBooks.Open(Folder);

    public void Dispose() => _example.Dispose();

    private void Make(Product product, int pieces)
    {
        var lot = Book.Ask(books => NextLot.Of(books, Day.AddDays(-7)).ToString());
        Production.Start(Book, FrozenRecipe.Of(Workshop, product.Batch, "us", null), lot, Day.AddDays(-7), "A");
        foreach (var line in product.Batch.Lines)
        {
            if (!Book.Ask(b => b.IsKept(line.Material.Id)))
                StockMovements.Receive(Book,
                    new Receipt { On = Day.AddDays(-9), By = "A", Material = line.Material.Id, Amount = 3000, Price = 31.01m });
            Production.Weigh(Book, lot, line.Material.Id, Math.Round(line.Mass.Grams, 2), null, Day.AddDays(-7), "A");
        }
        Production.Close(Book, lot, pieces, 0, null, Day.AddDays(-7), "A");
    }

    private MarketDay Evening(decimal cash, params TallyRow[] rows) =>
        new TallyForm("Fairport market", [.. rows], 40, 14, cash).Book(Workshop, Book, Day, "A");

    [Fact]
    public void Tax_inside_a_price_and_tax_added_to_it_make_what_is_paid() =>
        Gen.Select(Gen.Int[1, 100_000], Gen.Int[0, 3000]).Sample((cents, rate) =>
        {
            var price = cents / 100m;
            var (paid, tax) = new SalesTax(rate / 100m, true).On(price);
            Assert.Equal(price, paid);
            Assert.InRange(tax - (price - price / (1 + rate / 10_000m)), -0.005m, 0.005m);
            var (more, added) = new SalesTax(rate / 100m, false).On(price);
            Assert.Equal(price, more - added);
            Assert.InRange(added - price * rate / 10_000m, -0.005m, 0.005m);
            Assert.True(tax == Math.Round(tax, 2) && added == Math.Round(added, 2));
        }, iter: 200);

    [Fact]
    public void An_evening_is_booked_row_by_row_and_the_box_held_against_it()
    {
        var day = Evening(54, new TallyRow("Salt Meadow", 4, 1, 6), new TallyRow("Peach Morning", 1, 0, null));
        Assert.Equal((35m, 5, 1), (day.Paid, day.Rows.Sum(r => r.Sold), day.Rows.Sum(r => r.Given)));
        Assert.InRange(day.Tax, 1.81m, 1.83m);
        Assert.Equal((61m, -7m), (day.Expected, day.Difference));
        Assert.Contains("Salt Meadow", day.WorthTheDifference(PriceList.Of(Workshop, Book)));
        Assert.Equal(6, day.Rows.Sum(r => r.Left));
    }

    [Fact]
    public void A_form_that_cannot_stand_writes_nothing_not_even_the_box()
    {
        Assert.Contains("Only 6 of", Assert.Throws<InputException>(() => Evening(0, new TallyRow("Salt Meadow", 7, 0, null))).Message,
            StringComparison.Ordinal);
        Assert.Contains("There is no product", Assert.Throws<InputException>(() => Evening(0, new TallyRow("Nobody", 1, 0, null))).Message,
            StringComparison.Ordinal);
        Assert.Empty(Book.Read().Takings);
        Assert.Single(new TallyForm("x", [new TallyRow("Salt Meadow", 5, 2, 6)], 0, 0, null).Slips());
    }

    [Fact]
    public void What_has_no_price_is_sold_for_no_price_of_ours()
    {
        var products = PriceList.Of(Workshop, Book);
        Assert.Contains("has no price",
            Assert.Throws<InputException>(() => SellAtTable.Bill(Workshop, products, [new Taken("tideline-bar", 1)])).Message,
            StringComparison.Ordinal);
        Assert.Equal(5m, SellAtTable.Bill(Workshop, products, [new Taken("tideline-bar", 1)], 5m).Paid);
    }

    [Fact]
    public void A_sum_agreed_on_is_shared_out_to_the_cent() =>
        Gen.Select(Gen.Int[0, 5000], Gen.Int[1, 9], Gen.Int[1, 9]).Sample((cents, some, others) =>
        {
            var bill = SellAtTable.Bill(Workshop, PriceList.In(_example.Opened, null),
                [new Taken("meadow-bar/Salt Meadow", some), new Taken("bramble-bar", others)], cents / 100m);
            Assert.Equal(cents / 100m, bill.Paid);
            Assert.All(bill.Items, i => Assert.True(i.Item.Paid >= 0 && i.Item.Paid == Math.Round(i.Item.Paid, 2)));
        }, iter: 40);

    [Fact]
    public void The_cost_of_goods_follows_the_pieces_to_the_cent_and_the_year_balances()
    {
        Evening(54, new TallyRow("Salt Meadow", 4, 1, null), new TallyRow("Peach Morning", 2, 0, null));
        var lot = Book.Read().Batches[0].Lot;
        TableSales.TakeBack(Book, lot,
            b => new PiecesReturned
            {
                On = Day,
                By = "A",
                BatchId = b.Id,
                Returned = 1,
                BackOnShelf = 1,
                From = "Fairport market",
                PaidBack = 7,
                Reason = "a gift for nobody",
            });
        StockMovements.DisposePieces(Book, lot, 1, "fell", Day, "A");
        ShelfCount.Take(Book, [("M1", 1000)], Day, "A");
        var snapshot = Book.Read();
        var year = YearBook.Of(snapshot, 2026);
        Assert.Equal(Math.Round(StockValue.Of(snapshot).Whole, 9), Math.Round(year.AtEnd, 9));
        Assert.Equal(0, Math.Round(year.OutOfBalance, 9));
        Assert.Equal(35m, year.Whole.Paid);
        Assert.All(year.Lines, l => Assert.Equal(l.Cost, Math.Round(l.Cost, 2)));
        Assert.Equal(2, year.Waste.Length);
        Assert.Equal((0m, year.AtEnd), (YearBook.Of(snapshot, 2027).Whole.Paid, YearBook.Of(snapshot, 2027).AtStart));
    }

    [Theory]
    [InlineData("price-tag")]
    [InlineData("shelf-sign")]
    [InlineData("ingredient-card")]
    [InlineData("tester-sign")]
    [InlineData("care-card")]
    public void A_card_fits_every_product_and_some_stock(string card)
    {
        var cards = new TableCards(Workshop, MarketBook.Shipped.Find("us").Value!, Day);
        foreach (var product in Workshop.ProductsOf("meadow-bar"))
        {
            var made = cards.Of(card, product);
            Assert.Empty(made.LeftOut);
            Assert.NotNull(cards.StockFor(made.Layout.Design, null));
        }
        if (card is "price-tag" or "shelf-sign")
            Assert.Contains("has no price",
                Assert.Throws<InputException>(() => cards.Of(card, Workshop.ProductOf("tideline-bar"))).Message, StringComparison.Ordinal);
    }

    private static GiftSet Three =>
        new("three", "Three from the hedge",
            [new("meadow-bar/Salt Meadow", 1, 0), new("meadow-bar/Peach Morning", 1, 0), new("bramble-bar", 1, 0)]);

    [Fact]
    public void A_set_says_what_it_holds_in_all_and_the_ingredients_of_each()
    {
        var cards = new TableCards(Workshop, MarketBook.Shipped.Find("us").Value!, Day);
        var set = cards.GiftSet(Three);
        string Said(Role role) => string.Join(' ', set.Fit.OrRefuse().Texts.Where(t => t.Role == role).Select(t => t.Text));
        // 16 CFR 500.28(a): the number of each, what each holds, and the total last.
        Assert.Equal("1 Salt Meadow, 1 Peach Morning, 1 Bramble & Shea, Net Wt 4 oz (113 g) each; Total: 3 pieces, Net Wt 12 oz (340 g)",
            Said(Role.NetQuantity));
        Assert.All((string[])["Salt Meadow: Glycerin", "Peach Morning: Glycerin", "Bramble & Shea: Glycerin"],
            named => Assert.Contains(named, Said(Role.Ingredients), StringComparison.Ordinal));
        Assert.NotEmpty(Said(Role.Warnings));
        Assert.Contains("at least two",
            Assert.Throws<InputException>(() => cards.GiftSet(new GiftSet("One", "One", [new SetItem("bramble-bar", 1, 0)]))).Message,
            StringComparison.Ordinal);
    }

    [Fact]
    public void An_ingredient_card_says_what_its_supplier_says_of_allergens_and_what_nobody_says()
    {
        var bramble = Workshop.ProductOf("bramble-bar");
        Assert.Contains("by its supplier: ", TableCards.Allergens([bramble], PaperWords.English), StringComparison.Ordinal);
        var path = Path.Combine(Folder, "materials/bramble-fragrance.yaml");
        File.WriteAllText(path,
            string.Join('\n',
                File.ReadAllLines(path)
                    .Where(l => !l.StartsWith("allergens", StringComparison.Ordinal) && !l.StartsWith("  ", StringComparison.Ordinal))));
        Assert.Contains("No allergen sheet is at hand", TableCards.Allergens([Workshop.ProductOf("bramble-bar")], PaperWords.English),
            StringComparison.Ordinal);
    }

    [Fact]
    public void What_sold_is_poured_again_in_whole_batches_within_the_budget()
    {
        Evening(0, new TallyRow("Salt Meadow", 6, 0, null), new TallyRow("Peach Morning", 1, 0, null));
        var next = NextPour.Of(Workshop, Book.Read(), Day);
        Assert.Equal([("meadow-bar/Salt Meadow", 6, 42m), ("meadow-bar/Peach Morning", 0, 0m)],
            next.Rows.Select(r => (r.Product.Name, r.Pour, r.Money ?? 0)));
        Assert.Null(next.WhyNot);
        Assert.Equal(0, NextPour.Of(Workshop, Book.Read(), Day, budget: 0.01m).Rows[0].WithinBudget * (next.Buy!.Cents > 1 ? 1 : 0));
        Assert.Empty(NextPour.Of(Workshop, Book.Read(), Day.AddDays(60)).Rows);
    }
}
