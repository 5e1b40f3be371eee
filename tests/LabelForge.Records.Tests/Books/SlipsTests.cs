using LabelForge.Measures;
using LabelForge.Recipes;
using LabelForge.Records.Books;

namespace LabelForge.Records.Tests.Books;

/// <summary>What looks like a slip is asked about before it is written; what is usual is not.</summary>
public sealed class SlipsTests : IDisposable
{
    private const string Lot = "26R02-01X";
    private readonly TestShop _shop = new();

    public SlipsTests()
    {
        _shop.Stock();
        _shop.Start(Lot);
    }

    // The recipe plans 18 g of scent and 900 g of base.
    [Theory]
    [InlineData("scent", 18, null)]
    [InlineData("scent", 18.9, null)]
    [InlineData("scent", 9, null)]
    [InlineData("scent", 180, "180 g where 18 g was planned?")]
    [InlineData("scent", 54, "54 g where 18 g was planned?")]
    [InlineData("scent", 1.8, "1.8 g where 18 g was planned: a tenth?")]
    [InlineData("base", 90, "90 g where 900 g was planned: a tenth?")]
    [InlineData("base", 9000, "9000 g where 900 g was planned?")]
    public void Ten_times_the_plan_and_a_tenth_of_it_are_asked_about(string material, decimal grams, string? asked) =>
        Assert.Equal(asked is null ? [] : [asked],
            Asked(Slips.OfWeighing(_shop.Book.Read(), Lot, material, grams, null, TestShop.Day, TestShop.Day)));

    [Fact]
    public void What_is_in_already_counts()
    {
        Production.Weigh(_shop.Book, Lot, "scent", 18, null, TestShop.Day, "A");
        Assert.Equal(["36 g where 18 g was planned and 18 g is in already?"],
            Asked(Slips.OfWeighing(_shop.Book.Read(), Lot, "scent", 36, null, TestShop.Day, TestShop.Day)));
        Assert.Empty(Asked(Slips.OfWeighing(_shop.Book.Read(), Lot, "scent", 1, null, TestShop.Day, TestShop.Day)));
    }

    [Fact]
    public void More_than_the_bottle_holds_is_asked_about()
    {
        var small = _shop.Receive("scent", 5, 1);
        Assert.Equal([$"17 g out of M{small.Id}, which holds 5 g?"],
            Asked(Slips.OfWeighing(_shop.Book.Read(), Lot, "scent", 17, small.Id, TestShop.Day, TestShop.Day)));
        Assert.Empty(Asked(Slips.OfWeighing(_shop.Book.Read(), Lot, "scent", 5, small.Id, TestShop.Day, TestShop.Day)));
    }

    [Theory]
    [InlineData(0, null)]
    [InlineData(1, null)]
    [InlineData(2, "which is yet to come?")]
    [InlineData(365, "which is yet to come?")]
    public void A_receipt_dated_in_the_future_is_asked_about_and_the_other_side_of_midnight_is_not(int days, string? asked)
    {
        var questions = Asked(Slips.OfReceipt(Received(1000, TestShop.Day.AddDays(days)), Base, TestShop.Day));
        if (asked is null)
            Assert.Empty(questions);
        else
            Assert.EndsWith(asked, Assert.Single(questions), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(500_000, null)]
    [InlineData(131_000_000, "131 tonnes of Base?")]
    [InlineData(600_000, "600 kg of Base?")]
    public void More_than_one_person_carries_in_is_asked_about(decimal grams, string? asked) =>
        Assert.Equal(asked is null ? [] : [asked], Asked(Slips.OfReceipt(Received(grams, TestShop.Day), Base, TestShop.Day)));

    [Fact]
    public void A_batch_of_tonnes_is_asked_about() =>
        Assert.Equal(["A batch of 131 tonnes?"], Asked(Slips.OfBatch(131_000_000, 8, TestShop.Day, TestShop.Day)));

    [Fact]
    public void A_sale_before_its_batch_and_before_it_was_finished_is_asked_about()
    {
        Assert.Contains("before lot 26R02-01X was begun",
            Assert.Single(Asked(Slips.OfPiecesOut(_shop.Book.Read(), Lot, TestShop.Day.AddDays(-1), TestShop.Day))));
        Assert.Empty(Asked(Slips.OfPiecesOut(_shop.Book.Read(), Lot, TestShop.Day, TestShop.Day)));
    }

    [Fact]
    public void Three_times_the_pieces_planned_are_asked_about()
    {
        Assert.Equal(["80 pieces where 8 were planned?"], Asked(Slips.OfClosing(_shop.Book.Read(), Lot, 80, TestShop.Day, TestShop.Day)));
        Assert.Empty(Asked(Slips.OfClosing(_shop.Book.Read(), Lot, 8, TestShop.Day, TestShop.Day)));
    }

    [Fact]
    public void What_looks_like_a_slip_is_asked_in_the_language_of_the_page() =>
        Assert.Equal("80 pièces là où 8 étaient prévues ?", Assert.Single(
            Slips.OfClosing(_shop.Book.Read(), Lot, 80, TestShop.Day, TestShop.Day)).In(ProblemWords.Page("fr")).Wrong);

    public void Dispose() => _shop.Dispose();

    private static string[] Asked(IEnumerable<Problem> slips) => [.. slips.Select(s => s.Wrong)];

    private Material Base => _shop.Workshop.Material("base", "test", 0);

    private static Receipt Received(decimal grams, DateOnly on) =>
        new() { On = on, By = "A", Material = "base", Amount = grams, Price = 1 };
}
