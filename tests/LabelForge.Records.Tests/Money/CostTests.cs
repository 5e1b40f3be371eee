using LabelForge.Measures;
using LabelForge.Records.Books;
using LabelForge.Records.Money;
using LabelForge.Records.Tests.Books;

namespace LabelForge.Records.Tests.Money;

public class CostTests : IDisposable
{
    private static readonly CostsFile Costs = new(20, 60, 4, 0.10m, 0.05m, 0.30m, 0.5m, [("bag", 1)]);
    private readonly TestShop _shop = new();

    public void Dispose() => _shop.Dispose();

    // By hand, for 8 pieces at the dearest packs: base 900 g at 0.014 = 12.60; oil 27 g at 6.00/240 g = 0.675;
    // scent 18 g at 0.15 = 2.70; bags 8 at 0.06 = 0.48; labels 0.80; work 20.00; overhead 4.00: 41.255.
    [Fact]
    public void A_planned_batch_costs_what_its_packs_cost()
    {
        var sheet = Plan();
        Assert.Equal(41.255m, sheet.Batch);
        Assert.Equal(41.255m / 8, sheet.Piece);
    }

    // Price: (5.156875 + 0.30) / (1 - 0.05 - 0.5) = 12.1264, up to the cent.
    [Fact]
    public void A_price_leaves_the_wanted_margin_after_fees()
    {
        var sheet = Plan();
        Assert.Equal(12.13m, sheet.Price(0.5m));
        var profit = 12.13m * 0.95m - 0.30m - sheet.Piece;
        Assert.InRange(profit / 12.13m, 0.5m, 0.501m);
        Assert.Contains("whole price", TestShop.Refusal(() => sheet.Price(0.96m)));
    }

    // At 5.00 a piece leaves 5 * 0.95 - 0.30 - 17.255 / 8 = 2.293; 24 / 2.293 = 10.5.
    [Fact]
    public void Work_and_overhead_are_paid_after_so_many_pieces()
    {
        Assert.Equal(11, Plan().BreakEven(5));
        Assert.Null(Plan().BreakEven(2));
    }

    [Fact]
    public void What_matters_most_stands_first()
    {
        var tornado = Plan().Tornado(0.1m);
        Assert.Equal("pieces that come out", tornado[0].What);
        Assert.Equal("work", tornado[1].What);
        Assert.Equal((41.255m - 2) / 8, tornado[1].Low);
        Assert.All(tornado.Zip(tornado.Skip(1)), p => Assert.True(p.First.High - p.First.Low >= p.Second.High - p.Second.Low));
    }

    [Fact]
    public void A_finished_batch_costs_what_was_paid_for_the_lots_really_used()
    {
        _shop.Receive("base", 500, 10, TestShop.Day.AddDays(3));
        _shop.Receive("base", 1000, 12);
        _shop.Receive("castor-oil", 270, 2.70m);
        _shop.Receive("scent", 180, 18);
        var lot = _shop.Finish("26R02-01X", made: 8, rejected: 2);
        var snapshot = _shop.Book.Read();
        var sheet = CostSheet.Of(_shop.Workshop, snapshot.BatchOf(lot), CostsFile.None, snapshot);
        // 500 g at 0.02, 400 g at 0.012, 27 g at 0.01, 18 g at 0.1; six good pieces bear it.
        Assert.Equal(10 + 4.8m + 0.27m + 1.8m, sheet.Batch);
        Assert.Equal(16.87m / 6, sheet.Piece);
    }

    [Theory]
    [InlineData("wage: 20\nminutes: 90\nfee share: 3 %\nfee each: 0.30\npackaging: [ { use: bag, count: 2 } ]\n", null)]
    [InlineData("wage: 9,50\n", "costs.yaml, line 1")]
    [InlineData("wages: 20\n", "wage")]
    [InlineData("margin: 50\n", "percentage")]
    [InlineData("wage: 1\npackaging: [ { use: bagg } ]\n", "line 2")]
    public void The_file_of_other_costs_is_read_or_refused_with_its_line(string text, string? says)
    {
        File.WriteAllText(Path.Combine(_shop.Folder, "costs.yaml"), text);
        if (says is null)
            Assert.Equal((20m, 0.03m, 2m),
                (CostsFile.Of(_shop.Workshop).Wage, CostsFile.Of(_shop.Workshop).FeeShare,
                    CostsFile.Of(_shop.Workshop).Packaging[0].Count));
        else
            Assert.Contains(says, TestShop.Refusal(() => CostsFile.Of(_shop.Workshop)));
    }

    private CostSheet Plan() =>
        CostSheet.Of(_shop.Workshop, BatchSize.ToPieces(_shop.Workshop, _shop.Workshop.Recipe("bar"), 8), Costs, null);
}
