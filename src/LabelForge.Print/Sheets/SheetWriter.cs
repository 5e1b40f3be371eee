using LabelForge.Measures;
using LabelForge.Print.Drawing;
using LabelForge.Print.Lettering;
using LabelForge.Print.Output;
using SkiaSharp;

namespace LabelForge.Print.Sheets;

/// <summary>Lays labels out on label stock and writes the sheets as one PDF.</summary>
public static class SheetWriter
{
    /// <summary>The most labels in one document; more is taken for a slip of the finger.</summary>
    public const int MostLabels = 100_000;

    // A label may be as much larger than its stock as rounding to a tenth of a millimetre makes it.
    private const decimal SizeTolerance = 0.1m;

    /// <summary>Writes copies of one label.</summary>
    /// <param name="path">Where; written whole or not at all.</param>
    /// <param name="label">The label.</param>
    /// <param name="stock">The sheets.</param>
    /// <param name="info">Title and time of the document.</param>
    /// <param name="first">The first position used on the first sheet, from 1: a part-used sheet starts later.</param>
    /// <param name="count">How many labels; null for what is left of one sheet.</param>
    /// <exception cref="InputException">The label is larger than the stock's, a number is out of range, or the file cannot be written.</exception>
    public static void WritePdf(string path, LabelLayout label, LabelStock stock, DocumentInfo info, int first = 1, int? count = null)
    {
        var plan = Plan(stock, first, count);
        RefuseWrongSize(label, stock);
        AtomicFile.Write(path, stream => WritePdf(stream, _ => label, stock, plan, info));
    }

    /// <summary>Writes labels that differ, in order.</summary>
    /// <param name="path">Where; written whole or not at all.</param>
    /// <param name="labels">The labels.</param>
    /// <param name="stock">The sheets.</param>
    /// <param name="info">Title and time of the document.</param>
    /// <param name="first">The first position used on the first sheet, from 1.</param>
    /// <exception cref="InputException">A label is larger than the stock's, a number is out of range, or the file cannot be written.</exception>
    public static void WritePdf(string path, IReadOnlyList<LabelLayout> labels, LabelStock stock, DocumentInfo info, int first = 1)
    {
        var plan = Plan(stock, first, labels.Count);
        foreach (var label in labels)
            RefuseWrongSize(label, stock);
        AtomicFile.Write(path, stream => WritePdf(stream, i => labels[i], stock, plan, info));
    }

    /// <summary>Which positions are filled.</summary>
    /// <exception cref="InputException">A number is out of range.</exception>
    public static SheetPlan Plan(LabelStock stock, int first, int? count)
    {
        if (first < 1 || first > stock.PerSheet)
            throw new InputException(new Problem(null, 0, $"There is no position {first} on {stock.Id}.", $"Write a first position from 1 to {stock.PerSheet}."));
        if (count is < 1 or > MostLabels)
            throw new InputException(new Problem(null, 0, $"{count} labels cannot be laid out.", $"Write a count from 1 to {MostLabels}."));
        return new SheetPlan(first, count ?? stock.PerSheet - first + 1, stock.PerSheet);
    }

    private static void RefuseWrongSize(LabelLayout label, LabelStock stock)
    {
        var design = label.Design;
        if (design.Round != (stock.Shape == StockShape.Round) || Larger(design.Width, stock.LabelWidth) || Larger(design.Height, stock.LabelHeight))
        {
            var fitting = LabelStock.All.Where(s => design.Round == (s.Shape == StockShape.Round) && !Larger(design.Width, s.LabelWidth) && !Larger(design.Height, s.LabelHeight)).Select(s => s.Id).ToList();
            throw new InputException(new Problem(null, 0,
                $"The design {design.Id} ({design.Width} by {design.Height}) does not fit the labels of {stock.Id} ({stock.LabelWidth} by {stock.LabelHeight}{(stock.Shape == StockShape.Round ? ", round" : "")}).",
                fitting.Count == 0 ? "Choose another design." : $"Choose stock that it fits: {string.Join(", ", fitting)}."));
        }
    }

    private static bool Larger(Length design, Length stock) => design.Millimetres > stock.Millimetres + SizeTolerance;

    // A design smaller than the stock's label stands in the middle of it.
    private static void WritePdf(Stream stream, Func<int, LabelLayout> label, LabelStock stock, SheetPlan plan, DocumentInfo info) =>
        PdfFile.Write(stream, info, Points.Of(stock.PageWidth), Points.Of(stock.PageHeight),
            Enumerable.Range(0, plan.Sheets).Select(sheet => (Action<SKCanvas>)(canvas =>
            {
                foreach (var (index, position) in plan.OnSheet(sheet))
                {
                    var (x, y) = stock.CornerOf(position);
                    var one = label(index);
                    LabelPainter.Paint(canvas, one,
                        Points.Of(x) + (Points.Of(stock.LabelWidth) - Points.Of(one.Design.Width)) / 2,
                        Points.Of(y) + (Points.Of(stock.LabelHeight) - Points.Of(one.Design.Height)) / 2);
                }
            })));
}
