using LabelForge.Print.Drawing;
using LabelForge.Print.Lettering;
using LabelForge.Print.Output;
using SkiaSharp;

namespace LabelForge.Print.Documents;

/// <summary>Pages filled from the top down; what is drawn is kept per page and replayed when the
/// file is written. Units are points.</summary>
internal sealed class BenchPages(Length pageWidth, Length pageHeight)
{
    public const double Margin = 48;

    private const double Lead = 1.2;

    private readonly List<List<Action<SKCanvas, SKPaint>>> pages = [[]];

    /// <summary>Pages of US Letter.</summary>
    public BenchPages() : this(Length.FromInches(8.5m), Length.FromInches(11m))
    {
    }

    public double Width { get; } = Points.Of(pageWidth) - 2 * Margin;

    public double Y { get; private set; } = Margin;

    private IEnumerable<Action<SKCanvas>> Pages => pages.Select(page => (Action<SKCanvas>)(canvas =>
    {
        using var ink = new SKPaint { Color = SKColors.Black, IsAntialias = true, StrokeWidth = 0.6f };
        foreach (var draw in page)
            draw(canvas, ink);
    }));

    /// <summary>Writes the pages as a PDF, and those of others after them.</summary>
    public void WritePdf(Stream stream, DocumentInfo info, params IEnumerable<BenchPages> more) => PdfFile.Write(stream, info,
        Points.Of(pageWidth), Points.Of(pageHeight), Pages.Concat(more.SelectMany(p => p.Pages)));

    public void Down(double by) => Y += by;

    /// <summary>Starts a page where the room left is less than asked for.</summary>
    public bool NewPageUnless(double room)
    {
        if (Y + room <= Points.Of(pageHeight) - Margin)
            return false;
        pages.Add([]);
        Y = Margin;
        return true;
    }

    /// <summary>Lines of running text, each set to the right where wanted; gives the height used. Nothing moves down.</summary>
    public double Write(string text, TypeFace face, double size, double x, double top, double width, bool toRight = false)
    {
        var lines = Lines(text, face, size, width);
        for (var i = 0; i < lines.Count; i++)
            Draw(lines[i], x + (toRight ? width - lines[i].Width : 0), top + i * size * Lead + size * face.CapitalHeight);
        return Math.Max(1, lines.Count) * size * Lead;
    }

    /// <summary>A figure that ends at a place.</summary>
    public void Figure(TypeFace face, string text, double right, double top, double size)
    {
        var measured = new MeasuredText(face, size, face.Shape(text));
        Draw(measured, right - measured.Width, top + size * face.CapitalHeight);
    }

    /// <summary>The height that running text would take.</summary>
    public double HeightOf(string text, TypeFace face, double size, double width) =>
        Math.Max(1, Lines(text, face, size, width).Count) * size * Lead;

    /// <summary>Writes a line at the foot of every page that there is now, given the page's
    /// number, from 1, and how many there are.</summary>
    public void Foot(Func<int, int, string> words, TypeFace face, double size)
    {
        for (var i = 0; i < pages.Count; i++)
        {
            var text = new MeasuredText(face, size, face.Shape(words(i + 1, pages.Count)));
            pages[i].Add((canvas, ink) => LabelPainter.Paint(canvas, text, Margin, Points.Of(pageHeight) - Margin / 2, ink));
        }
    }

    /// <summary>A thin frame.</summary>
    public void Frame(double x, double y, double width, double height)
    {
        Rule(x, y, width, 0.3);
        Rule(x, y + height, width, 0.3);
        Upright(x, y, height);
        Upright(x + width, y, height);
    }

    private static List<MeasuredText> Lines(string text, TypeFace face, double size, double width)
    {
        var items = Paragraph.OfWords(text, face).SelectMany(i => i.Width * size > width ? Pieces(i, width / size) : [i]).ToList();
        return [.. Paragraph.Break(items, width / size).Lines
            .Select(l => MeasuredText.OfWords(face, size, [.. items.Take(l).Select(w => w.Text)], 0, false))];
    }

    public void Draw(MeasuredText text, double x, double baseline) =>
        pages[^1].Add((canvas, ink) => LabelPainter.Paint(canvas, text, Margin + x, baseline, ink));

    /// <summary>Something of one's own on the page, in points from its top left corner.</summary>
    public void Paint(Action<SKCanvas> draw) => pages[^1].Add((canvas, _) => draw(canvas));

    public void Rule(double x, double y, double length, double thickness = 0.5) =>
        pages[^1]
            .Add((canvas, ink) => canvas.DrawRect(SKRect.Create((float)(Margin + x), (float)y, (float)length, (float)thickness), ink));

    public void Box(double x, double y, double side)
    {
        Rule(x, y, side);
        Rule(x, y + side, side + 0.5);
        Upright(x, y, side);
        Upright(x + side, y, side);
    }

    public void Block(InkBlock block, double x, double y) => pages[^1].Add((canvas, _) =>
    {
        using var bars = new SKPaint { Color = SKColors.Black, IsAntialias = false };
        foreach (var bar in block.Bars)
            canvas.DrawRect(SKRect.Create((float)(Margin + x + Points.OfMillimetres(bar.XMm)), (float)(y + Points.OfMillimetres(bar.YMm)),
                (float)Points.OfMillimetres(bar.WidthMm), (float)Points.OfMillimetres(bar.HeightMm)), bars);
    });

    public void Upright(double x, double y, double height) =>
        pages[^1].Add((canvas, ink) => canvas.DrawRect(SKRect.Create((float)(Margin + x), (float)y, 0.4f, (float)height), ink));

    // A word wider than its column (a long chemical name) goes on in the next line rather than over its neighbour.
    private static IEnumerable<ParagraphItem> Pieces(ParagraphItem item, double width)
    {
        var start = 0;
        for (var end = 1; end <= item.Text.Length; end++)
        {
            if (end < item.Text.Length && (end == start || item.Face.Shape(item.Text[start..(end + 1)]).Width <= width))
                continue;
            yield return new ParagraphItem(item.Face, item.Text[start..end]);
            start = end;
        }
    }
}
