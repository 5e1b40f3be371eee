using System.Collections.Immutable;
using LabelForge.Declarations;
using LabelForge.Print.Designs;
using LabelForge.Print.Drawing;
using LabelForge.Print.Looks;

namespace LabelForge.Print.Fitting;

/// <summary>How the backs of a whole range are set: each panel as far enlarged as the longest words of the range leave room for.</summary>
internal static class BackRange
{
    /// <summary>The setting of each panel that no look arranges. Words that do not fit at their least do not count: they are refused by themselves.</summary>
    /// <param name="design">The design, in its look.</param>
    /// <param name="range">What the labels say.</param>
    /// <param name="barcode">The lot's barcode, as large for each; null for none.</param>
    /// <param name="extras">What few designs have a place for.</param>
    public static ImmutableDictionary<string, BackSetting> Of(LabelDesign design, IReadOnlyList<LabelContent> range, InkBlock? barcode, LabelExtras extras)
    {
        if (range.Count == 0)
            return ImmutableDictionary<string, BackSetting>.Empty;
        var clear = PrintRules.For(range[0].Market, range[0].On).ClearAbove;
        return design.Panels.Where(p => !FrontPanels.IsFront(p)).ToImmutableDictionary(p => p.Id, p => Setting(p, design, [.. range.Select(c => Items(p, design, c, barcode, extras))], clear));
    }

    // What goes without a part that it may, does so in the range as it does alone.
    private static IReadOnlyList<PanelItem> Items(DesignPanel panel, LabelDesign design, LabelContent content, InkBlock? barcode, LabelExtras extras) =>
        [.. LabelFitter.Items(panel, design, content, barcode, extras)];

    private static BackSetting Setting(DesignPanel panel, LabelDesign design, ImmutableArray<IReadOnlyList<PanelItem>> range, double clear)
    {
        var rooms = range.Select(items => BackStrip.RoomFor(panel, design, items, clear)).ToArray();
        if (rooms.All(r => r is not null))
        {
            var beside = Bisection.Highest(s => rooms.All(r => r!.Arranger.Arrange(r.Words, s).Fits));
            if (beside >= BackStrip.LeastStep)
                return new BackSetting(beside, true);
        }
        var whole = range.Select(items => (Arranger: PanelArranger.Of(panel, clear), Items: Fitting(PanelArranger.Of(panel, clear), items))).Where(r => r.Items.Count > 0).ToArray();
        return new BackSetting(Bisection.Highest(s => whole.All(r => r.Arranger.Arrange(r.Items, s).Fits)), false);
    }

    private static List<PanelItem> Fitting(PanelArranger arranger, IReadOnlyList<PanelItem> items)
    {
        var left = items.ToList();
        while (left.Count > 0 && !arranger.Arrange(left, 0).Fits)
        {
            if (left.FindLastIndex(i => i.Element.Optional) is var at && at < 0)
                return [];
            left.RemoveAt(at);
        }
        return left;
    }
}
