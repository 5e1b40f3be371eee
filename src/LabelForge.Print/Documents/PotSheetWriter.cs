using LabelForge.Papers;
using LabelForge.Print.Lettering;
using LabelForge.Print.Output;

namespace LabelForge.Print.Documents;

/// <summary>Writes the bench sheet of a pot: cautions first, the shared base once, then a block for each product.</summary>
public static class PotSheetWriter
{
    private const double Body = 11;
    private const double Small = 8.5;
    private const double Padding = 7;

    /// <summary>Writes the sheet to a stream.</summary>
    public static void WritePdf(Stream stream, PotSheetContent content, DocumentInfo info) =>
        PagesOf(content).WritePdf(stream, info);

    private static BenchPages PagesOf(PotSheetContent content)
    {
        var pages = new BenchPages();
        pages.Down(pages.Write(content.Words["pot", content.Pot], BundledFaces.SemiBold, 26, 0, pages.Y, pages.Width));
        pages.Down(pages.Write(content.Subtitle, BundledFaces.Regular, Body, 0, pages.Y, pages.Width) + 8);
        foreach (var caution in content.Cautions)
        {
            pages.NewPageUnless(30);
            pages.Write("•", BundledFaces.SemiBold, Body, 0, pages.Y, 12);
            pages.Down(pages.Write(caution, BundledFaces.SemiBold, Body, 12, pages.Y, pages.Width - 12) + 3);
        }
        pages.Down(10);
        Heading(pages, content.Words["pot-shared"], null);
        foreach (var row in content.Shared)
            Row(pages, row);
        foreach (var block in content.Blocks)
        {
            // A block is not torn where a page can hold it, and never from its first rows.
            pages.NewPageUnless(Math.Min(HeightOf(pages, block), 300));
            pages.Down(14);
            Heading(pages, block.Title, content.Words["lot", block.LotCode]);
            pages.Down(pages.Write(block.Expected, BundledFaces.Regular, Small, 0, pages.Y + 3, pages.Width) + 3);
            foreach (var row in block.Rows)
                Row(pages, row);
            Blanks(pages, content.Words);
        }
        // Sheets that fall on the floor are put in order again.
        pages.Foot((page, of) => content.Words["page-of", content.Words["pot", content.Pot], page, of], BundledFaces.Regular, Small);
        return pages;
    }

    private static double HeightOf(BenchPages pages, PotSheetBlock block) => 84 + block.Rows.Sum(r =>
        pages.HeightOf(r.Text, BundledFaces.Regular, Body, TextWidth(pages, r))
            + (r.Under is { Length: > 0 } under ? pages.HeightOf(under, BundledFaces.Regular, Small, TextWidth(pages, r)) : 0)
            + 2 * Padding - 4);

    private static double TextWidth(BenchPages pages, PotSheetRow row) => row.Mass is null ? pages.Width - 18 : pages.Width * 0.62 - 76;

    private static void Heading(BenchPages pages, string text, string? right)
    {
        pages.NewPageUnless(60);
        var high = pages.Write(text, BundledFaces.SemiBold, 15, 0, pages.Y, pages.Width * 0.68);
        if (right is not null)
        {
            var lot = new MeasuredText(BundledFaces.SemiBold, 13, BundledFaces.SemiBold.Shape(right));
            pages.Draw(lot, pages.Width - lot.Width, pages.Y + 13 * BundledFaces.SemiBold.CapitalHeight);
        }
        pages.Down(high);
        pages.Rule(0, pages.Y, pages.Width, 0.9);
        pages.Down(2);
    }

    private static void Row(BenchPages pages, PotSheetRow row)
    {
        pages.NewPageUnless(36);
        var top = pages.Y + Padding;
        pages.Box(0, top - 1, 9.5);
        var right = pages.Width * 0.62;
        var width = TextWidth(pages, row);
        var high = pages.Write(row.Text, BundledFaces.Regular, Body, 18, top, width);
        if (row.Under is { Length: > 0 } under)
            high += pages.Write(under, BundledFaces.Regular, Small, 18, top + high, width);
        if (row.Mass is { } mass)
        {
            pages.Figure(BundledFaces.SemiBold, BenchMass.Grams(mass) + " g", right, top, Body);
            pages.Figure(BundledFaces.Regular, BenchMass.Ounces(mass) + " oz", pages.Width * 0.74, top, Body);
            if (row.IsWritten)
            {
                pages.Write("g", BundledFaces.Regular, Small, pages.Width - 8, top + 2, 10);
                pages.Rule(pages.Width * 0.78, top + Body + 1, pages.Width * 0.22 - 12, 0.4);
            }
        }
        pages.Down(high + 2 * Padding - 4);
        pages.Rule(0, pages.Y, pages.Width, 0.25);
    }

    private static void Blanks(BenchPages pages, PaperWords words)
    {
        pages.NewPageUnless(34);
        foreach (var (text, at) in new[] { words["pieces-made"], words["not-sold"], words["together-weigh"] }.Select((t, i) => (t, i)))
        {
            var x = at * pages.Width / 3;
            pages.Rule(x, pages.Y + 22, pages.Width / 3 - 14, 0.4);
            pages.Write(text, BundledFaces.Regular, Small, x, pages.Y + 26, pages.Width / 3 - 14);
        }
        pages.Down(40);
    }
}
