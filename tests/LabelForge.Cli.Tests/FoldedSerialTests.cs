using LabelForge.Lots;
using LabelForge.Markets;
using LabelForge.Print.Jobs;
using LabelForge.Print.Sheets;
using LabelForge.Recipes;

namespace LabelForge.Cli.Tests;

/// <summary>Numbered labels on designs whose back is folded over an edge, and so stands upside down on the flat label.</summary>
public sealed class FoldedSerialTests : IDisposable
{
    private readonly ExampleWorkshop _example = new();

    [Theory]
    [InlineData("bar-2x4")]
    [InlineData("bag-seal-fold")]
    [InlineData("hang-tag-fold")]
    public void Every_number_has_a_barcode_of_its_own_where_the_common_part_has_none(string design)
    {
        var on = new DateOnly(2026, 11, 25);
        var lot = LotCode.Parse("26R25-01E").Value;
        var recipe = _example.Opened.Recipe("bath-salt");
        var product = Product.AllOf(_example.Opened, recipe)[0];
        var job = LabelJob.Prepare(product, MarketBook.Shipped.Find("us").Value!, design, lot, on);
        var labels = SerialLabels.Prepare(job, lot, SerialNumbers.Parse("1..3").Value!);
        var (first, second) = (labels.Part(0), labels.Part(1));
        Assert.NotNull(first.Symbol);
        Assert.NotEqual(first.Symbol.Picture.Bits, second.Symbol!.Picture.Bits);
        // What is drawn for one number lies where the stand-in lay, to a hundredth of a point.
        var standIn = labels.Sample.Bars.Except(labels.Common.Bars).ToArray();
        Assert.Equal(standIn.Min(b => b.X), first.Symbol.X, 2);
        Assert.Equal(standIn.Max(b => b.Y + b.Height), first.Symbol.Y + first.Symbol.Height, 2);
    }

    // Too wide for a band's edge, a linear code stands there turned by a quarter.
    [Fact]
    public void Every_number_has_its_barcode_where_that_had_to_be_turned()
    {
        var file = Path.Combine(_example.Opened.Folder, "workshop.yaml");
        File.WriteAllText(file,
            File.ReadAllText(file).Replace("types: bookish", "types: bookish, code: code128", StringComparison.Ordinal));
        var workshop = Shipped.Open(_example.Opened.Folder);
        var lot = LotCode.Parse("26R25-01E").Value;
        var job = LabelJob.Prepare(Product.AllOf(workshop, workshop.Recipe("bramble-bar"))[0], MarketBook.Shipped.Find("us").Value!,
            "bar-band", lot, new DateOnly(2026, 11, 25));
        var labels = SerialLabels.Prepare(job, lot, SerialNumbers.Parse("1..3").Value!);
        Assert.Equal(1, labels.Part(0).Symbol?.Quarters);
        Assert.Empty(labels.Common.Bars);
    }

    // A design two inches wide lies down on labels that are wider than high: what is each label's own lies down with it.
    [Fact]
    public void Each_number_lies_down_with_its_label_where_the_stock_wants_it()
    {
        var on = new DateOnly(2026, 11, 25);
        var lot = LotCode.Parse("26R25-01E").Value;
        var product = Product.AllOf(_example.Opened, _example.Opened.Recipe("bath-salt"))[0];
        var job = LabelJob.Prepare(product, MarketBook.Shipped.Find("us").Value!, "bar-back-2x2.625", lot, on);
        var labels = SerialLabels.Prepare(job, lot, SerialNumbers.Parse("1..3").Value!);
        var (lying, upright) = (Strokes(labels, Turned(labels, StockFit.Turns)),
            Strokes(labels, Turned(labels, (d, s) => !StockFit.Turns(d, s))));
        Assert.All(lying, l => Assert.True(l.Down > l.Along, "the number does not lie"));
        Assert.All(upright, l => Assert.True(l.Along > l.Down, "the number does not stand"));
    }

    private static LabelStock Turned(SerialLabels labels, Func<LabelForge.Print.Designs.LabelDesign, LabelStock, bool> does) =>
        LabelStock.All.First(s => s.Shape == StockShape.Rectangle && Fits(labels, s) && does(labels.Sample.Design, s));

    private static bool Fits(SerialLabels labels, LabelStock stock)
    {
        try
        {
            StockFit.RefuseWrongSize(labels.Sample, stock);
            return true;
        }
        catch (LabelForge.Measures.InputException)
        {
            return false;
        }
    }

    // How far the solidus before each number runs along the page and down it; every number is there, and whole.
    private static List<(double Along, double Down)> Strokes(SerialLabels labels, LabelStock stock)
    {
        var path = Path.Combine(Path.GetTempPath(), Guid.NewGuid().ToString("N") + ".pdf");
        SerialSheets.WritePdf(path, labels, new SheetOrder { Stock = stock, Runs = [new LabelRun(labels.Sample, labels.Count)] },
            new LabelForge.Print.Output.DocumentInfo("numbers", default(DateTimeOffset)));
        try
        {
            using var pdf = UglyToad.PdfPig.PdfDocument.Open(path);
            var letters = pdf.GetPage(1).Letters;
            var said = string.Concat(letters.Select(l => l.Value)).Replace(" ", "", StringComparison.Ordinal);
            Assert.All(new[] { 1, 2, 3 }, n => Assert.Contains($"26R25-01E/{n}", said, StringComparison.Ordinal));
            return [.. letters.Where(l => l.Value == "/").Select(l => (Math.Abs(l.EndBaseLine.X - l.StartBaseLine.X),
                Math.Abs(l.EndBaseLine.Y - l.StartBaseLine.Y)))];
        }
        finally
        {
            File.Delete(path);
        }
    }

    public void Dispose() => _example.Dispose();
}
