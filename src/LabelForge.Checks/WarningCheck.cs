using System.Text.RegularExpressions;
using LabelForge.Checks.Words;
using LabelForge.Ingredients;
using LabelForge.Markets;

namespace LabelForge.Checks;

/// <summary>Checks the warnings that a product's kind or ingredients call for, and substances that may not be used at all.</summary>
public static partial class WarningCheck
{
    private static readonly RuleBook Rules = RuleBook.Us;

    /// <summary>The findings.</summary>
    /// <param name="text">All the label's words.</param>
    /// <param name="names">Its ingredients.</param>
    /// <param name="kind">Its kind, or null.</param>
    public static IEnumerable<Finding> Find(string text, IReadOnlyList<(string Name, Ingredient? Known)> names, ProductKind? kind)
    {
        foreach (var warning in SafetyLists.Warnings)
        {
            var shown = warning.Ingredients is null ? null : names.FirstOrDefault(n => Fits(warning.Ingredients, n)).Name;
            if (shown is null && !(kind is not null && warning.Kinds.Contains(kind.Id)) && warning.Words?.IsMatch(text) != true)
                continue;
            var missing = warning.Parts.Where(p => !p.Words.IsMatch(text)).Select(p => p.Says).ToArray();
            if (missing.Length > 0)
                yield return Rules[$"warning.missing/{warning.Id}"].Find("warnings", warning.Id == "aha" ? shown! : string.Join("; ", missing));
        }
        if (NotDetermined().IsMatch(text))
            yield return Rules["safety.not-determined"].Find("warnings");
    }

    /// <summary>Ingredients named that may not be used at all. A recipe is held against the substance tables instead, which know how much of each there is.</summary>
    /// <param name="names">The label's ingredients.</param>
    public static IEnumerable<Finding> Prohibited(IReadOnlyList<(string Name, Ingredient? Known)> names)
    {
        foreach (var name in names)
        {
            foreach (var prohibited in SafetyLists.Prohibited.Where(p => Fits(p.Names, name)))
                yield return Rules["substance.prohibited"].Find(name.Name, name.Name, prohibited.Says, prohibited.Source);
        }
    }

    private static bool Fits(Regex pattern, (string Name, Ingredient? Known) name) => pattern.IsMatch(name.Name) || (name.Known is not null && pattern.IsMatch(name.Known.Us));

    [GeneratedRegex(@"safety\s+of\s+this\s+product\s+has\s+not\s+been\s+determined", RegexOptions.IgnoreCase)]
    private static partial Regex NotDetermined();
}
