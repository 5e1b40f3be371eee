using LabelForge.Measures;
using LabelForge.Print.Designs;
using LabelForge.Print.Drawing;

namespace LabelForge.Print.Sheets;

/// <summary>Which stock a label's design fits.</summary>
public static class StockFit
{
    // A label may be as much larger than its stock as rounding to a tenth of a millimetre makes it.
    private const decimal SizeTolerance = 0.1m;

    /// <summary>Whether a design fits a stock's labels: the same outline, and no larger.</summary>
    public static bool Fits(LabelDesign design, LabelStock stock) =>
        design.Round == (stock.Shape == StockShape.Round) && !Larger(design.Width, stock.LabelWidth) && !Larger(design.Height, stock.LabelHeight);

    /// <summary>Refuses a label that is larger than the stock's, naming stock that it fits.</summary>
    public static void RefuseWrongSize(LabelLayout label, LabelStock stock)
    {
        var design = label.Design;
        if (Fits(design, stock))
            return;
        // The closest first: a small label on a whole sheet fits, and is not what anyone wants.
        var fitting = LabelStock.All.Where(s => Fits(design, s)).OrderBy(s => s.LabelWidth.Millimetres * s.LabelHeight.Millimetres).Take(4).Select(s => s.Id).ToList();
        throw new InputException(new Problem(null, 0,
            $"The design {design.Id} ({design.Width} by {design.Height}{(design.Round ? ", round" : "")}) does not fit the labels of {stock.Id} ({stock.LabelWidth} by {stock.LabelHeight}{(stock.Shape == StockShape.Round ? ", round" : "")}).",
            fitting.Count == 0 ? "Choose another design." : $"Choose stock that it fits: {string.Join(", ", fitting)}."));
    }

    private static bool Larger(Length design, Length stock) => design.Millimetres > stock.Millimetres + SizeTolerance;
}
