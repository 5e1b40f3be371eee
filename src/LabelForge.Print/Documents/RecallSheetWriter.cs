using LabelForge.Print.Lettering;
using LabelForge.Print.Output;

namespace LabelForge.Print.Documents;

/// <summary>Writes a recall sheet: steps to tick and facts, then a letter to a page.</summary>
public static class RecallSheetWriter
{
    private const double Body = 11;
    private const double WholePage = 10_000;

    /// <summary>Writes the sheet as a PDF, whole or not at all.</summary>
    /// <exception cref="LabelForge.Measures.InputException">The file cannot be written, or the
    /// type has no letter for a character.</exception>
    public static void WritePdf(string path, RecallSheetContent content, DocumentInfo info) => AtomicFile.Write(path, stream =>
    {
        var pages = new BenchPages();
        pages.Down(pages.Write(content.Title, BundledFaces.SemiBold, 24, 0, pages.Y, pages.Width) + 8);
        Paragraph(pages, content.Summary, 0);
        foreach (var part in content.Parts.Where(p => !p.Lines.IsEmpty))
        {
            pages.NewPageUnless(70);
            pages.Down(12);
            pages.Down(pages.Write(part.Heading, BundledFaces.SemiBold, 13, 0, pages.Y, pages.Width) + 2);
            pages.Rule(0, pages.Y, pages.Width, 0.9);
            pages.Down(6);
            foreach (var line in part.Lines)
            {
                pages.NewPageUnless(40);
                if (part.ToTick)
                    pages.Box(0, pages.Y, 10);
                Paragraph(pages, line, part.ToTick ? 20 : 0);
            }
        }
        foreach (var letter in content.Letters)
        {
            pages.NewPageUnless(WholePage);
            foreach (var paragraph in letter)
            {
                Paragraph(pages, paragraph, 0);
                pages.Down(8);
            }
        }
        pages.WritePdf(stream, info);
    });

    private static void Paragraph(BenchPages pages, string text, double indent)
    {
        pages.NewPageUnless(30);
        pages.Down(pages.Write(text, BundledFaces.Regular, Body, indent, pages.Y, pages.Width - indent) + 4);
    }
}
