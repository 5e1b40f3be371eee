using LabelForge.Print.Designs;
using LabelForge.Print.Drawing;

namespace LabelForge.Print.Sheets;

/// <summary>Which stock a label's design fits.</summary>
public static class StockFit
{
    // A label may be as much larger than its stock as rounding to a tenth of a millimetre makes it.
    private const decimal SizeTolerance = 0.1m;

    /// <summary>Whether a design fits a stock's labels: the same outline, and no larger, upright or turned.</summary>
    public static bool Fits(LabelDesign design, LabelStock stock) => Stands(design, stock) || Turns(design, stock);

    /// <summary>Whether a design that does not stand upright on a stock's labels lies on them, turned by a quarter to the left.</summary>
    public static bool Turns(LabelDesign design, LabelStock stock) =>
        design.Round == (stock.Shape == StockShape.Round) && !Stands(design, stock) && !Larger(design.Width, stock.LabelHeight)
            && !Larger(design.Height, stock.LabelWidth);

    private static bool Stands(LabelDesign design, LabelStock stock) =>
        design.Round == (stock.Shape == StockShape.Round)
            && !Larger(design.Width, stock.LabelWidth)
            && !Larger(design.Height, stock.LabelHeight);

    /// <summary>Refuses a label that is larger than the stock's, naming stock that it fits.</summary>
    public static void RefuseWrongSize(LabelLayout label, LabelStock stock)
    {
        var design = label.Design;
        if (Fits(design, stock))
            return;
        // The closest first: a small label on a whole sheet fits, and is not what anyone wants.
        var fitting = LabelStock.All.Where(s => Fits(design, s)).OrderBy(s => s.LabelWidth.Millimetres * s.LabelHeight.Millimetres).Take(4)
            .Select(s => s.Id).ToList();
        throw (fitting.Count == 0
            ? new InputException("stock-sheet.design-does-not-fit", ("design", design.Id), ("width", design.Width),
                ("height", design.Height), ("value", (design.Round ? ", round" : "")), ("stock", stock.Id),
                ("label-width", stock.LabelWidth), ("label-height", stock.LabelHeight),
                ("value-2", (stock.Shape == StockShape.Round ? ", round" : "")))
            : new InputException("stock-sheet.design-does-not-fit-any", ("design", design.Id), ("width", design.Width),
                ("height", design.Height), ("value", (design.Round ? ", round" : "")), ("stock", stock.Id),
                ("label-width", stock.LabelWidth), ("label-height", stock.LabelHeight),
                ("value-2", (stock.Shape == StockShape.Round ? ", round" : "")), ("list", string.Join(", ", fitting))));
    }

    private static bool Larger(Length design, Length stock) => design.Millimetres > stock.Millimetres + SizeTolerance;
}
