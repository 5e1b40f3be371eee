using System.Globalization;
using LabelForge.Measures;
using LabelForge.Print.Designs;
using LabelForge.Print.Drawing;
using LabelForge.Print.Fitting;
using LabelForge.Print.Lettering;
using LabelForge.Print.Output;
using LabelForge.Print.Sheets;
using LabelForge.Print.Tests.Barcodes;
using SkiaSharp;
using UglyToad.PdfPig;
using UglyToad.PdfPig.Content;

namespace LabelForge.Print.Tests;

/// <summary>Runs of labels, moved and stretched, measured in the files with a reader and a rasteriser that did not write them.</summary>
public sealed class SheetOrderTests : IDisposable
{
    private const double TwentiethOfAMillimetre = 0.05 * 72 / 25.4;

    private static readonly LabelLayout Bar = LabelFitter.Fit(LabelDesign.Load("bar-2x4"), Samples.Bar, Samples.Block()).OrRefuse();
    private static readonly LabelStock Ten = LabelStock.Load("us-letter-10-2x4in");

    private readonly string _folder = Directory.CreateTempSubdirectory("labelforge").FullName;

    public static TheoryData<string> Ids => [.. LabelStock.Known];

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Theory, MemberData(nameof(Ids))]
    public void On_every_stock_each_label_stands_within_a_twentieth_of_a_millimetre(string id)
    {
        var stock = LabelStock.Load(id);
        var label = Frame(stock);
        using var pdf = Written(new SheetOrder { Stock = stock, Runs = [new LabelRun(label, stock.PerSheet + 1)], First = 1 });
        Assert.Equal(2, pdf.NumberOfPages);
        var page = pdf.GetPage(1);
        Assert.Equal((double)stock.PageWidth.Points, page.Width, 0.01);
        Assert.Equal((double)stock.PageHeight.Points, page.Height, 0.01);
        AssertFrames(page, stock, default, Enumerable.Range(1, stock.PerSheet));
        AssertFrames(pdf.GetPage(2), stock, default, [1]);
    }

    [Theory]
    [InlineData("0.5,-0.3", "0,0")]
    [InlineData("0,0", "0.4,-0.25")]
    [InlineData("-1.25,2", "-0.8,1.1")]
    public void A_print_is_stretched_from_the_top_left_corner_and_then_moved(string nudge, string stretch)
    {
        var (n, s) = (Registration.ParseNudge(nudge).Value, Registration.ParseStretch(stretch).Value);
        var registration = new Registration(n.X, n.Y, s.X, s.Y);
        using var pdf = Written(new SheetOrder { Stock = Ten, Runs = [new LabelRun(Frame(Ten), 10)], Registration = registration });
        AssertFrames(pdf.GetPage(1), Ten, registration, Enumerable.Range(1, 10));
    }

    [Theory]
    [InlineData("us-letter-30-1x2.625in", "0,0", "0,0")]
    [InlineData("a4-21-63.5x38.1mm", "0.7,-0.4", "0.3,0.2")]
    public void Positions_measured_in_a_raster_are_those_of_the_stock(string id, string nudge, string stretch)
    {
        const int dpi = 1200;
        var stock = LabelStock.Load(id);
        var (n, s) = (Registration.ParseNudge(nudge).Value, Registration.ParseStretch(stretch).Value);
        var registration = new Registration(n.X, n.Y, s.X, s.Y);
        Written(new SheetOrder { Stock = stock, Runs = [new LabelRun(Frame(stock), stock.PerSheet)], Registration = registration })
            .Dispose();
        foreach (var position in new[] { 1, stock.Columns, stock.PerSheet })
        {
            var corner = stock.CornerOf(position);
            var (x, y) = registration.Apply((double)corner.X.Points, (double)corner.Y.Points);
            var (right, bottom) = registration.Apply((double)(corner.X.Points + stock.LabelWidth.Points),
                (double)(corner.Y.Points + stock.LabelHeight.Points));
            // The label alone and a little round it: a whole sheet so fine is 130 million dots.
            int Dots(double points) => (int)(points * dpi / 72);
            var part = new SKRectI(Dots(x) - 40, Dots(y) - 40, Dots(right) + 40, Dots(bottom) + 40);
            using var raster = Poppler.Raster(Path.Combine(_folder, "sheet.pdf"), dpi, part);
            var (middleX, middleY) = ((x + right) / 2 - part.Left * 72.0 / dpi, (y + bottom) / 2 - part.Top * 72.0 / dpi);
            double Ink(int dx, int dy) => FirstInk(raster, middleX, middleY, dx, dy, dpi) + (dx != 0 ? part.Left : part.Top);
            const double Near = 0.05 / 25.4 * dpi;
            // From the middle of the label outward, the first ink is the inner edge of its frame.
            Assert.Equal((x + FrameThickness * registration.FactorX) * dpi / 72, Ink(-1, 0), Near);
            Assert.Equal((y + FrameThickness * registration.FactorY) * dpi / 72, Ink(0, -1), Near);
            Assert.Equal((right - FrameThickness * registration.FactorX) * dpi / 72, Ink(1, 0), Near);
            Assert.Equal((bottom - FrameThickness * registration.FactorY) * dpi / 72, Ink(0, 1), Near);
        }
    }

    [Fact]
    public void Several_labels_share_the_sheets_in_the_order_given()
    {
        var other = LabelFitter.Fit(LabelDesign.Load("bar-2x4"), Samples.Bar with { ProductName = "Marsh Light" }, Samples.Block())
            .OrRefuse();
        using var pdf = Written(new SheetOrder { Stock = Ten, Runs = [new LabelRun(Bar, 4), new LabelRun(other, 9)], First = 2 });
        Assert.Equal(2, pdf.NumberOfPages);
        Assert.Equal([(4, 5), (0, 4)], pdf.GetPages().Select(p => (Count(p, "Meadow"), Count(p, "Marsh"))));
    }

    [Fact]
    public void A_thousand_sheets_hold_the_label_once_and_place_it_ten_times_each()
    {
        var path = Path.Combine(_folder, "sheet.pdf");
        SheetWriter.WritePdf(path, new SheetOrder { Stock = Ten, Runs = [new LabelRun(Bar, 10_000)] }, Samples.Info);
        Assert.InRange(new FileInfo(path).Length, 1, 800_000);
        using var pdf = PdfDocument.Open(path);
        Assert.Equal(1000, pdf.NumberOfPages);
        foreach (var number in new[] { 1, 500, 1000 })
            Assert.Equal(10, pdf.GetPage(number).Operations.Count(o => o.Operator == "Do"));
        Assert.Equal(1, Occurrences(File.ReadAllText(path, System.Text.Encoding.Latin1), "/Subtype/Form"));
    }

    [Fact]
    public void The_text_of_a_large_run_is_found_by_poppler_and_its_fonts_are_embedded()
    {
        Written(new SheetOrder { Stock = Ten, Runs = [new LabelRun(Bar, 25)] }).Dispose();
        var path = Path.Combine(_folder, "sheet.pdf");
        Assert.Equal(25, Occurrences(Poppler.Run("pdftotext", "-raw", path, "-"), "Net Wt 3.9 oz (113 g)"));
        var fonts = Poppler.Run("pdffonts", path).Split('\n', StringSplitOptions.RemoveEmptyEntries).Skip(2).ToList();
        Assert.NotEmpty(fonts);
        Assert.All(fonts, f => Assert.Matches(@"BarlowCondensed.*Identity-H\s+yes yes yes", f));
    }

    [Fact]
    public void A_sheet_of_the_same_labels_has_the_same_bytes_and_its_title_in_both_places()
    {
        var info = Samples.Info with { Title = "Salt & <Fen>, lot 7MQ4-K" };
        var files = new[] { "a.pdf", "b.pdf" }.Select(n => Path.Combine(_folder, n)).ToList();
        foreach (var file in files)
            SheetWriter.WritePdf(file, new SheetOrder { Stock = Ten, Runs = [new LabelRun(Bar, 3)], CutMarks = true }, info);
        Assert.Equal(File.ReadAllBytes(files[0]), File.ReadAllBytes(files[1]));
        using var pdf = PdfDocument.Open(files[0]);
        Assert.Equal(info.Title, pdf.Information.Title);
        Assert.True(pdf.TryGetXmpMetadata(out var xmp));
        Assert.Contains(info.Title, xmp!.GetXDocument().Root!.Value);
    }

    [Theory]
    [InlineData("us-letter-10-2x4in", 4 * 2 + 6 * 2)]
    [InlineData("us-letter-30-1x2.625in", 6 * 2 + 11 * 2)]
    // No gap and no margin at the sides: marks stand above and below alone, where half a millimetre is too little.
    [InlineData("a4-24-70x37mm", 0)]
    public void Cut_marks_stand_at_the_edges_of_the_labels_and_never_on_one(string id, int expected)
    {
        var stock = LabelStock.Load(id);
        var marks = CutMarks.Of(stock);
        Assert.Equal(expected, marks.Length);
        foreach (var corner in Enumerable.Range(1, stock.PerSheet).Select(stock.CornerOf))
        {
            var (left, top) = ((double)corner.X.Points, (double)corner.Y.Points);
            var (right, bottom) = (left + (double)stock.LabelWidth.Points, top + (double)stock.LabelHeight.Points);
            Assert.All(marks, m => Assert.True(
                Math.Max(m.X1, m.X2) < left + 0.01
                    || Math.Min(m.X1, m.X2) > right - 0.01
                    || Math.Max(m.Y1, m.Y2) < top + 0.01
                    || Math.Min(m.Y1, m.Y2) > bottom - 0.01));
        }
    }

    [Fact]
    public void Ink_where_the_printer_cannot_reach_is_warned_about_edge_by_edge()
    {
        var order = new SheetOrder
        {
            Stock = LabelStock.Load("a4-24-70x37mm"),
            Runs = [new LabelRun(Frame(LabelStock.Load("a4-24-70x37mm")), 24)],
        };
        var warnings = EdgeWarnings.Of(order, Printer.Unknown).ToList();
        Assert.Equal(["left", "top", "right", "bottom"], warnings.Select(w => w.Split(" edge of")[0].Split(' ')[^1]));
        Assert.All(warnings, w => Assert.Contains("outermost 4.2 mm", w));
        Assert.Empty(EdgeWarnings.Of(order, Printer.Unknown with { Blank = BlankEdges.None }));
        Assert.Empty(EdgeWarnings.Of(new SheetOrder { Stock = Ten, Runs = [new LabelRun(Bar, 10)] }, Printer.Unknown));
    }

    [Fact]
    public void A_print_moved_off_the_sheet_is_warned_about()
    {
        var order = new SheetOrder
        {
            Stock = Ten,
            Runs = [new LabelRun(Frame(Ten), 10)],
            Registration = new Registration(-6m, 0m, 0m, 0m),
        };
        Assert.Contains("runs 2.0 mm over the left edge",
            Assert.Single(EdgeWarnings.Of(order, Printer.Unknown with { Blank = BlankEdges.None })));
    }

    [Theory]
    [InlineData("0.5", "two figures")]
    [InlineData("a,b", "two figures")]
    [InlineData("0.5,0.5,0.5", "two figures")]
    [InlineData("30,0", "more than 20 millimetres")]
    public void A_nudge_that_cannot_be_is_refused(string text, string told) => Assert.Contains(told, Registration.ParseNudge(text).Wrong);

    [Fact]
    public void A_stretch_of_a_hundred_is_refused_since_percent_are_added() =>
        Assert.Contains("more than 5 percent", Registration.ParseStretch("100,100").Wrong);

    [Fact]
    public void What_a_printer_needs_is_remembered_in_the_workshop()
    {
        var kitchen = new Printer("kitchen", new Registration(0.5m, -0.3m, 0.4m, -0.25m),
            BlankEdges.Usual with { Bottom = Length.FromMillimetres(12.7m) });
        PrinterFile.Save(_folder, kitchen);
        Assert.Equal(kitchen, PrinterFile.Load(_folder, "kitchen"));
        Assert.Contains("There are: kitchen", Assert.Throws<InputException>(() => PrinterFile.Load(_folder, "office")).Message);
        Assert.Throws<InputException>(() => PrinterFile.Save(_folder, kitchen with { Id = "../kitchen" }));
    }

    [Fact]
    public void A_printers_file_that_cannot_be_read_is_refused_with_its_line()
    {
        Directory.CreateDirectory(Path.Combine(_folder, "printers"));
        File.WriteAllText(Path.Combine(_folder, "printers", "kitchen.yaml"), "nudge: 0,0\nstretch: much\n");
        Assert.StartsWith("printers/kitchen.yaml, line 2",
            Assert.Throws<InputException>(() => PrinterFile.Load(_folder, "kitchen")).Message);
    }

    [Fact]
    public void A_part_used_sheet_is_remembered_from_print_to_print()
    {
        Assert.Equal(1, PartUsedSheets.Of(_folder).FirstOf(Ten));
        Assert.Equal(8, PartUsedSheets.Of(_folder).Remember(Ten, 1, 7));
        Assert.Equal(8, PartUsedSheets.Of(_folder).FirstOf(Ten));
        Assert.Equal(5, PartUsedSheets.Of(_folder).Remember(Ten, 8, 7));
        Assert.Equal(1, PartUsedSheets.Of(_folder).Remember(Ten, 5, 6));
        Assert.Equal(1, PartUsedSheets.Of(_folder).FirstOf(LabelStock.Load("us-letter-30-1x2.625in")));
    }

    [Fact]
    public void Recipes_lots_and_counts_are_read_from_one_word() => Assert.Equal(
        [new FillItem("bramble-bar", null, 10), new FillItem("recipes/tide.yaml", "26R25-02C", 20)],
        FillItem.ParseAll("bramble-bar:10, recipes/tide.yaml@26R25-02C:20").Value);

    [Theory]
    [InlineData("bramble-bar")]
    [InlineData("bramble-bar:0")]
    [InlineData("bramble-bar:-3")]
    [InlineData(":3")]
    [InlineData("")]
    public void A_fill_without_a_count_or_a_recipe_is_refused(string text) => Assert.False(FillItem.ParseAll(text).IsValue);

    private const double FrameThickness = 1;

    // A label that is its own outline: four bars along the edges.
    private static LabelLayout Frame(LabelStock stock)
    {
        var (w, h) = ((double)stock.LabelWidth.Points, (double)stock.LabelHeight.Points);
        return new LabelLayout
        {
            Design = new LabelDesign("frame", "Frame", stock.LabelWidth, stock.LabelHeight, stock.Shape == StockShape.Round, []),
            Lines = [],
            Bars = [new PlacedBar(0, 0, w, FrameThickness), new PlacedBar(0, h - FrameThickness, w, FrameThickness),
                new PlacedBar(0, 0, FrameThickness, h), new PlacedBar(w - FrameThickness, 0, FrameThickness, h)],
            Texts = [],
            LeftOut = [],
        };
    }

    private static void AssertFrames(Page page, LabelStock stock, Registration registration, IEnumerable<int> positions)
    {
        var bars = page.Paths.Select(p => p.GetBoundingRectangle()!.Value).Chunk(4).ToList();
        var all = positions.ToList();
        Assert.Equal(all.Count, bars.Count);
        foreach (var (frame, position) in bars.Zip(all))
        {
            var corner = stock.CornerOf(position);
            var (left, top) = registration.Apply((double)corner.X.Points, (double)corner.Y.Points);
            var (right, bottom) = registration.Apply((double)(corner.X.Points + stock.LabelWidth.Points),
                (double)(corner.Y.Points + stock.LabelHeight.Points));
            Assert.Equal(left, frame.Min(b => b.Left), TwentiethOfAMillimetre);
            Assert.Equal(right, frame.Max(b => b.Right), TwentiethOfAMillimetre);
            Assert.Equal(top, page.Height - frame.Max(b => b.Top), TwentiethOfAMillimetre);
            Assert.Equal(bottom, page.Height - frame.Min(b => b.Bottom), TwentiethOfAMillimetre);
        }
    }

    private static double FirstInk(SKBitmap raster, double x, double y, int dx, int dy, int dpi)
    {
        var (px, py) = ((int)(x * dpi / 72), (int)(y * dpi / 72));
        while (raster.GetPixel(px, py).Red > 127)
            (px, py) = (px + dx, py + dy);
        // The edge lies between this pixel and the one before it.
        return dx + dy < 0 ? (dx != 0 ? px : py) + 1 : dx != 0 ? px : py;
    }

    private PdfDocument Written(SheetOrder order)
    {
        var path = Path.Combine(_folder, "sheet.pdf");
        SheetWriter.WritePdf(path, order, Samples.Info);
        return PdfDocument.Open(path);
    }

    private static int Count(Page page, string word) => page.GetWords().Count(w => w.Text == word);

    private static int Occurrences(string text, string part) => text.Split(part).Length - 1;
}
