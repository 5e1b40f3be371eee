using LabelForge.Measures;
using LabelForge.Records.Books;
using Microsoft.EntityFrameworkCore;

namespace LabelForge.Records.Tests.Books;

/// <summary>A form is written into the books once, however often it is sent.</summary>
public class OnceTests
{
    private static Receipt Oil => new() { On = TestShop.Day, By = "A", Material = "castor-oil", Amount = 250, Price = 6 };

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void A_form_sent_twice_is_written_once(bool server)
    {
        using var shop = server ? TestShop.OnServer() : new TestShop();
        StockMovements.Receive(shop.Book.Once("form-1"), Oil);
        Assert.Contains("already", TestShop.Refusal(() => StockMovements.Receive(shop.Book.Once("form-1"), Oil)),
            StringComparison.Ordinal);
        Assert.Single(shop.Book.Read().Receipts);
        StockMovements.Receive(shop.Book.Once("form-2"), Oil);
        Assert.Equal(2, shop.Book.Read().Receipts.Count);
    }

    [Fact]
    public async Task Of_eight_that_send_one_form_at_once_one_is_written()
    {
        using var shop = new TestShop();
        var written = await Task.WhenAll(Enumerable.Range(0, 8).Select(_ => Task.Run(() =>
        {
            try
            {
                StockMovements.Receive(OpenBooks.Open(shop.Folder).Once("form-1"), Oil);
                return 1;
            }
            catch (InputException)
            {
                return 0;
            }
        })));
        Assert.Equal(1, written.Sum());
        Assert.Single(shop.Book.Read().Receipts);
    }

    [Fact]
    public void A_form_that_was_refused_may_be_sent_again()
    {
        using var shop = new TestShop();
        Assert.Throws<InputException>(() => StockMovements.Receive(shop.Book.Once("form-1"),
            new Receipt { On = TestShop.Day, By = "A", Material = "castor-oil", Amount = 0, Price = 6 }));
        StockMovements.Receive(shop.Book.Once("form-1"), Oil);
        Assert.Single(shop.Book.Read().Receipts);
    }

    [Theory]
    [InlineData("DELETE FROM \"OnceKeys\"", false)]
    [InlineData("UPDATE \"OnceKeys\" SET \"Key\" = 'other'", false)]
    [InlineData("DELETE FROM \"Printings\"", false)]
    [InlineData("DELETE FROM \"OnceKeys\"", true)]
    [InlineData("DELETE FROM \"Printings\"", true)]
    public void Neither_the_key_nor_what_was_printed_is_taken_away_again(string sql, bool server)
    {
        using var shop = server ? TestShop.OnServer() : new TestShop();
        StockMovements.Receive(shop.Book.Once("form-1"), Oil);
        PrintedLots.Print(shop.Book,
            [new Printing
            {
                On = TestShop.Day, By = "A", Lot = new LabelForge.Lots.LotCode(TestShop.Day, 1).ToString(), Recipe = "bar",
            Product = "Bar", Labels = 8,
            }]);
        Assert.ThrowsAny<Exception>(() => shop.Book.Write((_, context) => context.Database.ExecuteSqlRaw(sql)));
    }
}
