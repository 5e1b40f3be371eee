using System.Security;

namespace LabelForge.Records.Tracing;

/// <summary>A trace drawn as a graph: material lots on the left, batches in the middle, people on the right.</summary>
public static class TracePicture
{
    private const int BoxWidth = 230, BoxHeight = 42, Gap = 12, ColumnGap = 90, Edge = 20, Title = 44;

    /// <summary>The picture as SVG.</summary>
    public static string Svg(Trace trace)
    {
        var materials = trace.Bottles.Select(b => b.MaterialLot).ToList();
        var lots = trace.Batches.Select(b => b.Lot).ToList();
        var deliveries = trace.Deliveries.ToList();
        var high = Title + Math.Max(1, Math.Max(Math.Max(materials.Count, lots.Count), deliveries.Count)) * (BoxHeight + Gap) + Edge;
        var wide = 2 * Edge + 3 * BoxWidth + 2 * ColumnGap;
        var svg = new StringBuilder();
        svg.Append(CultureInfo.InvariantCulture,
            $"<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"{wide}\" height=\"{high}\" viewBox=\"0 0 {wide} {high}\" font-family=\"sans-serif\" font-size=\"12\">\n<rect width=\"100%\" height=\"100%\" fill=\"#fff\"/>\n");
        svg.Append(CultureInfo.InvariantCulture,
            $"<text x=\"{Edge}\" y=\"26\" font-size=\"16\" font-weight=\"bold\">{Safe($"From {trace.From}", 90)}</text>\n");
        // Figures after all lines, so that no line runs through one.
        var figures = new StringBuilder();
        foreach (var use in trace.Uses.GroupBy(u => (u.MaterialLot, u.Lot)))
            Line(svg, figures, 0, materials.IndexOf(use.Key.MaterialLot), lots.IndexOf(use.Key.Lot),
                Invariant($"{use.Sum(u => u.Grams):0.#} g"));
        for (var i = 0; i < deliveries.Count; i++)
            Line(svg, figures, 1, lots.IndexOf(deliveries[i].Lot), i, $"{deliveries[i].Pieces}");
        svg.Append(figures);
        for (var i = 0; i < materials.Count; i++)
        {
            var bottle = trace.Bottles[i];
            Box(svg, 0, i, $"M{bottle.MaterialLot} {bottle.Material}", $"{bottle.Supplier} {bottle.SupplierLot}");
        }
        for (var i = 0; i < lots.Count; i++)
            Box(svg, 1, i, $"{trace.Batches[i].Lot}  {trace.Batches[i].Product}",
                trace.Batches[i].Open ? "not finished" : $"{trace.Batches[i].Made} made, {trace.Batches[i].Left} in the house");
        for (var i = 0; i < deliveries.Count; i++)
            Box(svg, 2, i, deliveries[i].To,
                Invariant($"{deliveries[i].Pieces} on {deliveries[i].On:yyyy-MM-dd}{(deliveries[i].Gift ? ", given" : "")}"));
        return svg.Append("</svg>\n").ToString();
    }

    private static int X(int column) => Edge + column * (BoxWidth + ColumnGap);

    private static int Y(int row) => Title + row * (BoxHeight + Gap);

    private static void Box(StringBuilder svg, int column, int row, string first, string second)
    {
        svg.Append(CultureInfo.InvariantCulture,
            $"<rect x=\"{X(column)}\" y=\"{Y(row)}\" width=\"{BoxWidth}\" height=\"{BoxHeight}\" rx=\"4\" fill=\"#fff\" "
                + $"stroke=\"#000\"/>\n");
        svg.Append(CultureInfo.InvariantCulture,
            $"<text x=\"{X(column) + 8}\" y=\"{Y(row) + 17}\" font-weight=\"bold\">{Safe(first, 30)}</text>\n<text x=\"{X(column) + 8}\" y=\"{Y(row) + 34}\">{Safe(second, 36)}</text>\n");
    }

    private static void Line(StringBuilder svg, StringBuilder figures, int column, int from, int to, string text)
    {
        // At the middle of the line: many lines meet at a box, and figures there would stand on top of each other.
        var (x1, y1, x2, y2) = (X(column) + BoxWidth, Y(from) + BoxHeight / 2, X(column + 1), Y(to) + BoxHeight / 2);
        svg.Append(CultureInfo.InvariantCulture,
            $"<path d=\"M{x1} {y1} C{x1 + 45} {y1} {x2 - 45} {y2} {x2} {y2}\" fill=\"none\" stroke=\"#666\"/>\n");
        figures.Append(CultureInfo.InvariantCulture,
            $"<text x=\"{(x1 + x2) / 2}\" y=\"{(y1 + y2) / 2 + 4}\" text-anchor=\"middle\" font-size=\"10\" stroke=\"#fff\" "
                + $"stroke-width=\"4\" paint-order=\"stroke\">{Safe(text, 12)}</text>\n");
    }

    private static string Safe(string text, int longest)
    {
        // Control characters are not allowed in XML at all.
        var plain = string.Concat(text.Where(c => !char.IsControl(c) && !char.IsSurrogate(c) && c is not ('\uFFFE' or '\uFFFF'))).Trim();
        return SecurityElement.Escape(plain.Length > longest ? plain[..(longest - 1)] + "\u2026" : plain);
    }
}
