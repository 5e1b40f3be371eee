using System.Collections.Immutable;
using LabelForge.Declarations;
using LabelForge.Measures;
using LabelForge.Print.Designs;

namespace LabelForge.Print.Looks;

/// <summary>The words of another product of the range that stand on its front.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Identity">What it is.</param>
/// <param name="Line">What it smells of; null for none.</param>
public sealed record RangeWords(string Name, string Identity, string? Line);

/// <summary>Fits the letters of fronts over a whole range, so that ten names side by side stand at one size.</summary>
public static class RangeFit
{
    private static readonly Role[] Fitted = [Role.Name, Role.Identity, Role.ScentLine];

    /// <summary>The look with its letters held to what every product of the range has room for.</summary>
    /// <param name="design">The design.</param>
    /// <param name="look">The look of the range; its ornament and colours do not matter here.</param>
    /// <param name="own">The content of one of them.</param>
    /// <param name="range">The words of the others. One whose words have no room in the arrangement at all does not count.</param>
    public static Look Over(LabelDesign design, Look look, LabelContent own, IEnumerable<RangeWords> range)
    {
        var rules = PrintRules.For(own.Market, own.On);
        var panels = design.Panels.Where(FrontPanels.IsFront).ToList();
        var most = ImmutableDictionary<Role, Length>.Empty;
        foreach (var words in range.Append(new RangeWords(own.ProductName, own.Identity, own.ScentLine)).Distinct())
        {
            var content = own with { ProductName = words.Name, Identity = words.Identity, ScentLine = words.Line };
            foreach (var text in panels.SelectMany(p => FrontPanels.Arrange(design, p, look, content, rules, null)?.Texts ?? []).Select(t => t.Report).Where(t => Fitted.Contains(t.Role)))
            {
                if (!most.TryGetValue(text.Role, out var least) || text.LetterHeight.CompareTo(least) < 0)
                    most = most.SetItem(text.Role, text.LetterHeight);
            }
        }
        return look with { Most = most };
    }
}
