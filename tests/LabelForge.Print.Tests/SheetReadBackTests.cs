using LabelForge.Print.Designs;
using LabelForge.Print.Drawing;
using LabelForge.Print.Fitting;
using LabelForge.Print.Output;
using LabelForge.Print.Reading;
using LabelForge.Print.Sheets;

namespace LabelForge.Print.Tests;

/// <summary>A sheet that was made here is read as what it shows: every label on it, and nothing out of sight.</summary>
public sealed class SheetReadBackTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("labelforge").FullName;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    private static readonly LabelLayout Bar = LabelFitter.Fit(LabelDesign.Load("bar-2x4"), Samples.Bar, Samples.Block()).OrRefuse();

    // A label is drawn once, as a form with bounds of its own, and placed wherever it stands (ISO 32000-1, 8.10.1).
    [Theory]
    [InlineData(1, 1)]
    [InlineData(4, 1)]
    [InlineData(3, 7)]
    public void Every_label_of_a_sheet_is_seen_whole(int labels, int first)
    {
        var file = Path.Combine(_folder, "sheet.pdf");
        var stock = LabelStock.Load("us-letter-10-2x4in");
        SheetWriter.WritePdf(file, new SheetOrder { Stock = stock, Runs = [new LabelRun(Bar, labels)], First = first }, Samples.Info);
        var read = PdfLabelReader.Read(File.ReadAllBytes(file), "sheet.pdf");
        Assert.Empty(read.Unseen);
        Assert.Equal(labels, read.Text.Split("Net Wt").Length - 1);
        Assert.Equal(labels, read.Text.Split("7MQ4-K").Length - 1);
        Assert.Equal(labels, read.Text.Split("1 Example Lane").Length - 1);
    }
}
