using LabelForge.Papers;
using LabelForge.Print.Lettering;
using LabelForge.Print.Output;

namespace LabelForge.Print.Documents;

/// <summary>A product on a tally sheet.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Price">What a piece costs, in words; empty where no price is set.</param>
/// <param name="Brought">Pieces that are brought; null for a line to write on.</param>
public sealed record TallyPaperRow(string Name, string Price, int? Brought);

/// <summary>A tally sheet for a table without a computer: boxes to tick, the float and the takings.</summary>
/// <param name="Title">The market and its day.</param>
/// <param name="Subtitle">A line under it.</param>
/// <param name="Rows">The products, in the order of the form that books it.</param>
public sealed record TallyPaper(string Title, string Subtitle, ImmutableArray<TallyPaperRow> Rows)
{
    /// <summary>The language of the sheet.</summary>
    public PaperWords Words { get; init; } = PaperWords.English;
}

/// <summary>The summary of a market day, to keep.</summary>
/// <param name="Title">The market and its day.</param>
/// <param name="Subtitle">A line under it.</param>
/// <param name="Heading">The table's heading; the first column is words, the others are figures.</param>
/// <param name="Rows">The table.</param>
/// <param name="Sums">Sums below it, in words and figures.</param>
public sealed record DayPaper(string Title, string Subtitle, ImmutableArray<string> Heading, ImmutableArray<ImmutableArray<string>> Rows,
    ImmutableArray<(string What, string Sum)> Sums);

/// <summary>Writes the papers of a market day.</summary>
public static class TablePapers
{
    private const double Body = 11;
    private const double Small = 8.5;
    private const int BoxesInARow = 20;

    /// <summary>Writes a tally sheet as a PDF.</summary>
    /// <exception cref="InputException">The type has no letter for a character.</exception>
    public static void WritePdf(Stream stream, TallyPaper paper, DocumentInfo info) => Write(stream, info, pages =>
    {
        Head(pages, paper.Title, paper.Subtitle);
        foreach (var (heading, x) in new[] { (paper.Words["product"], 0.0), (paper.Words["price"], 132.0), (paper.Words["brought"], 184.0),
            (paper.Words["strokes"], 224.0) })
            pages.Write(heading, BundledFaces.Regular, Small, x, pages.Y, 100);
        pages.Figure(BundledFaces.Regular, paper.Words["in-all"], pages.Width, pages.Y, Small);
        pages.Down(14);
        pages.Rule(0, pages.Y, pages.Width, 0.9);
        foreach (var row in paper.Rows)
        {
            pages.NewPageUnless(46);
            pages.Write(row.Name, BundledFaces.SemiBold, Body, 0, pages.Y + 4, 128);
            pages.Write(row.Price, BundledFaces.Regular, Body, 132, pages.Y + 4, 50);
            pages.Write(row.Brought is { } brought ? brought.ToString(CultureInfo.InvariantCulture) : "____", BundledFaces.Regular, Body,
                184, pages.Y + 4, 34);
            for (var i = 0; i < BoxesInARow; i++)
            {
                // A gap behind each five, so that strokes are counted at a glance.
                var x = 224 + i * 11.6 + i / 5 * 5;
                pages.Box(x, pages.Y + 5, 9);
            }
            pages.Rule(pages.Width - 26, pages.Y + 16, 26, 0.4);
            pages.Down(22);
            pages.Rule(0, pages.Y, pages.Width, 0.25);
        }
        pages.Down(18);
        foreach (var blank in new[] { "box-start", "by-card", "box-end", "given-away" })
        {
            pages.NewPageUnless(30);
            pages.Write(paper.Words[blank], BundledFaces.Regular, Body, 0, pages.Y, 220);
            pages.Rule(220, pages.Y + Body, 110, 0.4);
            pages.Down(26);
        }
    });

    /// <summary>Writes the summary of a day as a PDF.</summary>
    /// <exception cref="InputException">The type has no letter for a character.</exception>
    public static void WritePdf(Stream stream, DayPaper paper, DocumentInfo info) => Write(stream, info, pages =>
    {
        Head(pages, paper.Title, paper.Subtitle);
        Row(pages, paper.Heading, BundledFaces.Regular, Small);
        pages.Rule(0, pages.Y, pages.Width, 0.9);
        foreach (var row in paper.Rows)
        {
            pages.NewPageUnless(30);
            Row(pages, row, BundledFaces.Regular, Body);
            pages.Rule(0, pages.Y, pages.Width, 0.25);
        }
        pages.Down(16);
        foreach (var (what, sum) in paper.Sums)
        {
            pages.NewPageUnless(24);
            pages.Write(what, BundledFaces.Regular, Body, 0, pages.Y, 220);
            pages.Figure(BundledFaces.SemiBold, sum, 320, pages.Y, Body);
            pages.Down(18);
        }
    });

    private static void Write(Stream stream, DocumentInfo info, Action<BenchPages> draw)
    {
        var pages = new BenchPages();
        draw(pages);
        pages.WritePdf(stream, info);
    }

    private static void Head(BenchPages pages, string title, string subtitle)
    {
        pages.Down(pages.Write(title, BundledFaces.SemiBold, 24, 0, pages.Y, pages.Width));
        pages.Down(pages.Write(subtitle, BundledFaces.Regular, Body, 0, pages.Y, pages.Width) + 12);
    }

    private static void Row(BenchPages pages, ImmutableArray<string> cells, TypeFace face, double size)
    {
        var high = pages.Write(cells[0], face, size, 0, pages.Y + 5, pages.Width * 0.38);
        for (var i = 1; i < cells.Length; i++)
            pages.Figure(face, cells[i], pages.Width * (0.38 + 0.62 * i / (cells.Length - 1)), pages.Y + 5, size);
        pages.Down(high + 8);
    }
}
