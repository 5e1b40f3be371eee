using LabelForge.Measures;
using LabelForge.Print.Designs;
using LabelForge.Print.Documents;
using LabelForge.Print.Drawing;
using LabelForge.Print.Fitting;
using LabelForge.Print.Lettering;
using LabelForge.Print.Output;
using LabelForge.Print.Sheets;
using UglyToad.PdfPig;
using UglyToad.PdfPig.Content;

namespace LabelForge.Print.Tests;

/// <summary>Files read back with a PDF reader that is not the writer.</summary>
public sealed class SheetTests : IDisposable
{
    private static readonly LabelLayout Label = LabelFitter.Fit(LabelDesign.Load("bar-2x4"), Samples.Bar, Samples.Block()).OrRefuse();
    private static readonly LabelStock Ten = LabelStock.Load("us-letter-10-2x4in");

    private readonly string folder = Directory.CreateTempSubdirectory("labelforge").FullName;

    public static TheoryData<string> Stock => [.. LabelStock.Known];

    public void Dispose() => Directory.Delete(folder, recursive: true);

    [Fact]
    public void A_label_that_fits_only_lying_down_is_turned_and_stays_inside_its_place()
    {
        var design = LabelDesign.Load("bottle-front-2x2.625");
        var stock = LabelStock.Load("us-letter-15-2x2.625in");
        Assert.True(StockFit.Turns(design, stock));
        Assert.False(StockFit.Turns(design, LabelStock.Load("us-letter-4-4.25x5.5in")));
        Assert.False(StockFit.Turns(LabelDesign.Load("front-round-2in"), stock));
        var path = Path.Combine(folder, "turned.pdf");
        SheetWriter.WritePdf(path, LabelFitter.Fit(design, Samples.Bar, Samples.Block()).OrRefuse(), stock, Samples.Info, first: 2,
            count: 3);
        using var document = PdfDocument.Open(path);
        var letters = document.GetPage(1).Letters.Where(l => !string.IsNullOrWhiteSpace(l.Value)).ToList();
        Assert.NotEmpty(letters);
        Assert.All(letters, l => Assert.Equal(TextOrientation.Rotate270, l.TextOrientation));
        var places = new[] { 2, 3, 4 }.Select(stock.CornerOf).Select(c => (Left: Points.Of(c.X), Top: Points.Of(c.Y))).ToList();
        int Place(Letter l) =>
        places.FindIndex(p => l.BoundingBox.Left > p.Left && l.BoundingBox.Right < p.Left + Points.Of(stock.LabelWidth)
                && document.GetPage(1).Height - l.BoundingBox.Top > p.Top
                && document.GetPage(1).Height - l.BoundingBox.Bottom < p.Top + Points.Of(stock.LabelHeight));
        Assert.Equal([0, 1, 2], letters.Select(Place).Distinct().Order());
    }

    [Theory, MemberData(nameof(Stock))]
    public void Stock_keeps_its_labels_inside_the_sheet_and_apart(string id)
    {
        var stock = LabelStock.Load(id);
        Assert.StartsWith(stock.Kind == StockKind.Roll
            ? "roll-"
            : $"{(stock.PageWidth.Millimetres == 210m ? "a4" : "us-letter")}-{stock.PerSheet}-", id);
        var corners = Enumerable.Range(1, stock.PerSheet).Select(stock.CornerOf).ToList();
        Assert.All(corners, c => Assert.True(c.X.Millimetres + stock.LabelWidth.Millimetres <= stock.PageWidth.Millimetres + 0.0001m
            && c.Y.Millimetres + stock.LabelHeight.Millimetres <= stock.PageHeight.Millimetres + 0.0001m));
        foreach (var (a, i) in corners.Select((c, i) => (c, i)))
            Assert.All(corners.Skip(i + 1), b => Assert.True(
                Math.Abs(a.X.Millimetres - b.X.Millimetres) >= stock.LabelWidth.Millimetres - 0.0001m
                || Math.Abs(a.Y.Millimetres - b.Y.Millimetres) >= stock.LabelHeight.Millimetres - 0.0001m));
    }

    [Theory]
    [InlineData("pitch x: 3 in", "overlap sideways")]
    [InlineData("pitch y: 1 in", "overlap downward")]
    [InlineData("left: 1 in", "beyond the sheet")]
    [InlineData("rows: 6", "beyond the sheet")]
    [InlineData("rows: none", "whole number")]
    public void Stock_that_cannot_be_is_refused(string line, string told)
    {
        var key = line[..line.IndexOf(':', StringComparison.Ordinal)];
        var lines = Templates.Text("stock/us-letter-10-2x4in.yaml").Split('\n')
            .Select(l => l.StartsWith(key + ":", StringComparison.Ordinal) ? line : l);
        var path = Path.Combine(folder, "mine.yaml");
        File.WriteAllLines(path, lines);
        Assert.Contains(told, Assert.Throws<InputException>(() => LabelStock.LoadFile(path, "mine.yaml")).Message);
    }

    // The margin, and no label, says what was printed over.
    [Fact]
    public void A_note_stands_in_the_margin_of_each_sheet_and_on_no_label()
    {
        var path = Path.Combine(folder, "noted.pdf");
        var order = new SheetOrder
        {
            Stock = Ten,
            Runs = [new LabelRun(Label, 12)],
            Note = MarginNote.Despite(["lot.missing", "identity.missing"]),
        };
        SheetWriter.WritePdf(path, order, Samples.Info);
        using var pdf = PdfDocument.Open(path);
        Assert.Empty(MarginNote.Warnings(order));
        var end = Points.Of(Ten.CornerOf(Ten.PerSheet).Y) + Points.Of(Ten.LabelHeight);
        Assert.All(pdf.GetPages(), p =>
        {
            var words = p.GetWords().ToArray();
            Assert.Contains("identity.missing", words.Select(w => w.Text));
            Assert.All(words.Where(w => w.Text is "broken:" or "lot.missing," or "identity.missing"),
                w => Assert.True(p.Height - w.BoundingBox.Bottom > end || p.Height - w.BoundingBox.Bottom < Points.Of(Ten.Top), w.Text));
        });
    }

    [Fact]
    public void A_part_used_sheet_starts_at_its_position_and_as_many_sheets_follow_as_are_needed()
    {
        using var pdf = Written(first: 3, count: 12);
        Assert.Equal([8, 4], pdf.GetPages().Select(p => Names(p).Count));
        Assert.Equal("Fen Meadow, lot 7MQ4-K", pdf.Information.Title);
    }

    [Theory]
    [InlineData(1, 1)]
    [InlineData(3, 12)]
    [InlineData(10, 30)]
    public void Each_label_stands_within_a_twentieth_of_a_millimetre_of_its_position(int first, int count)
    {
        using var pdf = Written(first, count);
        var name = Label.Lines.First(l => l.Text.Text.StartsWith("Fen", StringComparison.Ordinal));
        var plan = SheetWriter.Plan(Ten, first, count);
        foreach (var (page, sheet) in pdf.GetPages().Select((p, i) => (p, i)))
        {
            var expected = plan.OnSheet(sheet).Select(o => Ten.CornerOf(o.Position)).ToList();
            var found = Names(page);
            Assert.Equal(expected.Count, found.Count);
            foreach (var (corner, letter) in expected.Zip(found))
            {
                Assert.Equal(Points.Of(corner.X) + name.X, letter.StartBaseLine.X, 0.05 * 72 / 25.4);
                Assert.Equal(Points.Of(corner.Y) + name.Y, page.Height - letter.StartBaseLine.Y, 0.05 * 72 / 25.4);
            }
        }
    }

    [Fact]
    public void Letter_heights_read_back_from_the_file_are_those_reported_and_no_lower_than_their_floors()
    {
        using var pdf = Written(1, 1);
        var page = pdf.GetPage(1);
        var corner = Ten.CornerOf(1);
        foreach (var line in Label.Lines.Where(l => l.Text.Text.Contains('o', StringComparison.Ordinal)))
        {
            var (x, baseline) = (Points.Of(corner.X) + line.X, page.Height - Points.Of(corner.Y) - line.Y);
            var found = page.Letters.Where(l => l.Value == "o" && Math.Abs(l.StartBaseLine.Y - baseline) < 0.05
                && l.StartBaseLine.X >= x - 0.05 && l.StartBaseLine.X < x + line.Text.Width).ToList();
            Assert.Equal(line.Text.Text.Count(c => c == 'o'), found.Count);
            Assert.All(found, o => Assert.Equal(line.Text.Face.SmallLetterHeight * line.Text.Size, o.BoundingBox.Height, 0.02));
        }
        var ingredients = Label.Texts.Single(t => t.Role == Role.Ingredients);
        Assert.InRange(ingredients.LetterHeight.Millimetres, ingredients.RequiredFloor.Millimetres, 1.66m);
    }

    /// <summary>Ink counted in Poppler's picture at 2400 dots to the inch, at the places where
    /// PdfPig finds the letters o: neither is ours.</summary>
    [Fact]
    public void The_ink_of_the_letters_that_the_law_measures_is_as_high_as_reported()
    {
        const int dpi = 2400;
        var path = Path.Combine(folder, "ink.pdf");
        LabelFile.Write(path, Label, Samples.Info);
        using var picture = Poppler.Raster(path, dpi);
        using var pdf = PdfDocument.Open(path);
        var page = pdf.GetPage(1);
        foreach (var text in Label.Texts.Where(t => t.Role is Role.NetQuantity or Role.Ingredients or Role.Warnings or Role.Identity))
        {
            var box = (Left: Points.Of(text.X), Top: Points.Of(text.Y), Right: Points.Of(text.X) + Points.Of(text.Width),
                Bottom: Points.Of(text.Y) + Points.Of(text.Height));
            var letters = page.Letters
                .Where(l => l.Value == "o" && l.BoundingBox.Left >= box.Left - 0.1 && l.BoundingBox.Right <= box.Right + 0.1
                && page.Height - l.BoundingBox.Top >= box.Top - 0.1 && page.Height - l.BoundingBox.Bottom <= box.Bottom + 0.1).ToList();
            Assert.NotEmpty(letters);
            foreach (var letter in letters.Select(l => l.BoundingBox))
            {
                var middle = (int)Math.Round((letter.Left + letter.Right) / 2 * dpi / 72);
                var (from, to) = ((int)((page.Height - letter.Top - 1) * dpi / 72), (int)((page.Height - letter.Bottom + 1) * dpi / 72));
                var inked = Enumerable.Range(from, to - from)
                    .Where(y => Enumerable.Range(middle - 4, 9).Any(x => picture.GetPixel(x, y).Red < 128)).ToList();
                var millimetres = (decimal)((inked[^1] - inked[0] + 1) * 25.4 / dpi);
                Assert.InRange(millimetres, text.RequiredFloor.Millimetres - 0.011m, text.LetterHeight.Millimetres + 0.04m);
                Assert.InRange(millimetres, text.LetterHeight.Millimetres - 0.02m, text.LetterHeight.Millimetres + 0.04m);
            }
        }
    }

    [Fact]
    public void All_the_text_can_be_read_from_the_file_and_its_fonts_are_inside_as_subsets()
    {
        var path = Path.Combine(folder, "one.pdf");
        LabelFile.Write(path, Label, Samples.Info);
        using var pdf = PdfDocument.Open(path);
        var page = pdf.GetPage(1);
        var text = string.Join(' ', page.GetWords().Select(w => w.Text));
        foreach (var ingredient in Samples.Bar.Ingredients)
            Assert.Contains(ingredient, text);
        Assert.Contains("Net Wt 3.9 oz (113 g)", text);
        Assert.All(page.Letters, l => Assert.Matches("^[A-Z]{6}\\+BarlowCondensed", l.FontName));
    }

    [Theory]
    [InlineData("label.pdf")]
    [InlineData("label.svg")]
    [InlineData("label.png")]
    public void The_same_input_makes_the_same_bytes(string name)
    {
        var (a, b) = (Path.Combine(folder, "a" + name), Path.Combine(folder, "b" + name));
        LabelFile.Write(a, Label, Samples.Info);
        LabelFile.Write(b, Label, Samples.Info);
        Assert.Equal(File.ReadAllBytes(a), File.ReadAllBytes(b));
    }

    [Fact]
    public void A_label_larger_than_the_stock_is_refused_with_stock_that_it_fits_and_nothing_is_written()
    {
        var path = Path.Combine(folder, "sheet.pdf");
        var refusal = Assert.Throws<InputException>(() => SheetWriter.WritePdf(path, Label, LabelStock.Load("us-letter-30-1x2.625in"),
            Samples.Info));
        Assert.Contains("us-letter-10-2x4in", refusal.Message);
        Assert.Empty(Directory.GetFiles(folder));
    }

    [Theory]
    [InlineData(0, 1)]
    [InlineData(11, 1)]
    [InlineData(1, 0)]
    [InlineData(1, 1_000_000)]
    public void Positions_and_counts_that_cannot_be_are_refused(int first, int count) =>
        Assert.Throws<InputException>(() => SheetWriter.Plan(Ten, first, count));

    [Fact]
    public void A_write_that_fails_leaves_the_older_file_and_no_half_file()
    {
        var path = Path.Combine(folder, "kept.pdf");
        File.WriteAllText(path, "older");
        Assert.Throws<InvalidOperationException>(() => AtomicFile.Write(path, s =>
        {
            s.WriteByte(1);
            throw new InvalidOperationException("half-way");
        }));
        Assert.Equal("older", File.ReadAllText(path));
        Assert.Single(Directory.GetFiles(folder));
    }

    [Fact]
    public void Pictures_have_the_labels_size()
    {
        var svg = Path.Combine(folder, "x.svg");
        LabelFile.Write(svg, Label, Samples.Info);
        Assert.Contains("width=\"101.6mm\" height=\"50.8mm\"", File.ReadAllText(svg));
        var png = Path.Combine(folder, "x.png");
        LabelFile.Write(png, Label, Samples.Info);
        // Width and height stand at bytes 16 to 23 of a PNG (ISO/IEC 15948, 11.2.2).
        var bytes = File.ReadAllBytes(png);
        Assert.Equal((1200, 600), (bytes[18] * 256 + bytes[19], bytes[22] * 256 + bytes[23]));
    }

    [Fact]
    public void A_batch_sheet_goes_on_over_as_many_pages_as_it_has_materials_for()
    {
        var path = Path.Combine(folder, "batch.pdf");
        var content = new BatchSheetContent
        {
            Title = "Fen Meadow",
            LotCode = "7MQ4-K",
            LotBarcode = Samples.Block(40m, 12m),
            PiecesExpected = "18 bars of 113 g",
            Materials = [.. Enumerable.Range(1, 60).Select(i => new BatchSheetMaterial($"Material {i}", Mass.FromGrams(i)))],
            Cautions = ["Wear goggles."],
        };
        BatchSheetWriter.WritePdf(path, content, Samples.Info);
        using var pdf = PdfDocument.Open(path);
        var text = string.Join(' ', pdf.GetPages().SelectMany(p => p.GetWords()).Select(w => w.Text));
        Assert.True(pdf.NumberOfPages > 1);
        Assert.All(Enumerable.Range(1, 60), i => Assert.Contains($"Material {i} ", text));
        Assert.Contains("Wear goggles.", text);
        Assert.All(pdf.GetPages().SelectMany(p => p.Letters), l => Assert.True(l.StartBaseLine.Y > 30));
    }

    [Theory]
    [InlineData("900", "900.0", "31.75")]
    [InlineData("1950", "1950", "68.78")]
    [InlineData("1.2345", "1.23", "0.044")]
    [InlineData("0.004", "< 0.01", "< 0.001")]
    public void Bench_masses_have_the_digits_that_a_scale_shows(string grams, string inGrams, string inOunces)
    {
        var mass = Mass.FromGrams(decimal.Parse(grams, System.Globalization.CultureInfo.InvariantCulture));
        Assert.Equal((inGrams, inOunces), (BenchMass.Grams(mass), BenchMass.Ounces(mass)));
    }

    private PdfDocument Written(int first, int count)
    {
        var path = Path.Combine(folder, "sheet.pdf");
        SheetWriter.WritePdf(path, Label, Ten, Samples.Info, first, count);
        return PdfDocument.Open(path);
    }

    // The first letter of each product name: the largest F on the page.
    private static List<Letter> Names(Page page) =>
        [.. page.Letters.Where(l => l.Value == "F" && l.FontName!.Contains("SemiBold", StringComparison.Ordinal))];
}
