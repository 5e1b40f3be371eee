using LabelForge.Declarations;
using LabelForge.Print.Designs;
using LabelForge.Print.Drawing;
using LabelForge.Print.Looks;

namespace LabelForge.Print.Fitting;

/// <summary>How the backs of a whole range are set: each panel as far enlarged as the longest words of the range leave room for.</summary>
internal static class BackRange
{
    // Where a code has to be turned for a strip, words are pressed a little for it: what a code in a row of its own leaves beside it
    // looks like a fault.
    private const double WorthTurning = 0.1;

    private static readonly FoundBefore<BackKey, Steps> Known = new(4000);

    private static readonly FoundBefore<(BackKey, double, bool), double> Bands = new(4000);

    // How far words are enlarged beside a strip, beside one with the code turned into it, and over the whole panel; whether all of
    // them, and the code, have room there.
    private readonly record struct Steps(double? Beside, double? Turned, double? Whole, bool HasAll);

    /// <summary>The setting of each panel that no look arranges. Words that do not fit at their
    /// least do not count: they are refused by themselves.</summary>
    /// <param name="design">The design, in its look.</param>
    /// <param name="range">What the labels say.</param>
    /// <param name="barcode">The lot's barcode, as large for each; null for none.</param>
    /// <param name="extras">What few designs have a place for.</param>
    public static ImmutableDictionary<string, BackSetting> Of(LabelDesign design, IReadOnlyList<LabelContent> range, InkBlock? barcode,
        LabelExtras extras)
    {
        if (range.Count == 0)
            return ImmutableDictionary<string, BackSetting>.Empty;
        var clear = PrintRules.For(range[0].Market, range[0].On).ClearAbove;
        return design.Panels.Where(p => !FrontPanels.IsFront(p))
            .ToImmutableDictionary(p => p.Id,
                p => Setting(p, design, [.. range.Select(c => Items(p, design, c, barcode, extras))], clear));
    }

    // What goes without a part that it may, does so in the range as it does alone.
    private static IReadOnlyList<PanelItem> Items(DesignPanel panel, LabelDesign design, LabelContent content, InkBlock? barcode,
        LabelExtras extras) =>
        [.. LabelFitter.Items(panel, design, content, barcode, extras)];

    /// <summary>How a panel is set. Each label has its own highest step, and the lowest of these holds for all.</summary>
    internal static BackSetting Setting(DesignPanel panel, LabelDesign design, ImmutableArray<IReadOnlyList<PanelItem>> range,
        double clear)
    {
        BackKey Key(IReadOnlyList<PanelItem> items) =>
            new(panel, design.Round, design.Look?.Ornament is not null, clear, [.. items.Select(WordsOf)]);
        // As high in each as the fullest leaves room for, or in none.
        double Band(double step, bool strip) => range.Select(items => Bands.Of((Key(items), step, strip),
            () => BandHeight(panel, design, items, clear, step, strip))).Min();
        var steps = range.Select(items => Known.Of(Key(items), () => StepsOf(panel, design, items, clear))).ToArray();
        var whole = steps.Select(s => s.Whole).OfType<double>().DefaultIfEmpty(1).Min();
        // Where a strip leaves a hole in each, a band across fills it better.
        if (steps.All(s => s.Beside is not null) && steps.Min(s => s.Beside!.Value) is var beside && beside >= BackStrip.LeastStep
            && (Band(beside, strip: true) == 0 || Band(whole, strip: false) == 0))
            return new BackSetting(beside, true);
        if (steps.All(s => s.Turned is not null) && steps.Min(s => s.Turned!.Value) is var turned
            && (turned >= whole - WorthTurning || steps.Any(s => !s.HasAll)))
            return new BackSetting(turned, true, Turned: true);
        return new BackSetting(whole, false, Band(whole, strip: false));
    }

    private static double BandHeight(DesignPanel panel, LabelDesign design, IReadOnlyList<PanelItem> items, double clear, double step,
        bool strip)
    {
        if (strip)
            return BackStrip.RoomFor(panel, design, items, clear) is { } room
                ? BackStrip.BandHeight(panel, design, room.Arranger.Arrange(room.Words, step))
                : 0;
        var arranger = PanelArranger.Of(panel, clear);
        return Fitting(arranger, items) is { Count: > 0 } fitting
            ? BackStrip.BandHeight(panel, design, arranger.Arrange(fitting, step))
            : 0;
    }

    private static Steps StepsOf(DesignPanel panel, LabelDesign design, IReadOnlyList<PanelItem> items, double clear)
    {
        if (PlateStep(panel, design, items, clear) is { } filled)
            return new Steps(null, null, filled, true);
        double? Highest(bool turned) => BackStrip.RoomFor(panel, design, items, clear, turned) is { } room
            && Bisection.Highest(s => room.Arranger.Arrange(room.Words, s).Fits) is var step
            && room.Arranger.Arrange(room.Words, step).Fits ? step : null;
        var arranger = PanelArranger.Of(panel, clear);
        var fitting = Fitting(arranger, items);
        return new Steps(Highest(turned: false), Highest(turned: true),
            fitting.Count > 0 ? Bisection.Highest(s => arranger.Arrange(fitting, s).Fits) : null, fitting.Count == items.Count);
    }

    // On a plate, with the code or, where that has no room, without.
    private static double? PlateStep(DesignPanel panel, LabelDesign design, IReadOnlyList<PanelItem> items, double clear) =>
        new[] { items, [.. items.Where(i => i.Block is null || !i.Element.Optional)] }
            .Select(tried => PlatePanel.RoomFor(panel, design, tried, clear) is { Words.Count: > 0 } plate
                && Bisection.Highest(s => plate.Arranger.Arrange(plate.Words, s).Fits) is var step
                && plate.Arranger.Arrange(plate.Words, step).Fits ? step : (double?)null)
            .FirstOrDefault(s => s is not null);

    private static BackItem WordsOf(PanelItem item) =>
        new(item.Element, item.Text is { } t ? (t.Text, t.Heading, string.Join('\n', t.Names), t.Floor) : null, item.Block is not null,
            item.Art is not null, item.Caption is not null, item.FixedWidth, item.FixedHeight);

    private readonly record struct BackItem(
        DesignElement Element, (string Text, string Heading, string Names, Length Floor)? Words, bool Code, bool Art, bool Captioned,
        double Width, double Height);

    // All that the steps of a back hang on: its room and what stands in it.
    private sealed record BackKey(DesignPanel Panel, bool Round, bool Ornament, double Clear, ImmutableArray<BackItem> Items)
    {
        public bool Equals(BackKey? other) =>
            other is not null
                && (Panel, Round, Ornament, Clear) == (other.Panel, other.Round, other.Ornament, other.Clear)
                && Items.SequenceEqual(other.Items);

        public override int GetHashCode() =>
            Items.Aggregate(HashCode.Combine(Panel.Id, Round, Clear), (hash, item) => HashCode.Combine(hash, item.Words));
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
