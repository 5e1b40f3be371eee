namespace LabelForge.Composition;

/// <summary>
/// How far the sum of some constituents' shares exceeds that of others, and the sum itself, where one material lets both
/// vary: needed where several substances of a list go by one name.
/// </summary>
internal static class Mixture
{
    /// <summary>
    /// The line of the compositions that do most to put <paramref name="over"/> over <paramref name="under"/>: how far the
    /// one sum exceeds the other, and that sum, from the greatest of the first to the greatest of the second.
    /// </summary>
    public static IReadOnlyList<(decimal Ahead, decimal Share)> Line(Polytope set, int[] over, int[] under)
    {
        var (first, last) = (set.Most(over, under, 1, 0), set.Most(over, under, 0, 1));
        var corners = new List<(decimal Ahead, decimal Share)> { first };
        Between(set, over, under, first, last, corners);
        corners.Add(last);
        return Outer(corners);
    }

    // The farthest corner beyond the straight line from one to the next, and again on either side of it.
    private static void Between(
        Polytope set, int[] over, int[] under, (decimal Ahead, decimal Share) from, (decimal Ahead, decimal Share) to,
        List<(decimal Ahead, decimal Share)> corners)
    {
        var (forAhead, forShare) = (to.Share - from.Share, from.Ahead - to.Ahead);
        if (forAhead <= 0 || forShare <= 0)
            return;
        var corner = set.Most(over, under, forAhead, forShare);
        var beyond = forAhead * (corner.Ahead - from.Ahead) + forShare * (corner.Share - from.Share);
        if (beyond <= CompositionLimits.Tolerance * (forAhead + forShare))
            return;
        Between(set, over, under, from, corner, corners);
        corners.Add(corner);
        Between(set, over, under, corner, to, corners);
    }

    // Of corners that are no better in either figure than the next, the next is enough.
    private static List<(decimal Ahead, decimal Share)> Outer(List<(decimal Ahead, decimal Share)> corners)
    {
        var outer = new List<(decimal Ahead, decimal Share)>();
        foreach (var corner in corners)
        {
            if (outer.Exists(o => o.Ahead >= corner.Ahead && o.Share >= corner.Share))
                continue;
            outer.RemoveAll(o => o.Ahead <= corner.Ahead && o.Share <= corner.Share);
            outer.Add(corner);
        }
        return outer;
    }
}
