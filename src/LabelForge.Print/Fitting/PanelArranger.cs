using LabelForge.Print.Designs;
using LabelForge.Print.Lettering;
using Place = LabelForge.Print.Designs.Place;

namespace LabelForge.Print.Fitting;

/// <summary>
/// Places a panel's items for one step of enlargement, 0 for every letter at its floor and 1 for every letter at its most. What is
/// read in the hand grows from the lowest letters up, so that no line of a panel is much smaller than another for want of room.
/// </summary>
/// <param name="panel">The panel: what may stand in it says how far letters go, also where a label lacks a part of it.</param>
/// <param name="width">The panel's inner width in points.</param>
/// <param name="height">The panel's inner height in points.</param>
/// <param name="clearHeights">Clear space above and below the net quantity, in heights of its capitals.</param>
internal sealed class PanelArranger(DesignPanel panel, double width, double height, double clearHeights)
{
    // A barcode up to this part of the width stands in the corner beside the last lines; a wider one has a row of its own.
    private const double WidestCorner = 0.45;
    private const double CornerGap = 5;
    private const double CornerTop = 2;

    // From a baseline to the next part's first, in lines; by eye.
    private const double LinesOfAir = 1.4;

    // Air comes with the first quarter of enlargement: at the least there is none to give.
    private const double FullAir = 1 / 4d;

    // Half a line of small print: less is not worth lines of two widths.
    private const double LeastSaved = 2.5;

    private const double LeastBetweenPlaces = 3;

    // More than this over the gap that is asked for looks like a fault.
    private const double UnseenGap = 3;

    // So many lines fewer are worth a wider gap.
    private const int WorthAGap = 2;

    private readonly Dictionary<(PanelItem, double, (decimal, decimal)), double> highestStep = [];
    private readonly Dictionary<(PanelItem, double, Measures.Length), SetText> sets = [];

    private readonly DesignElement[] readable = [.. panel.Elements.Where(e => PanelItem.IsRead(e.Role))];

    // The lowest and the highest letters of what is read in the hand, in millimetres.
    private (decimal Low, decimal High) reading;

    // How much of the air there is at this step, 0 to 1.
    private double airy;

    /// <summary>The whole of a panel inside its padding.</summary>
    public static PanelArranger Of(DesignPanel panel, double clearHeights) =>
        new(panel, Points.Of(panel.Width) - 2 * Points.Of(panel.Padding), Points.Of(panel.Height) - 2 * Points.Of(panel.Padding),
            clearHeights);

    /// <summary>How far the items may be enlarged: as far as a range holds them, where they fit
    /// so; null where they do not fit at their least.</summary>
    public double? Step(IReadOnlyList<PanelItem> items, double? held)
    {
        if (held is { } step && Arrange(items, step).Fits)
            return step;
        var highest = Bisection.Highest(s => s <= (held ?? 1) && Arrange(items, s).Fits);
        return Arrange(items, highest).Fits ? highest : null;
    }

    public Arrangement Arrange(IReadOnlyList<PanelItem> items, double step)
    {
        var corner = items.FirstOrDefault(i => (i.Block is not null || i.Art is not null)
            && i.Element.Place == Place.Bottom
            && i.FixedWidth <= width * WidestCorner);
        var placed = new List<ArrangedItem>();
        airy = Math.Min(1, step / FullAir);
        reading = (readable.Select(e => e.Least.Millimetres).DefaultIfEmpty(0).Min(),
            readable.Select(e => e.Most.Millimetres).Concat(items.Where(i => i.IsReading).Select(i => i.Text!.Most.Millimetres))
                .DefaultIfEmpty(0).Max());
        var top = Stack([.. items.Where(i => i.Element.Place == Place.Top)], width, step);
        var middle = Stack([.. items.Where(i => i.Element.Place == Place.Middle)], width, step);
        var beside = corner is null ? width : width - corner.FixedWidth - CornerGap;
        ImmutableArray<PanelItem> foot = [.. items.Where(i => i.Element.Place == Place.Bottom && i != corner)];
        var bottom = Stack(foot, beside, step);
        var aboveMiddle = Between(top, middle);
        double Free() => height - top.Height - aboveMiddle - middle.Height - (Math.Max(bottom.Height, corner?.FixedHeight ?? 0) is var high
            && high > 0 ? high + Between(middle.Items.Count > 0 ? middle : top, bottom) : 0);
        // Where there is room, no gap parts the address from what stands beside the corner.
        if (corner is not null)
            bottom = Foot(foot, corner, beside, step, UnseenGap);
        if (corner is not null && (bottom.TooWide is not null || Free() < 0))
            bottom = Foot(foot, corner, beside, step, double.PositiveInfinity);
        foreach (var stack in new[] { top, middle, bottom })
            if (stack.TooWide is not null)
                return new Arrangement([], 0, stack.TooWide, stack.TooWideBy);
        var free = Free();
        placed.AddRange(top.Items);
        var middleTop = top.Height + aboveMiddle + Math.Max(0, free) / 2;
        placed.AddRange(middle.Items.Select(i => i with { Top = i.Top + middleTop }));
        placed.AddRange(bottom.Items.Select(i => i with { Top = i.Top + height - bottom.Height }));
        var hole = free > 0 && middle.Items.Count == 0 && bottom.Height >= (corner?.FixedHeight ?? 0)
            ? ReadingGaps.Even(placed)
            : default;
        if (free > 0 && corner is null && middle.Items.Count == 0 && top.Items.Count > 0 != bottom.Items.Count > 0)
            hole = (top.Height, free);
        if (corner is not null)
            placed.Add(new ArrangedItem(corner, null, width - corner.FixedWidth, corner.FixedWidth, height - corner.FixedHeight,
                corner.FixedHeight));
        return new Arrangement(placed, -free, null, 0) { Hole = hole };
    }

    // Only what stands beside the corner's symbol keeps clear of it: what is ranged left over it may have the whole width, where that
    // saves height.
    private StackOfItems Foot(ImmutableArray<PanelItem> items, PanelItem corner, double beside, double step, double widestGap)
    {
        var plain = Stack(items, beside, step);
        var best = plain;
        for (var over = 1; over <= items.TakeWhile(i => i.Element.Align == Align.Left).Count(); over++)
        {
            var (above, below) = (Stack(items[..over], width, step), Stack(items[over..], beside, step));
            if (above.TooWide is not null || below.TooWide is not null)
                continue;
            var (between, high) = (Between(above, below), CornerTop + corner.FixedHeight);
            if (below.Items.Count > 0 && high - below.Height - between > widestGap && above.Lines + below.Lines > plain.Lines - WorthAGap)
                continue;
            var tall = above.Height + Math.Max(high, between + below.Height);
            if (best.TooWide is not null || tall < Math.Max(best.Height, corner.FixedHeight) - LeastSaved)
                best = new StackOfItems([.. above.Items, .. below.Items.Select(i => i with { Top = i.Top + tall - below.Height })], tall,
                    null, 0);
        }
        return best;
    }

    private StackOfItems Stack(IReadOnlyList<PanelItem> items, double lineWidth, double step)
    {
        var placed = new List<ArrangedItem>();
        double y = 0;
        foreach (var item in items)
        {
            var set = item.Text is null ? null : Set(item, lineWidth, step);
            if (set?.TooWide > 0 || item.FixedWidth > lineWidth + 1e-6)
                return new StackOfItems([], 0, item, Math.Max(set?.TooWide ?? 0, item.FixedWidth - lineWidth));
            var tall = set?.Height ?? item.FixedHeight;
            var itemWidth = item.Element.Role == Role.Rule && item.FixedWidth == 0 ? lineWidth : set?.Width ?? item.FixedWidth;
            var x = item.Element.Align == Align.Centre ? (lineWidth - itemWidth) / 2 : 0;
            if (placed.Count > 0)
                y += Gap(placed[^1], set, item);
            placed.Add(new ArrangedItem(item, set, x, itemWidth, y, tall));
            y += tall;
        }
        return new StackOfItems(placed, y, null, 0);
    }

    // An element that may have only so many lines stops growing where it would need one more.
    private SetText Set(PanelItem item, double lineWidth, double step)
    {
        if (!highestStep.TryGetValue((item, lineWidth, reading), out var highest))
        {
            highest = Bisection.Highest(s => item.Text!.Set(HeightAt(item, s), lineWidth).TooWide <= 0);
            highestStep[(item, lineWidth, reading)] = highest;
        }
        // Parts of the foot are tried over and beside the corner's symbol, in the same two widths.
        var set = (item, lineWidth, HeightAt(item, Math.Min(step, highest)));
        return sets.TryGetValue(set, out var known) ? known : sets[set] = item.Text!.Set(set.Item3, lineWidth);
    }

    private Measures.Length HeightAt(PanelItem item, double step) =>
        item.IsReading ? item.LetterHeightNear(reading.Low + (reading.High - reading.Low) * (decimal)step) : item.LetterHeightAt(step);

    private double Between(StackOfItems above, StackOfItems below) => above.Items.Count == 0 || below.Items.Count == 0
        ? 0
        : Math.Max(LeastBetweenPlaces, Gap(above.Items[^1], below.Items[0].Set, below.Items[0].Item));

    private double Gap(ArrangedItem above, SetText? below, PanelItem item) =>
        Math.Max(Math.Max(Points.Of(item.Element.Gap), Air(above, below, item)),
            Math.Max(Clear(above.Item, above.Set), Clear(item, below)));

    // Letters that are above their least leave air between the parts that are read apart: half a line more than from line to line.
    private double Air(ArrangedItem above, SetText? below, PanelItem item) =>
        above.Set is { } set && below is not null && above.Item.IsReading && item.IsReading && ReadingGaps.Begins(above.Item, item)
            ? airy * (LinesOfAir * set.Of.Element.Leading * set.Size - set.Bottom - below.Top)
            : 0;

    private double Clear(PanelItem item, SetText? set) => item.Element.Role == Role.NetQuantity && set is not null
        ? clearHeights * item.Element.Face.CapitalHeight * set.Size
        : 0;

    private sealed record StackOfItems(IReadOnlyList<ArrangedItem> Items, double Height, PanelItem? TooWide, double TooWideBy)
    {
        public int Lines => Items.Sum(i => i.Set?.Lines.Length ?? 1);
    }
}

/// <summary>Finds the highest step from 0 to 1 that still does.</summary>
internal static class Bisection
{
    private const int Halvings = 9;

    /// <summary>The highest step found to do; 0 is taken as doing.</summary>
    public static double Highest(Func<double, bool> does)
    {
        if (does(1))
            return 1;
        var (low, high) = (0.0, 1.0);
        for (var i = 0; i < Halvings; i++)
        {
            var middle = (low + high) / 2;
            (low, high) = does(middle) ? (middle, high) : (low, middle);
        }
        return low;
    }
}
