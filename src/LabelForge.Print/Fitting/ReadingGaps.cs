using LabelForge.Print.Designs;

namespace LabelForge.Print.Fitting;

/// <summary>
/// The gaps between what is read in the hand: list, directions, warnings, and the foot of address and lot. What room is left goes to
/// the narrowest gap first, so that all stand evenly and warnings keep clear of the address.
/// </summary>
internal static class ReadingGaps
{
    // From a baseline to the capitals below it. By eye: wider, and the parts fall asunder.
    private const double Widest = 4 * 72 / 25.4;

    /// <summary>Moves the groups of items set from the top of a panel to its foot; the first and the last stay where they are.</summary>
    /// <param name="placed">The items in reading order.</param>
    /// <returns>The room over the foot that would make the gaps wider than looks well: its top and height.</returns>
    public static (double Top, double Height) Even(List<ArrangedItem> placed)
    {
        if (placed.Count == 0 || placed.Any(i => i.Set is null && i.Item.Element.Role == Role.Rule))
            return default;
        var begins = Enumerable.Range(1, placed.Count - 1).Where(i => Begins(placed[i - 1].Item, placed[i].Item)).ToArray();
        if (begins.Length == 0)
            return default;
        var gaps = begins.Select(i => placed[i].Top - Baseline(placed[i - 1])).ToArray();
        var least = begins.Select((i, at) => Math.Min(gaps[at], Points(placed, i))).ToArray();
        var level = Level(least, gaps.Sum());
        var wanted = least.Select(g => Math.Max(g, Math.Min(level, Widest))).ToArray();
        var hole = Math.Max(0, gaps.Sum() - wanted.Sum());
        double shift = 0;
        for (var at = 0; at < begins.Length - 1; at++)
        {
            shift += wanted[at] - gaps[at];
            for (var i = begins[at]; i < begins[at + 1]; i++)
                placed[i] = placed[i] with { Top = placed[i].Top + shift };
        }
        var above = placed[begins[^1] - 1];
        return (above.Top + above.Height, placed[begins[^1]].Top - above.Top - above.Height) is var room && hole > 0 ? room : default;
    }

    // What a group may not come nearer than: what its design asks for, below the letters that hang down.
    private static double Points(List<ArrangedItem> placed, int at) =>
        Lettering.Points.Of(placed[at].Item.Element.Gap) + placed[at - 1].Top + placed[at - 1].Height - Baseline(placed[at - 1]);

    private static double Baseline(ArrangedItem item) => item.Top + item.Height - (item.Set?.Bottom ?? 0);

    // The level up to which the narrowest gaps are filled.
    private static double Level(double[] least, double all)
    {
        var sorted = least.Order().ToArray();
        for (var count = sorted.Length; count > 0; count--)
        {
            var level = (all - sorted[count..].Sum()) / count;
            if (count == 1 || level >= sorted[count - 1])
                return level;
        }
        return 0;
    }

    /// <summary>Whether an item begins a part that is read apart from the one before it.</summary>
    public static bool Begins(PanelItem before, PanelItem item) => item.Element.Role switch
    {
        Role.Ingredients or Role.Directions or Role.Warnings => true,
        _ => before.Element.Role is Role.Ingredients or Role.Directions or Role.Warnings,
    };
}
