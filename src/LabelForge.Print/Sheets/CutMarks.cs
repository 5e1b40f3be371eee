using LabelForge.Print.Drawing;
using LabelForge.Print.Lettering;

namespace LabelForge.Print.Sheets;

/// <summary>Marks to cut by, where labels are printed on plain paper: short lines in the sheet's
/// margins, in line with the labels' edges.</summary>
/// <remarks>None stands on a label. Where the labels leave no margin there is no room for any;
/// then the sheet's own edge is the label's.</remarks>
public static class CutMarks
{
    // Common practice: a mark of 5 mm that stops 1 mm short of what is cut out, in a line of a quarter point.
    private const double Clear = 72 / 25.4;
    private const double Longest = 5 * 72 / 25.4;
    private const double Shortest = 1 * 72 / 25.4;
    private const double Thickness = 0.25;

    /// <summary>The marks of a sheet.</summary>
    public static ImmutableArray<Stroke> Of(LabelStock stock)
    {
        var (width, height) = (Points.Of(stock.PageWidth), Points.Of(stock.PageHeight));
        var across = Edges(Points.Of(stock.Left), Points.Of(stock.PitchX), Points.Of(stock.LabelWidth), stock.Columns);
        var down = Edges(Points.Of(stock.Top), Points.Of(stock.PitchY), Points.Of(stock.LabelHeight), stock.Rows);
        var marks = ImmutableArray.CreateBuilder<Stroke>();
        foreach (var (from, to) in Spans(down[0], height - down[^1], height))
            marks.AddRange(across.Select(x => new Stroke(x, from, x, to, Thickness, Tint.Black)));
        foreach (var (from, to) in Spans(across[0], width - across[^1], width))
            marks.AddRange(down.Select(y => new Stroke(from, y, to, y, Thickness, Tint.Black)));
        return marks.ToImmutable();
    }

    /// <summary>Says where marks were asked for and there is no room for them, or none that would help.</summary>
    public static IEnumerable<string> Warnings(SheetOrder order)
    {
        if (!order.CutMarks)
            yield break;
        if (Of(order.Stock).IsEmpty)
            yield return $"There is no room for cut marks: the labels of {order.Stock.Id} reach to the sheet's edges. Use stock "
                + $"with margins.";
        if (order.Stock.Shape == StockShape.Round)
            yield return "The cut marks show the square around each round label; cut the round by eye, or with a punch of its size.";
    }

    // Two labels without a gap share an edge, which is cut once.
    private static double[] Edges(double first, double pitch, double size, int count) =>
        [.. Enumerable.Range(0, count).SelectMany(i => new[] { first + i * pitch, first + i * pitch + size }).Select(e => Math.Round(e, 3))
            .Distinct()];

    private static IEnumerable<(double From, double To)> Spans(double before, double after, double whole)
    {
        if (before - Clear >= Shortest)
            yield return (Math.Max(0, before - Clear - Longest), before - Clear);
        if (after - Clear >= Shortest)
            yield return (whole - after + Clear, Math.Min(whole, whole - after + Clear + Longest));
    }
}
