using LabelForge.Print.Designs;
using LabelForge.Print.Lettering;

namespace LabelForge.Print.Arrangements;

/// <summary>Sets the window above the name or below it, where they stand in one column; the net
/// quantity keeps its place at the foot.</summary>
internal static class WindowOrder
{
    private static readonly double LeastGap = Points.OfMillimetres(2.2m);

    /// <summary>The boxes with the window where it is wanted; as they were where nothing is wanted, or nothing can be moved.</summary>
    /// <param name="box">The boxes.</param>
    /// <param name="above">Whether the window stands above the name; null for where the arrangement has it.</param>
    public static ArrangementBox Of(ArrangementBox box, bool? above)
    {
        if (above is not { } up)
            return box;
        var rows = box.Inside.Select(b => Of(b, above)).ToList();
        var (window, name) = (rows.FindIndex(b => b.Kind == BoxKind.Ornament), rows.FindIndex(HasName));
        if (box.Kind != BoxKind.Rows || window < 0 || name < 0 || window < name == up)
            return box with { Inside = [.. rows] };
        var moved = rows[window];
        rows.RemoveAt(window);
        var to = rows.FindIndex(HasName);
        // Below, it comes after what belongs to the name.
        while (!up && to + 1 < rows.Count && rows[to + 1].Element?.Role == Role.ScentLine)
            to++;
        rows.Insert(up ? to : to + 1, moved with { Gap = Math.Max(moved.Gap, LeastGap) });
        var after = rows.IndexOf(moved with { Gap = Math.Max(moved.Gap, LeastGap) }) + 1;
        if (after < rows.Count && rows[after].Gap < LeastGap)
            rows[after] = rows[after] with { Gap = LeastGap };
        return box with { Inside = [.. rows] };
    }

    /// <summary>The boxes with a window that stands at the left set to the right, for a front whose neighbour at the left is the
    /// ornament already: side by side they would say the same twice.</summary>
    public static ArrangementBox FarFromOrnament(ArrangementBox root)
    {
        if (root.Kind != BoxKind.Columns || root.Inside.Length != 2 || root.Inside[0].Kind != BoxKind.Ornament)
            return root;
        var (window, words) = (root.Inside[0], root.Inside[1]);
        var (left, top, right, bottom) = words.Padding;
        return root with
        {
            Inside = [words with { Gap = 0, Padding = (right, top, left, bottom) }, window with { Gap = words.Gap }],
        };
    }

    private static bool HasName(ArrangementBox box) =>
        box.All.Any(b => b.Element?.Role == Role.Name && b.Run == Run.Across) && box.All.All(b => b.Element?.Role != Role.NetQuantity);
}
