using LabelForge.Lots;
using LabelForge.Recipes;
using LabelForge.Records.Books;

namespace LabelForge.Records.Tests.Books;

/// <summary>Labels that were printed before their batch bind the lot to their product.</summary>
public sealed class PrintedLotTests : IDisposable
{
    private static readonly string Lot = new LotCode(TestShop.Day, 1).ToString();

    private readonly TestShop _shop = new();

    public PrintedLotTests()
    {
        _shop.Stock();
        _shop.Write("recipes/balm.yaml",
            "name: Balm\nidentity: Body balm\nproduct: lip-balm\nmaterials: [ { use: castor-oil, amount: 90 g } ]\npieces: 3\n");
        _shop.Write("recipes/range.yaml",
            "name: Range\nidentity: Glycerin bar soap\nproduct: soap-bar\nmaterials:\n  - { use: base, amount: 900 g }\n  - { use: scent, "
                + "amount: 18 g }\npieces: 8\nvariants:\n  - name: Plain\n    leave out: [ scent ]\n  - name: Scented\n");
    }

    public void Dispose() => _shop.Dispose();

    private Printing Print(string recipe, string? variant = null, string? lot = null) => PrintedLots.Print(_shop.Book,
        [new Printing
        {
            On = TestShop.Day, By = "A", Lot = lot ?? Lot, Recipe = recipe, Variant = variant, Product = variant ?? recipe, Labels = 8,
        }])[0];

    private Recipe Recipe(string id) => _shop.Workshop.Recipe(id);

    [Fact]
    public void Another_products_labels_are_not_printed_with_it()
    {
        Print("bar");
        Print("bar");
        Assert.Contains("Labels of bar were printed with the lot", TestShop.Refusal(() => Print("balm")), StringComparison.Ordinal);
        Assert.Equal(2, _shop.Book.Read().Printings.Count);
    }

    [Fact]
    public void Another_products_batch_does_not_get_it_and_its_own_does()
    {
        Print("balm");
        Assert.Contains("Labels of balm", TestShop.Refusal(() => _shop.Start(Lot)), StringComparison.Ordinal);
        Assert.Empty(_shop.Book.Read().Batches);
        var own = new LotCode(TestShop.Day, 2).ToString();
        Print("bar", lot: own);
        Assert.Equal(own, _shop.Start(own));
    }

    [Fact]
    public void Labels_of_a_batch_are_of_its_product()
    {
        _shop.Start(Lot);
        Assert.Contains("cannot be Bar", TestShop.Refusal(() => Print("balm")), StringComparison.Ordinal);
        Print("bar");
    }

    [Fact]
    public void One_scent_of_a_recipe_does_not_get_the_lot_of_another()
    {
        Print("range", "Plain");
        Assert.Contains("Labels of Plain", TestShop.Refusal(() => Print("range", "Scented")), StringComparison.Ordinal);
        var workshop = _shop.Workshop;
        Assert.Throws<LabelForge.Measures.InputException>(() => LotProducts.Of(workshop.ProductOf("range/Scented"),
            LotCode.Parse(Lot).Value, LabelForge.Markets.MarketBook.Shipped.Find("us").Value!, TestShop.Day));
        // Of all that the recipe makes, the lot is the one's that its labels say.
        Assert.Equal("Plain", Assert.Single(PrintedLots.Of(_shop.Book.Read(), Lot, workshop.ProductsOf("range"))).Recipe.VariantName);
    }

    [Fact]
    public void The_next_lot_of_the_day_is_one_that_no_label_was_printed_with_or_the_one_that_waits_for_this_product()
    {
        Print("balm");
        var snapshot = _shop.Book.Read();
        Assert.Equal(2, NextLot.Of(snapshot, TestShop.Day).Batch);
        Assert.Equal(2, NextLot.Of(snapshot, TestShop.Day, Recipe("bar")).Batch);
        Assert.Equal(1, NextLot.Of(snapshot, TestShop.Day, Recipe("balm")).Batch);
    }

    [Fact]
    public void A_printing_that_is_struck_sets_the_lot_free()
    {
        var printed = Print("balm");
        Correcting.Of(_shop.Book, Shipped.Markets, BookLists.Printing, printed.Id, new Dictionary<string, string>(), "thrown away",
            TestShop.Day, "A");
        Assert.Equal(Lot, _shop.Start(Lot));
    }

    [Fact]
    public void The_list_of_printings_is_written_and_read_back()
    {
        Print("range", "Plain");
        var (heading, rows) = BookTables.Of(_shop.Book.Read(), BookLists.Printing);
        var path = Path.Combine(_shop.Folder, "printing.csv");
        File.WriteAllText(path, LabelForge.Records.Spreadsheets.SafeCsv.Write(heading, rows));
        Assert.Equal((0, 1), ListImport.ReadFiles(_shop.Book, [path], TestShop.Day, "A"));
    }
}
