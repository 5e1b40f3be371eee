using LabelForge.Checks;
using LabelForge.Print.Documents;
using LabelForge.Print.Drawing;
using LabelForge.Print.Lettering;
using LabelForge.Print.Output;
using SkiaSharp;

namespace LabelForge.Print.Findings;

/// <summary>A check's report as PDF: the label with the places marked, what was read, and the findings.</summary>
public static class FindingsPdf
{
    private const double Body = 10;

    /// <summary>Writes the report, whole or not at all.</summary>
    /// <param name="path">Where to.</param>
    /// <param name="labels">What was checked, each with its answer; one or more.</param>
    /// <param name="on">The day they were judged by.</param>
    public static void Write(string path, ImmutableArray<JudgedLabel> labels, DateOnly on) => AtomicFile.Write(path, stream =>
    {
        var pages = new BenchPages();
        foreach (var label in labels)
            Write(pages, label, on);
        pages.WritePdf(stream, new DocumentInfo(string.Join("; ", labels.Select(l => l.Title)), on));
    });

    private static void Write(BenchPages pages, JudgedLabel label, DateOnly on)
    {
        var report = label.Report;
        Paragraph(pages, Printable(label.Title), BundledFaces.SemiBold, 18, 0);
        Paragraph(pages,
            Invariant($"Checked against the rules of {report.Market} as of {on:yyyy-MM-dd}. This is not legal advice."), BundledFaces.Regular,
            Body, 0);
        foreach (var picture in label.Pages)
            Picture(pages, picture);
        foreach (var (what, text) in report.Found.Parts)
            Paragraph(pages, $"{what}: {(string.IsNullOrEmpty(text) ? "(none)" : Printable(text))}", BundledFaces.Regular, Body, 0);
        var number = 0;
        foreach (var finding in report.Findings)
        {
            pages.NewPageUnless(60);
            pages.Down(6);
            Paragraph(pages, Printable($"{++number}. {finding.Severity.ToString().ToUpperInvariant()}: {finding.Message}"),
                BundledFaces.SemiBold, Body, 0);
            Paragraph(pages, Printable(finding.Fix), BundledFaces.Regular, Body, 12);
            Paragraph(pages, Printable($"{finding.Rule}; {finding.Source}"), BundledFaces.Regular, 8, 12);
        }
        if (report.Findings.IsEmpty)
            Paragraph(pages, "Nothing was found wrong or missing by these checks.", BundledFaces.Regular, Body, 0);
    }

    private static void Picture(BenchPages pages, MarkedPage picture)
    {
        const double Most = 330;
        var scale = Math.Min(1.5, Math.Min(pages.Width / picture.Width, Most / picture.Height));
        pages.NewPageUnless((picture.Height * scale) + 24);
        var top = pages.Y + 12;
        pages.Paint(canvas =>
        {
            canvas.Save();
            canvas.Translate((float)BenchPages.Margin, (float)top);
            canvas.Scale((float)scale);
            MarkedPagePainter.Paint(canvas, picture);
            canvas.Restore();
        });
        pages.Down((picture.Height * scale) + 24);
    }

    private static void Paragraph(BenchPages pages, string text, TypeFace face, double size, double indent)
    {
        pages.NewPageUnless(30);
        pages.Down(pages.Write(text, face, size, indent, pages.Y, pages.Width - indent) + 3);
    }

    // The bundled type has no glyph for some letters that a label may hold; a question mark stands for them.
    private static string Printable(string text) =>
        string.Concat(text.Select(c => char.IsControl(c) || !BundledFaces.Regular.Has(c) ? (char.IsWhiteSpace(c) ? ' ' : '?') : c));
}
