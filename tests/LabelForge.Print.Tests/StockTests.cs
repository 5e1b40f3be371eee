using LabelForge.Measures;
using LabelForge.Print.Designs;
using LabelForge.Print.Output;
using LabelForge.Print.Sheets;
using UglyToad.PdfPig;

namespace LabelForge.Print.Tests;

public sealed class StockTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("labelforge").FullName;

    public static TheoryData<string> Ids => [.. LabelStock.Known];

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public void Sheets_and_rolls_of_every_common_shape_are_at_hand()
    {
        var all = LabelStock.All.ToList();
        Assert.True(all.Count >= 30);
        Assert.Contains(all, s => s.Kind == StockKind.Roll && s.Shape == StockShape.Round);
        Assert.Contains(all, s => s.PageWidth.Millimetres == 210m && s.LabelWidth == s.LabelHeight && s.Shape == StockShape.Rectangle);
        Assert.Contains(all, s => s.PageWidth.Inches == 8.5m && s.Shape == StockShape.Round && s.LabelWidth != s.LabelHeight);
        Assert.Contains(all, s => s.LabelWidth.Millimetres >= 5 * s.LabelHeight.Millimetres);
    }

    [Fact]
    public void Each_oval_stock_has_a_front_that_nearly_fills_its_label() =>
        Assert.All(LabelStock.All.Where(s => s.Shape == StockShape.Round && s.LabelWidth != s.LabelHeight), stock =>
            Assert.Contains(LabelDesign.Known.Select(id => LabelDesign.Load(id)), d => d.Round && StockFit.Fits(d, stock)
                && d.Width.Millimetres > 0.98m * stock.LabelWidth.Millimetres
                && d.Height.Millimetres > 0.98m * stock.LabelHeight.Millimetres));

    [Theory, MemberData(nameof(Ids))]
    public void A_label_sheet_is_centred_on_its_page(string id)
    {
        var stock = LabelStock.Load(id);
        var (x, y) = stock.CornerOf(stock.PerSheet);
        // Common A4 and US geometries stand up to a quarter of a millimetre off the middle, so
        // that the margins differ by up to half of one.
        Assert.Equal((double)stock.Left.Millimetres, (double)(stock.PageWidth.Millimetres - x.Millimetres - stock.LabelWidth.Millimetres),
            0.51);
        Assert.Equal((double)stock.Top.Millimetres, (double)(stock.PageHeight.Millimetres - y.Millimetres - stock.LabelHeight.Millimetres),
            0.51);
    }

    [Theory]
    [InlineData("us-letter-30-1x2.625in")]
    [InlineData("a4-65-38.1x21.2mm")]
    [InlineData("a4-18-oval-60x40mm")]
    public void A_drawing_of_stock_numbers_every_position_inside_its_label(string id)
    {
        var stock = LabelStock.Load(id);
        var path = Path.Combine(_folder, "stock.pdf");
        PictureFile.Write(path, StockDrawing.Of(stock), new DocumentInfo(id, DateTimeOffset.UnixEpoch));
        using var pdf = PdfDocument.Open(path);
        var page = pdf.GetPage(1);
        Assert.Equal((double)stock.PageWidth.Points, page.Width, 0.13);
        var words = page.GetWords().ToList();
        for (var position = 1; position <= stock.PerSheet; position++)
        {
            var (x, y) = stock.CornerOf(position);
            Assert.Contains(words, w => w.Text == $"{position}"
                && w.BoundingBox.Left > (double)x.Points && w.BoundingBox.Right < (double)(x.Points + stock.LabelWidth.Points)
                && page.Height - w.BoundingBox.Top > (double)y.Points
                && page.Height - w.BoundingBox.Bottom < (double)(y.Points + stock.LabelHeight.Points));
        }
    }

    [Fact]
    public void Own_stock_in_the_workshop_goes_before_the_stock_that_ships()
    {
        Directory.CreateDirectory(Path.Combine(_folder, "stock"));
        Own("us-letter-10-2x4in", Templates.Text("stock/us-letter-10-2x4in.yaml").Replace("left: 0.15625 in", "left: 0.15 in"));
        Own("mine", Templates.Text("stock/us-letter-10-2x4in.yaml"));
        var shelf = StockShelf.Of(_folder);
        Assert.Equal(0.15m, shelf.Load("us-letter-10-2x4in").Left.Inches);
        Assert.Equal((LabelStock.Known.Count + 1, true), (shelf.Ids.Count, shelf.IsOwn("mine")));
    }

    [Theory]
    [InlineData("left: 0.15625 in", "left: 0.15625", "stock/mine.yaml, line 9", "no unit")]
    [InlineData("shape: rectangle", "shape: round", "stock/mine.yaml, line 16", "as wide as high")]
    [InlineData("shape: rectangle", "shape: star", "stock/mine.yaml, line 16", "rectangle, round, oval")]
    [InlineData("columns: 2", "columns: 3", "stock/mine.yaml, line 8", "beyond the sheet")]
    [InlineData("corner:", "korner:", "stock/mine.yaml, line 15", "corner")]
    [InlineData("page width: 8.5 in", "page width: 8.5 mm", "stock/mine.yaml, line 5", "Check the unit")]
    public void Own_stock_that_cannot_be_is_refused_with_its_line(string from, string to, string where, string told)
    {
        Directory.CreateDirectory(Path.Combine(_folder, "stock"));
        Own("mine", Templates.Text("stock/us-letter-10-2x4in.yaml").Replace(from, to));
        var message = Assert.Throws<InputException>(() => StockShelf.Of(_folder).Load("mine")).Message;
        Assert.StartsWith(where, message);
        Assert.Contains(told, message);
    }

    [Fact]
    public void Stock_that_is_not_known_is_answered_with_what_is_near()
    {
        var message = Assert.Throws<InputException>(() => StockShelf.Of(null).Load("us-letter-oval")).Message;
        Assert.Contains("us-letter-18-oval-1.5x2.5in", message);
    }

    [Fact]
    public void A_folder_that_is_not_there_is_told_plainly_and_not_made()
    {
        var path = Path.Combine(_folder, "none", "x.pdf");
        var message = Assert.Throws<InputException>(() => AtomicFile.Write(path, s => s.WriteByte(1))).Message;
        Assert.Contains($"There is no folder {Path.Combine(_folder, "none")}", message);
        Assert.Empty(Directory.GetFileSystemEntries(_folder));
    }

    [Fact]
    public void A_folder_is_not_overwritten_by_a_file() =>
        Assert.Contains("This is a folder", Assert.Throws<InputException>(() => AtomicFile.Write(_folder, s => s.WriteByte(1))).Message);

    private void Own(string id, string text) => File.WriteAllText(Path.Combine(_folder, "stock", id + ".yaml"), text);

    /// <summary>What the French page calls a stock has the same figures, with decimal commas.</summary>
    [Fact]
    public void Every_stock_has_a_French_name_of_the_same_figures() => Assert.All(LabelStock.All, stock =>
    {
        Assert.NotNull(stock.FrenchName);
        Assert.NotEqual(stock.Name, stock.NameIn("fr"));
        Assert.Equal(stock.Name, stock.NameIn("de"));
        Assert.Equal(Figures(stock.Name), Figures(stock.NameIn("fr").Replace(',', '.')));
    });

    private static string[] Figures(string name) =>
        [.. System.Text.RegularExpressions.Regex.Matches(name, "[0-9][0-9./]*").Select(m => m.Value.TrimEnd('.'))];
}
