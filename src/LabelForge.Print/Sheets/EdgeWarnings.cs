using LabelForge.Print.Drawing;
using LabelForge.Print.Lettering;

namespace LabelForge.Print.Sheets;

/// <summary>Says where ink would fall on the edge of a sheet that a printer cannot reach.</summary>
public static class EdgeWarnings
{
    // Less than this is within what paper slips in the feed; points.
    private const double Tolerance = 0.05 * 72 / 25.4;

    /// <summary>One sentence for each edge that ink comes too near to; none for a roll, whose
    /// printer prints on the label's whole width.</summary>
    /// <param name="order">What stands on the sheets.</param>
    public static IEnumerable<string> Of(SheetOrder order, Printer printer)
    {
        if (order.Stock.Kind == StockKind.Roll)
            yield break;
        var (width, height) = (Points.Of(order.Stock.PageWidth), Points.Of(order.Stock.PageHeight));
        var ink = Ink(order);
        var edges = new (string Name, double Reach, Measures.Length Blank)[]
        {
            ("left", ink.Left, printer.Blank.Left), ("top", ink.Top, printer.Blank.Top),
            ("right", width - ink.Right, printer.Blank.Right), ("bottom", height - ink.Bottom, printer.Blank.Bottom),
        };
        foreach (var (name, reach, blank) in edges.Where(e => e.Reach < Points.Of(e.Blank) - Tolerance))
        {
            var how = reach < 0
                ? FormattableString.Invariant($"runs {-reach * 25.4 / 72:0.0} mm over the {name} edge of the sheet")
                : FormattableString.Invariant($"comes within {reach * 25.4 / 72:0.0} mm of the {name} edge of the sheet");
            var whose = printer.Id.Length == 0 ? "most desk printers cannot" : $"the printer {printer.Id} cannot";
            yield return FormattableString.Invariant(
                $"The print {how}; {whose} print on the outermost {blank.Millimetres:0.0} mm, and that part would stay blank. Use stock with wider margins, a design with more padding, or a printer that prints to the edge.");
        }
    }

    // Every position of the first sheets counts once; later sheets are filled as the second.
    private static InkBox Ink(SheetOrder order)
    {
        var box = InkBox.None;
        var plan = order.Plan();
        var index = 0;
        foreach (var run in order.Runs)
        {
            var own = InkBox.Of(run.Label);
            for (var i = 0; i < Math.Min(run.Count, 2 * plan.PerSheet); i++)
            {
                var position = (order.First - 1 + index + i) % plan.PerSheet + 1;
                var (x, y) = SheetWriter.LabelCorner(order.Stock, position, run.Label.Design);
                // Turned to the left, its right side comes to stand at the top.
                var wide = Points.Of(run.Label.Design.Width);
                var lies = StockFit.Turns(run.Label.Design, order.Stock)
                    ? (Left: own.Top, Top: wide - own.Right, Right: own.Bottom, Bottom: wide - own.Left)
                    : (own.Left, own.Top, own.Right, own.Bottom);
                var (left, top) = order.Registration.Apply(x + lies.Left, y + lies.Top);
                var (right, bottom) = order.Registration.Apply(x + lies.Right, y + lies.Bottom);
                box = box.With(left, top, right, bottom);
            }
            index += run.Count;
        }
        return box;
    }
}
