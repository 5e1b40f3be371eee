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
        var job = LabelJob.Prepare(product, MarketText.Parse("us").Value!, design, lot, on);
        var labels = SerialLabels.Prepare(job, lot, SerialNumbers.Parse("1..3").Value!);
        var (first, second) = (labels.Part(0), labels.Part(1));
        Assert.NotNull(first.Symbol);
        Assert.NotEqual(first.Symbol.Picture.Bits, second.Symbol!.Picture.Bits);
        // What is drawn for one number lies where the stand-in lay, to a hundredth of a point.
        var standIn = labels.Sample.Bars.Except(labels.Common.Bars).ToArray();
        Assert.Equal(standIn.Min(b => b.X), first.Symbol.X, 2);
        Assert.Equal(standIn.Max(b => b.Y + b.Height), first.Symbol.Y + first.Symbol.Height, 2);
    }

    public void Dispose() => _example.Dispose();
}
