using System.Collections.Immutable;
using LabelForge.Declarations;
using LabelForge.Measures;
using LabelForge.Print.Designs;
using LabelForge.Print.Drawing;

namespace LabelForge.Print.Fitting;

/// <summary>Fits the letters of labels over a whole range, so that ten of them side by side stand at one size, front and back.</summary>
public static class RangeFit
{
    private static readonly Role[] Fitted = [Role.Name, Role.Identity, Role.ScentLine];

    /// <summary>The look with its letters held to what every product of the range has room for.</summary>
    /// <param name="design">The design.</param>
    /// <param name="look">The look of one of the range; its ornament and colours do not matter here.</param>
    /// <param name="range">What the labels of the range say, this one's with them. One whose words have no room at all does not count.</param>
    /// <param name="barcode">The lot's barcode; null for none.</param>
    /// <param name="extras">What few designs have a place for: barcodes of cartons, art; null for none.</param>
    public static Look Over(LabelDesign design, Look look, IReadOnlyList<LabelContent> range, InkBlock? barcode = null, LabelExtras? extras = null)
    {
        var most = ImmutableDictionary<Role, Length>.Empty;
        var fronts = design.Panels.Where(FrontPanels.IsFront).ToList();
        foreach (var content in range.DistinctBy(c => (c.ProductName, c.Identity, c.ScentLine, c.NetQuantity)))
        {
            var rules = PrintRules.For(content.Market, content.On);
            foreach (var text in fronts.SelectMany(p => FrontPanels.Arrange(design, p, look, content, rules, null)?.Texts ?? []).Select(t => t.Report).Where(t => Fitted.Contains(t.Role)))
            {
                if (!most.TryGetValue(text.Role, out var least) || text.LetterHeight.CompareTo(least) < 0)
                    most = most.SetItem(text.Role, text.LetterHeight);
            }
        }
        return look with { Most = most, Backs = BackRange.Of(design.In(look), range, barcode, extras ?? LabelExtras.None) };
    }
}
