using LabelForge.Print.Barcodes;
using LabelForge.Records.Books;
using LabelForge.Tags;

namespace LabelForge.Cli.Tests.ProductPapers;

/// <summary>Labels for bottles and bins: what stands on them is what the books say, and their code names the bottle.</summary>
public sealed class TagsTests : IDisposable
{
    private static readonly DateOnly Day = new(2026, 11, 26);

    private readonly ExampleWorkshop _example = new();

    public TagsTests()
    {
        StockMovements.Receive(Book,
            new Receipt
            {
                On = new(2026, 11, 2),
                By = "A",
                Material = "castor-oil",
                Amount = 500,
                Price = 9,
                SupplierLot = "B77",
                BestBefore = new(2027, 5, 1),
            });
        StockMovements.Receive(Book,
            new Receipt { On = new(2026, 11, 3), By = "A", Material = "bramble-fragrance", Amount = 60, Price = 9 });
    }

    private OpenBooks Book => OpenBooks.Open(_example.Opened.Folder);

    public void Dispose() => _example.Dispose();

    [Fact]
    public void A_tag_says_the_number_the_name_when_it_came_and_how_long_it_keeps()
    {
        var tags = Book.Ask(books => BottleTags.Of(_example.Opened, books, [], "bottle", Day));
        Assert.Equal(["M2", "M1"], tags.Select(t => t.Code));
        var words = string.Join(' ', tags[1].Layout.Texts.Select(t => t.Text));
        foreach (var said in new[] { "M1", "Castor", "2026-11-02", "2027-05-01", "B77" })
            Assert.Contains(said, words, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("bottle")]
    [InlineData("bottle-small")]
    public void A_bin_has_a_tag_by_its_material_in_every_size_and_every_size_has_a_stock(string size)
    {
        var tags = Book.Ask(books => BottleTags.Of(_example.Opened, books, ["castor-oil"], size, Day));
        Assert.Equal("castor-oil", Assert.Single(tags).Code);
        Assert.Equal(1, BottleTags.Order(_example.Opened, tags).Plan().Sheets);
    }

    [Fact]
    public void The_command_prints_them_and_refuses_a_bottle_that_is_not_there()
    {
        var path = Path.Combine(_example.Opened.Folder, "tags.pdf");
        var made = CommandRun.Json("tags", "--out", path, "--workshop", _example.Opened.Folder);
        Assert.Equal(2, made.GetProperty("tags").GetArrayLength());
        Assert.True(File.Exists(path));
        Assert.Equal(2, CommandRun.Of("tags", "M9", "--out", path, "--workshop", _example.Opened.Folder).ExitCode);
    }
}
