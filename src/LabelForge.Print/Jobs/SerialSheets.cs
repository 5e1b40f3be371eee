using LabelForge.Measures;
using LabelForge.Print.Drawing;
using LabelForge.Print.Lettering;
using LabelForge.Print.Output;
using LabelForge.Print.Sheets;
using SkiaSharp;

namespace LabelForge.Print.Jobs;

/// <summary>Writes sheets of labels that all differ, page by page: however many there are, one page is in memory.</summary>
public static class SerialSheets
{
    /// <summary>Writes the sheets.</summary>
    /// <param name="path">Where; written whole or not at all.</param>
    /// <param name="labels">The labels.</param>
    /// <param name="order">The stock, the first position, how the print is moved, cut marks; its runs hold the sample.</param>
    /// <param name="info">Title and time of the document.</param>
    /// <param name="done">Told the number of sheets done; may be null.</param>
    /// <exception cref="InputException">A label is larger than the stock's, a number is out of range, or the file cannot be written.</exception>
    public static void WritePdf(string path, SerialLabels labels, SheetOrder order, DocumentInfo info, Action<int>? done = null)
    {
        var plan = order.Plan();
        using var faces = DrawnFaces.Of(labels.Sample.Lines.SelectMany(l => Wanted(l.Text)));
        AtomicFile.Write(path, stream => PdfFile.Write(stream, info, Points.Of(order.Stock.PageWidth), Points.Of(order.Stock.PageHeight),
            Enumerable.Range(0, plan.Sheets).Select(sheet => (Action<SKCanvas>)(canvas =>
            {
                DrawSheet(canvas, labels, order, plan, sheet, faces);
                done?.Invoke(sheet + 1);
            }))));
    }

    private static void DrawSheet(SKCanvas canvas, SerialLabels labels, SheetOrder order, SheetPlan plan, int sheet, DrawnFaces faces)
    {
        var (x0, y0) = order.Correction.Apply(0, 0);
        canvas.Translate((float)x0, (float)y0);
        canvas.Scale((float)order.Correction.FactorX, (float)order.Correction.FactorY);
        if (order.CutMarks)
            PicturePainter.Paint(canvas, new Picture(order.Stock.PageWidth, order.Stock.PageHeight) { Strokes = CutMarks.Of(order.Stock) });
        foreach (var (index, position) in plan.OnSheet(sheet))
        {
            var label = labels[index];
            var (x, y) = SheetWriter.LabelCorner(order.Stock, position, label.Design);
            LabelPainter.Paint(canvas, label, x, y, faces);
        }
    }

    // The sample's letters, and every figure that a number may bring.
    private static IEnumerable<MeasuredText> Wanted(MeasuredText text) => [text, text with { Shape = text.Face.Shape("0123456789") }];
}
