using LabelForge.Print.Drawing;
using LabelForge.Print.Lettering;

namespace LabelForge.Print.Sheets;

/// <summary>Draws stock as a picture: the sheet at actual size, each label's outline with its position and size.</summary>
public static class StockDrawing
{
    private const double HairLine = 0.5;

    // Of a position's figure, as a share of the label's height; never more than this many points.
    private const double FigureShare = 0.35;
    private const double LargestFigure = 24;

    /// <summary>The picture, as large as the sheet.</summary>
    public static Picture Of(LabelStock stock) => new(stock.PageWidth, stock.PageHeight)
    {
        Outlines = [new Outline(0, 0, Points.Of(stock.PageWidth), Points.Of(stock.PageHeight), 0, false, HairLine, Tint.Grey),
            .. Outlines(stock)],
        Lines = [.. Enumerable.Range(1, stock.PerSheet).SelectMany(p => Written(stock, p))],
    };

    /// <summary>The labels' outlines alone.</summary>
    public static IEnumerable<Outline> Outlines(LabelStock stock, double thickness = HairLine, Tint tint = Tint.Black) =>
        Enumerable.Range(1, stock.PerSheet).Select(stock.CornerOf).Select(c => new Outline(Points.Of(c.X), Points.Of(c.Y),
            Points.Of(stock.LabelWidth), Points.Of(stock.LabelHeight), Points.Of(stock.CornerRadius), stock.Shape == StockShape.Round,
            thickness, tint));

    private static IEnumerable<PictureLine> Written(LabelStock stock, int position)
    {
        var (x, y) = stock.CornerOf(position);
        var (width, height) = (Points.Of(stock.LabelWidth), Points.Of(stock.LabelHeight));
        var (middle, centre) = (Points.Of(x) + width / 2, Points.Of(y) + height / 2);
        var figure = new MeasuredText(BundledFaces.SemiBold, Math.Min(LargestFigure, height * FigureShare),
            BundledFaces.SemiBold.Shape(position.ToString(System.Globalization.CultureInfo.InvariantCulture)));
        yield return new PictureLine(figure, middle - figure.Width / 2, centre);
        var size = new MeasuredText(BundledFaces.Regular, Math.Min(LargestFigure, height * FigureShare) * 0.6,
            BundledFaces.Regular.Shape(Size(stock)));
        if (size.Width < width * 0.9)
            yield return new PictureLine(size, middle - size.Width / 2, centre + figure.Size * 0.8);
    }

    private static string Size(LabelStock stock) =>
        FormattableString.Invariant($"{stock.LabelWidth.Millimetres:0.#} × {stock.LabelHeight.Millimetres:0.#} mm");
}
