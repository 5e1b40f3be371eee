using LabelForge.Declarations;
using LabelForge.Print.Designs;
using LabelForge.Print.Drawing;
using LabelForge.Print.Ornaments;
using LabelForge.Quantities;

namespace LabelForge.Print.Fitting;

/// <summary>Fits the letters of labels over a whole range, so that ten of them side by side stand at one size, front and back.</summary>
public static class RangeFit
{
    private static readonly Role[] Fitted = [Role.Name, Role.Identity, Role.ScentLine];
    private static readonly FoundBefore<FrontKey, Setting> Fronts = new(4000);

    private readonly record struct Setting(ImmutableArray<(Role Role, Length Height)> Heights, bool? Paired);

    // All that the heights of a front's letters hang on: the room, what shares it, the words, and what the law asks of them on the day.
    private sealed record FrontKey(
        DesignPanel Panel, (bool Round, Length Width, Length Height) Label,
        (string Arrangement, string Types, FrameFamily? Frame, bool Ornament, double OrnamentSize, bool? Above,
            Length Name, Length Identity, Length Scent, bool PairsParted) Look,
        (string Design, string Business, string Name, string Identity, string? Scent, string Net, string? Own, string? Claim,
            string? Price) Words, LetterFloors Floors, Market Market, DateOnly On);

    /// <summary>The look with its letters held to what every product of the range has room for.</summary>
    /// <param name="look">The look of one of the range; its ornament and colours do not matter here.</param>
    /// <param name="range">What the labels of the range say, this one's with them. One whose
    /// words have no room at all does not count.</param>
    /// <param name="barcode">The lot's barcode; null for none.</param>
    /// <param name="extras">What few designs have a place for: barcodes of cartons, art; null for none.</param>
    public static Look Over(LabelDesign design, Look look, IReadOnlyList<LabelContent> range, InkBlock? barcode = null,
        LabelExtras? extras = null)
    {
        // An arrangement that has no front of this shape gives way to another, in which the range is fitted then.
        var tried = LabelFitter.Simpler(look).Select(t => (Look: t, Most: Most(design, t, range))).FirstOrDefault(m => !m.Most.IsEmpty);
        var most = tried.Most ?? ImmutableDictionary<Role, Length>.Empty;
        // Where one of the range has its kind and its quantity one under the other, all have: side by side they are one family.
        if (tried.Look is not null && ArePairsMixed(design, tried.Look with { Most = most }, range))
        {
            look = look with { PairsParted = true };
            most = Most(design, tried.Look with { PairsParted = true }, range);
        }
        // Smaller than there is room for, as the maker wants it; its own least holds all the same.
        if (look.NameSize < 1 && most.TryGetValue(Role.Name, out var name))
            most = most.SetItem(Role.Name, Length.FromMillimetres(name.Millimetres * (decimal)look.NameSize));
        return look with { Most = most, Backs = BackRange.Of(design.In(look), range, barcode, extras ?? LabelExtras.None) };
    }

    private static Length Capped(Look look, Role role) => look.Most.GetValueOrDefault(role);

    private static IEnumerable<Setting> Settings(LabelDesign design, Look look, IReadOnlyList<LabelContent> range) =>
        from content in range.DistinctBy(c => (c.ProductName, c.Identity, c.ScentLine, c.NetQuantity))
        from front in design.Panels
        where FrontPanels.IsFront(front)
        select SettingOf(design, front, look, content);

    private static bool ArePairsMixed(LabelDesign design, Look look, IReadOnlyList<LabelContent> range)
    {
        var paired = Settings(design, look, range).Select(s => s.Paired).OfType<bool>().ToArray();
        return paired.Contains(true) && paired.Contains(false);
    }

    private static ImmutableDictionary<Role, Length> Most(LabelDesign design, Look look, IReadOnlyList<LabelContent> range)
    {
        var most = ImmutableDictionary<Role, Length>.Empty;
        foreach (var (role, height) in Settings(design, look, range).SelectMany(s => s.Heights))
        {
            if (!most.TryGetValue(role, out var least) || height.CompareTo(least) < 0)
                most = most.SetItem(role, height);
        }
        return most;
    }

    private static Setting SettingOf(LabelDesign design, DesignPanel panel, Look look, LabelContent content)
    {
        var key = new FrontKey(panel, (design.Round, design.Width, design.Height),
            (look.Arrangement, look.Types, look.Frame, look.Ornament is not null, look.OrnamentSize, look.OrnamentAbove,
                Capped(look, Role.Name), Capped(look, Role.Identity), Capped(look, Role.ScentLine), look.PairsParted),
            (design.Id, content.BusinessName, content.ProductName, content.Identity, content.ScentLine, content.NetQuantity,
                content.OwnWords, content.Claim, content.Price), content.Floors, content.Market, content.On);
        return Fronts.Of(key, () =>
        {
            var front = FrontPanels.Arrange(design, panel, look, content, PrintRules.For(content.Market, content.On), null);
            return new Setting(
                [.. (front?.Texts ?? []).Select(t => t.Report).Where(t => Fitted.Contains(t.Role)).Select(t => (t.Role, t.LetterHeight))],
                front?.Paired);
        });
    }
}
