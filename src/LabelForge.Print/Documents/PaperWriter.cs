using LabelForge.Print.Drawing;
using LabelForge.Print.Lettering;
using LabelForge.Print.Output;

namespace LabelForge.Print.Documents;

/// <summary>Writes a paper of a product as a PDF.</summary>
public static class PaperWriter
{
    private const double Body = 9.5;
    private const double Small = 7.5;
    private const double Heading = 12;
    private const double Gap = 8;

    /// <summary>Writes it as a PDF, whole or not at all.</summary>
    /// <exception cref="InputException">The file cannot be written, or the type has no letter for a character.</exception>
    public static void WritePdf(string path, Paper paper, DocumentInfo info) =>
        AtomicFile.Write(path, stream => WritePdf(stream, paper, info));

    /// <summary>Writes it as a PDF.</summary>
    /// <exception cref="InputException">The type has no letter for a character.</exception>
    public static void WritePdf(Stream stream, Paper paper, DocumentInfo info)
    {
        var pages = new BenchPages(paper.PageWidth, paper.PageHeight);
        pages.Down(pages.Write(paper.Title, BundledFaces.SemiBold, 22, 0, pages.Y, pages.Width) + 2);
        pages.Down(pages.Write(paper.Subtitle, BundledFaces.Regular, 11, 0, pages.Y, pages.Width) + 2);
        pages.Down(pages.Write(paper.Source, BundledFaces.Regular, Small, 0, pages.Y, pages.Width) + 6);
        foreach (var note in paper.Notes)
            Line(pages, note, BundledFaces.Regular, Body, 0);
        Missing(pages, paper);
        foreach (var section in paper.Sections)
            Section(pages, section);
        pages.Foot((page, count) => Invariant($"{paper.Foot}{(paper.Foot.Length > 0 ? " · " : "")}page {page} of {count}"),
            BundledFaces.Regular, Small);
        pages.WritePdf(stream, info);
    }

    // What is missing stands first: a paper that looks whole and is not would be believed.
    private static void Missing(BenchPages pages, Paper paper)
    {
        var missing = paper.Missing.Select(m => m.Section.Title).Distinct().ToArray();
        if (missing.Length == 0)
            return;
        pages.Down(4);
        var count = paper.Missing.Count();
        Line(pages,
            Invariant($"{count} {(count == 1 ? "thing is" : "things are")} missing, each marked where it belongs: {string.Join("; ", missing)}."), BundledFaces.SemiBold, Body, 0);
    }

    private static void Section(BenchPages pages, PaperSection section)
    {
        pages.Down(10);
        pages.NewPageUnless(64);
        pages.Rule(0, pages.Y, pages.Width, 0.9);
        pages.Down(5);
        var high = pages.Write(section.Title, BundledFaces.SemiBold, Heading, 0, pages.Y, pages.Width * 0.66);
        if (section.Source is { } source)
            high = Math.Max(high, pages.Write(source, BundledFaces.Regular, Small, pages.Width * 0.69, pages.Y + 2, pages.Width * 0.31));
        pages.Down(high + 4);
        foreach (var fact in section.Facts)
        {
            if (fact.IsQuestion)
                Question(pages, fact.What);
            else
                Fact(pages, fact);
        }
        // Lines to write on stand under what they are for, and not by themselves on the next page.
        pages.NewPageUnless(22 * section.Blanks);
        for (var i = 0; i < section.Blanks; i++)
        {
            pages.Down(20);
            pages.Rule(0, pages.Y, pages.Width, 0.3);
        }
        if (section.Blanks > 0)
            pages.Down(8);
        if (section.Table is { } table)
            Table(pages, table);
        foreach (var label in section.Labels)
            Label(pages, label);
        foreach (var note in section.Notes)
            Line(pages, note, BundledFaces.Regular, Body, 0);
    }

    private static void Fact(BenchPages pages, PaperFact fact)
    {
        var (left, width) = (pages.Width * 0.3, pages.Width * 0.7);
        var (face, text) = fact.Missing is { } missing
            ? (BundledFaces.SemiBold, $"MISSING. {missing}")
            : (BundledFaces.Regular, fact.Value!.Text);
        var high = Math.Max(pages.HeightOf(fact.What, BundledFaces.Regular, Body, left - Gap), pages.HeightOf(text, face, Body, width));
        pages.NewPageUnless(high + 16);
        pages.Write(fact.What, BundledFaces.Regular, Body, 0, pages.Y, left - Gap);
        pages.Write(text, face, Body, left, pages.Y, width);
        pages.Down(high + 1);
        if (fact.Source is { } source)
            pages.Down(pages.Write(source, BundledFaces.Regular, Small, left, pages.Y, width));
        pages.Down(3);
    }

    // The question over the width, and a line to write on.
    private static void Question(BenchPages pages, string question)
    {
        pages.NewPageUnless(pages.HeightOf(question, BundledFaces.Regular, Body, pages.Width) + 26);
        pages.Down(pages.Write(question, BundledFaces.Regular, Body, 0, pages.Y, pages.Width) + 16);
        pages.Rule(0, pages.Y, pages.Width, 0.3);
        pages.Down(6);
    }

    private static void Table(BenchPages pages, PaperTable table)
    {
        var whole = table.Columns.Sum(c => c.Width);
        var left = new double[table.Columns.Length];
        for (var i = 1; i < left.Length; i++)
            left[i] = left[i - 1] + table.Columns[i - 1].Width / whole * pages.Width;
        double Width(int i) => table.Columns[i].Width / whole * pages.Width - (i == left.Length - 1 ? 0 : Gap);
        void Row(IReadOnlyList<string> cells, TypeFace face, double size, double high)
        {
            for (var i = 0; i < cells.Count; i++)
            {
                if (table.Columns[i].IsFigure)
                    pages.Write(cells[i], face, size, left[i], pages.Y, Width(i), toRight: true);
                else
                    pages.Write(cells[i], face, size, left[i], pages.Y, Width(i));
            }
            pages.Down(high);
        }
        double High(IReadOnlyList<string> cells, TypeFace face, double size) =>
        cells.Select((c, i) => pages.HeightOf(c, face, size, Width(i))).Max();
        string[] heading = [.. table.Columns.Select(c => c.Heading)];
        void Head()
        {
            Row(heading, BundledFaces.Regular, Small, High(heading, BundledFaces.Regular, Small) + 2);
            pages.Rule(0, pages.Y, pages.Width, 0.6);
            pages.Down(3);
        }
        pages.Down(2);
        pages.NewPageUnless(60);
        Head();
        foreach (var row in table.Rows)
        {
            string[] cells = [.. row.Select(v => v.Text)];
            var high = High(cells, BundledFaces.Regular, Body);
            if (pages.NewPageUnless(high + 8))
                Head();
            Row(cells, BundledFaces.Regular, Body, high + 2);
            pages.Rule(0, pages.Y, pages.Width, 0.2);
            pages.Down(3);
        }
    }

    private static void Label(BenchPages pages, LabelLayout label)
    {
        var (width, height) = (Points.Of(label.Design.Width), Points.Of(label.Design.Height));
        var scale = Math.Min(1, Math.Min(pages.Width / width, 380 / height));
        pages.NewPageUnless(height * scale + 24);
        pages.Down(4);
        var (x, y) = (BenchPages.Margin, pages.Y);
        pages.Paint(canvas =>
        {
            var state = canvas.Save();
            canvas.Translate((float)x, (float)y);
            canvas.Scale((float)scale);
            LabelPainter.Paint(canvas, label, 0, 0);
            canvas.RestoreToCount(state);
        });
        pages.Frame(0, y, width * scale, height * scale);
        pages.Down(height * scale + 4);
        Line(pages,
            scale < 1
                ? Invariant($"{scale:0.00} of its size.")
                : "At its size where the page is printed at actual size.", BundledFaces.Regular, Small, 0);
    }

    private static void Line(BenchPages pages, string text, TypeFace face, double size, double indent)
    {
        pages.NewPageUnless(pages.HeightOf(text, face, size, pages.Width - indent));
        pages.Down(pages.Write(text, face, size, indent, pages.Y, pages.Width - indent) + 3);
    }
}
