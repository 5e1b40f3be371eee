using LabelForge.Papers;
using LabelForge.Print.Lettering;
using LabelForge.Print.Output;

namespace LabelForge.Print.Documents;

/// <summary>Writes the batch sheet for the bench: what to weigh, boxes to tick and write in, cautions, the lot.</summary>
public static class BatchSheetWriter
{
    private const double Body = 11;
    private const double Small = 8.5;
    private const double RowPadding = 8;

    /// <summary>Writes a batch sheet.</summary>
    /// <exception cref="InputException">The file cannot be written, or the type has no letter for a character.</exception>
    public static void WritePdf(string path, BatchSheetContent content, DocumentInfo info) =>
        WritePdf(path, [content], info);

    /// <summary>Writes several batch sheets into one document, each beginning on a page of its own.</summary>
    /// <exception cref="InputException">The file cannot be written, or the type has no letter for a character.</exception>
    public static void WritePdf(string path, IReadOnlyList<BatchSheetContent> sheets, DocumentInfo info) =>
        AtomicFile.Write(path, stream => PagesOf(sheets[0]).WritePdf(stream, info, sheets.Skip(1).Select(PagesOf)));

    private static BenchPages PagesOf(BatchSheetContent content)
    {
        var pages = new BenchPages();
        Head(pages, content);
        Table(pages, content);
        List(pages, content.Words["cautions"], content.Cautions);
        List(pages, content.Words["notes"], content.Notes);
        WritingLines(pages, content.Words);
        if (content.MarginNote is { } note)
            pages.Foot((_, _) => note, BundledFaces.Regular, Small);
        return pages;
    }

    private static void Head(BenchPages pages, BatchSheetContent content)
    {
        var blockWidth = content.LotBarcode is { } b ? Points.Of(b.Width) : 0;
        var titleWidth = pages.Width - Math.Max(blockWidth, 110) - 16;
        var top = pages.Y;
        var y = top + pages.Write(content.Title, BundledFaces.SemiBold, 26, 0, top, titleWidth);
        if (content.Subtitle is { } subtitle)
            y += pages.Write(subtitle, BundledFaces.Regular, Body, 0, y, titleWidth);
        y += 4;
        y += pages.Write(content.Words["expected", content.PiecesExpected], BundledFaces.Regular, Body, 0, y, titleWidth);

        var right = pages.Width - Math.Max(blockWidth, 110);
        var lotBottom = top
            + pages.Write(content.Words["lot", content.LotCode], BundledFaces.SemiBold, 16, right, top, pages.Width - right) + 4;
        if (content.LotBarcode is { } block)
        {
            pages.Block(block, right, lotBottom);
            lotBottom += Points.Of(block.Height) + 2;
            if (!string.IsNullOrWhiteSpace(block.Caption))
                lotBottom += pages.Write(block.Caption, BundledFaces.Regular, Small, right, lotBottom, pages.Width - right);
        }
        pages.Down(Math.Max(y, lotBottom) - top + 18);
    }

    private static void Table(BenchPages pages, BatchSheetContent content)
    {
        var columns = Columns.Over(pages.Width);
        TableHead(pages, columns, content.Words);
        foreach (var material in content.Materials)
        {
            if (pages.NewPageUnless(40))
                TableHead(pages, columns, content.Words);
            Row(pages, columns, material);
        }
        var total = content.Materials.Aggregate(Mass.FromGrams(0), (sum, m) => sum + m.Mass);
        pages.NewPageUnless(30);
        pages.Write(content.Words["together"], BundledFaces.SemiBold, Body, columns.Name, pages.Y + RowPadding,
            columns.Grams - columns.Name - 60);
        pages.Figure(BundledFaces.SemiBold, BenchMass.Grams(total) + " g", columns.Grams, pages.Y + RowPadding, Body);
        pages.Figure(BundledFaces.SemiBold, BenchMass.Ounces(total) + " oz", columns.Ounces, pages.Y + RowPadding, Body);
        pages.Down(Body * 1.2 + 2 * RowPadding + 12);
    }

    private static void TableHead(BenchPages pages, Columns columns, PaperWords words)
    {
        var y = pages.Y;
        pages.Write(words["material"], BundledFaces.Regular, Small, columns.Name, y, 120);
        pages.Figure(BundledFaces.Regular, words["grams"], columns.Grams, y, Small);
        pages.Figure(BundledFaces.Regular, words["ounces"], columns.Ounces, y, Small);
        pages.Write(words["weighed"], BundledFaces.Regular, Small, columns.Weighed, y, 70);
        pages.Write(words["material-lot"], BundledFaces.Regular, Small, columns.Lot, y, pages.Width - columns.Lot);
        pages.Rule(0, y + 12, pages.Width, 0.9);
        pages.Down(13);
    }

    private static void Row(BenchPages pages, Columns columns, BatchSheetMaterial material)
    {
        var top = pages.Y + RowPadding;
        pages.Box(0, top - 1, 9.5);
        var nameWidth = columns.Grams - 52 - columns.Name;
        var high = pages.Write(material.Name, BundledFaces.Regular, Body, columns.Name, top, nameWidth);
        if (material.AsWritten is { } written)
            high += pages.Write(written, BundledFaces.Regular, Small, columns.Name, top + high, nameWidth);
        pages.Figure(BundledFaces.SemiBold, BenchMass.Grams(material.Mass), columns.Grams, top, Body);
        pages.Figure(BundledFaces.Regular, BenchMass.Ounces(material.Mass), columns.Ounces, top, Body);
        pages.Upright(columns.Weighed - 6, pages.Y, high + 2 * RowPadding - 3);
        pages.Upright(columns.Lot - 6, pages.Y, high + 2 * RowPadding - 3);
        pages.Down(high + 2 * RowPadding - 3);
        pages.Rule(0, pages.Y, pages.Width, 0.25);
    }

    private static void List(BenchPages pages, string heading, IReadOnlyList<string> entries)
    {
        if (entries.Count == 0)
            return;
        pages.NewPageUnless(50);
        pages.Down(pages.Write(heading, BundledFaces.SemiBold, 13, 0, pages.Y, pages.Width) + 3);
        foreach (var entry in entries)
        {
            pages.NewPageUnless(30);
            pages.Write("\u2022", BundledFaces.Regular, Body, 0, pages.Y, 12);
            pages.Down(pages.Write(entry, BundledFaces.Regular, Body, 12, pages.Y, pages.Width - 12) + 3);
        }
        pages.Down(10);
    }

    private static void WritingLines(BenchPages pages, PaperWords words)
    {
        pages.NewPageUnless(70);
        foreach (var blank in new[] { words["pieces-made"], words["made-by"], words["date"] }.Select((text, i) => (text, i)))
        {
            var x = blank.i * pages.Width / 3;
            pages.Write(blank.text, BundledFaces.Regular, Small, x, pages.Y + 30, 120);
            pages.Rule(x, pages.Y + 26, pages.Width / 3 - 14, 0.4);
        }
    }

    /// <summary>Where the table's columns stand: figures by their right edge, all else by the left.</summary>
    private sealed record Columns(double Name, double Grams, double Ounces, double Weighed, double Lot)
    {
        public static Columns Over(double width) => new(18, width * 0.44, width * 0.55, width * 0.59, width * 0.76);
    }
}
