using LabelForge.Print.Drawing;
using LabelForge.Print.Lettering;
using LabelForge.Print.Output;
using LabelForge.Print.Output.Pdf;
using LabelForge.Print.Sheets;

namespace LabelForge.Print.Jobs;

/// <summary>
/// Writes sheets of labels that all differ, page by page: however many there are, one page is in memory. What the labels
/// have in common is drawn once and placed; the number and the barcode of each are written where they stand.
/// </summary>
public static class SerialSheets
{
    /// <summary>Writes the sheets.</summary>
    /// <param name="path">Where; written whole or not at all.</param>
    /// <param name="order">The stock, the first position, how the print is moved, cut marks; its runs hold the sample.</param>
    /// <param name="info">Title and time of the document.</param>
    /// <param name="done">Told the number of sheets done; may be null.</param>
    /// <exception cref="InputException">A label is larger than the stock's, a number is out of
    /// range, or the file cannot be written.</exception>
    public static void WritePdf(string path, SerialLabels labels, SheetOrder order, DocumentInfo info, Action<int>? done = null)
    {
        var plan = order.Plan();
        AtomicFile.Write(path, stream =>
        {
            var document = new FormDocument(stream, info);
            var (form, fonts) = Draw(document, labels);
            var design = labels.Sample.Design;
            var (bleed, turns) = (Points.Of(design.Bleed), StockFit.Turns(design, order.Stock));
            foreach (var (page, sheet) in SheetWriter.Pages(document, order, plan, done))
            {
                foreach (var (index, position) in plan.OnSheet(sheet))
                {
                    var (x, y) = SheetWriter.LabelCorner(order.Stock, position, design);
                    var part = labels.Part(index);
                    if (turns)
                    {
                        page.Turn(x, y, Points.Of(design.Width));
                        (x, y) = (0, 0);
                    }
                    page.Place(form, x - bleed, y - bleed);
                    if (part.Symbol is { } symbol)
                        page.Fill(symbol, x, y, labels.SymbolInk);
                    foreach (var line in part.Lines)
                        page.Write(line, fonts[line.Text.Face], x, y, design.Ink);
                    if (turns)
                        page.TurnBack();
                }
            }
            document.Finish();
        });
    }

    private static (PlacedForm Form, IReadOnlyDictionary<TypeFace, PdfFont> Fonts) Draw(FormDocument document, SerialLabels labels)
    {
        var (common, bleed) = (labels.Common, Points.Of(labels.Sample.Design.Bleed));
        // The letters of each label's own lines, and every figure that a number may bring.
        MeasuredText[] spelt = [.. labels.OwnLines.GroupBy(l => l.Text.Face)
            .Select(g => MeasuredText.OfWords(g.Key, g.First().Text.Size,
                [.. g.SelectMany(l => l.Text.Text.Split(' ')).Distinct(), "0123456789"], 0, false))];
        using var faces = DrawnFaces.Of(common.Lines.Select(l => l.Text).Concat(spelt));
        return document.Draw(
            FormDocument.Whole(Points.Of(common.Design.Width) + 2 * bleed),
            FormDocument.Whole(Points.Of(common.Design.Height) + 2 * bleed),
            faces,
            canvas => LabelPainter.Paint(canvas, common, bleed, bleed, faces),
            spelt);
    }
}
