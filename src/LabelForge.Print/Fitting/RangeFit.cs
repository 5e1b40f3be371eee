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
    private static readonly FoundBefore<FrontKey, ImmutableArray<(Role Role, Length Height)>> Fronts = new(4000);

    // All that the heights of a front's letters hang on: the room, what shares it, the words, and what the law asks of them on the day.
    private sealed record FrontKey(
        DesignPanel Panel, (bool Round, Length Width, Length Height) Label,
        (string Arrangement, string Types, FrameFamily? Frame, bool Ornament, double OrnamentSize, bool? Above,
            ImmutableDictionary<Role, Length> Most) Look,
        (string Design, string Business, string Name, string Identity, string? Scent, string Net, string? Own, string? Claim,
            string? Price) Words, LetterFloors Floors, Market Market, DateOnly On);

    /// <summary>The look with its letters held to what every product of the range has room for.</summary>
    /// <param name="design">The design.</param>
    /// <param name="look">The look of one of the range; its ornament and colours do not matter here.</param>
    /// <param name="range">What the labels of the range say, this one's with them. One whose
    /// words have no room at all does not count.</param>
    /// <param name="barcode">The lot's barcode; null for none.</param>
    /// <param name="extras">What few designs have a place for: barcodes of cartons, art; null for none.</param>
    public static Look Over(LabelDesign design, Look look, IReadOnlyList<LabelContent> range, InkBlock? barcode = null,
        LabelExtras? extras = null)
    {
        // An arrangement that has no front of this shape gives way to another, in which the range is fitted then.
        var most = LabelFitter.Simpler(look).Select(tried => Most(design, tried, range)).FirstOrDefault(m => !m.IsEmpty)
            ?? ImmutableDictionary<Role, Length>.Empty;
        // Smaller than there is room for, as the maker wants it; its own least holds all the same.
        if (look.NameSize < 1 && most.TryGetValue(Role.Name, out var name))
            most = most.SetItem(Role.Name, Length.FromMillimetres(name.Millimetres * (decimal)look.NameSize));
        return look with { Most = most, Backs = BackRange.Of(design.In(look), range, barcode, extras ?? LabelExtras.None) };
    }

    private static ImmutableDictionary<Role, Length> Most(LabelDesign design, Look look, IReadOnlyList<LabelContent> range)
    {
        var most = ImmutableDictionary<Role, Length>.Empty;
        var fronts = design.Panels.Where(FrontPanels.IsFront).ToList();
        foreach (var content in range.DistinctBy(c => (c.ProductName, c.Identity, c.ScentLine, c.NetQuantity)))
        {
            foreach (var (role, height) in fronts.SelectMany(p => Heights(design, p, look, content)))
            {
                if (!most.TryGetValue(role, out var least) || height.CompareTo(least) < 0)
                    most = most.SetItem(role, height);
            }
        }
        return most;
    }

    private static ImmutableArray<(Role Role, Length Height)> Heights(LabelDesign design, DesignPanel panel, Look look,
        LabelContent content)
    {
        var key = new FrontKey(panel, (design.Round, design.Width, design.Height),
            (look.Arrangement, look.Types, look.Frame, look.Ornament is not null, look.OrnamentSize, look.OrnamentAbove, look.Most),
            (design.Id, content.BusinessName, content.ProductName, content.Identity, content.ScentLine, content.NetQuantity,
                content.OwnWords, content.Claim, content.Price), content.Floors, content.Market, content.On);
        return Fronts.Of(key, () =>
        [
            .. (FrontPanels.Arrange(design, panel, look, content, PrintRules.For(content.Market, content.On), null)?.Texts ?? [])
                .Select(t => t.Report).Where(t => Fitted.Contains(t.Role)).Select(t => (t.Role, t.LetterHeight)),
        ]);
    }
}
