using LabelForge.Print.Output;
using LabelForge.Print.Sheets;
using UglyToad.PdfPig;

namespace LabelForge.Print.Tests;

public sealed class CalibrationTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("labelforge").FullName;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Theory]
    [InlineData("us-letter-10-2x4in", 170, 220)]
    [InlineData("a4-65-38.1x21.2mm", 160, 230)]
    [InlineData("roll-4x6in", 80, 120)]
    public void The_rulers_of_a_test_page_are_as_long_as_it_says(string id, int across, int down)
    {
        var stock = LabelStock.Load(id);
        var path = Path.Combine(_folder, "page.pdf");
        CalibrationPage.WritePdf(path, stock, Printer.Unknown);
        using var pdf = PdfDocument.Open(path);
        var boxes = pdf.GetPage(1).Paths.Where(p => p.IsStroked && p.SelectMany(s => s.Commands).Count() == 2)
            .Select(p => p.GetBoundingRectangle()!.Value).ToList();
        Assert.Equal(across, boxes.Max(b => b.Width) * 25.4 / 72, 0.05);
        Assert.Equal(down, boxes.Max(b => b.Height) * 25.4 / 72, 0.05);
    }

    [Fact]
    public void The_outlines_and_crosshairs_of_a_test_page_stand_where_the_labels_are()
    {
        var stock = LabelStock.Load("us-letter-10-2x4in");
        var picture = CalibrationPage.Of(stock, Printer.Unknown);
        Assert.Equal(10, picture.Outlines.Length);
        // The middle of the first label: 0.15625 + 2 in across, 0.5 + 1 in down.
        Assert.Contains(picture.Strokes, s => s.Y1 == s.Y2 && Math.Abs(s.Y1 - 108) < 0.01 && Math.Abs((s.X1 + s.X2) / 2 - 155.25) < 0.01);
    }

    [Theory]
    [InlineData(170, 220, 0, 0)]
    [InlineData(169.15, 220, 0.5, 0)]
    [InlineData(170, 221.1, 0, -0.5)]
    public void A_ruler_that_came_out_short_asks_for_a_wider_print(decimal across, decimal down, decimal wider, decimal higher) =>
        Assert.Equal((wider, higher), CalibrationPage.StretchFor(LabelStock.Load("us-letter-10-2x4in"), default, across, down).Value);

    [Fact]
    public void A_second_measure_adds_to_the_stretch_in_use()
    {
        // Printed half a percent wider and still half a percent short: 1.005 / 0.995 = 1.01005.
        var used = new Registration(0, 0, 0.5m, 0);
        Assert.Equal(1.01m, CalibrationPage.StretchFor(LabelStock.Load("us-letter-10-2x4in"), used, 170m * 0.995m, 220m).Value.X);
    }

    [Fact]
    public void A_page_shrunk_to_fit_is_not_stretched_but_refused() =>
        Assert.Contains("fit to page", CalibrationPage.StretchFor(LabelStock.Load("us-letter-10-2x4in"), default, 160m, 207m).Write);
}
