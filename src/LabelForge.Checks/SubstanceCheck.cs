using System.Globalization;
using LabelForge.Declarations;
using LabelForge.Ingredients;
using LabelForge.Markets;

namespace LabelForge.Checks;

/// <summary>
/// Checks a product's substances against a market's lists: prohibited, over the limit, not in this kind of product, colours
/// not permitted, warnings that go with a substance.
/// </summary>
/// <remarks>
/// A finding is a must only where it holds whatever the suppliers' missing figures are and however the product is used;
/// else it is a should that says which figure would settle it. A share that no figure bounds is not called too high.
/// </remarks>
public static class SubstanceCheck
{
    private static readonly RuleBook Rules = RuleBook.Substances;

    /// <summary>The findings of a market's table; none where there is no table.</summary>
    /// <param name="facts">The recipe's facts.</param>
    /// <param name="table">The market's table.</param>
    public static IEnumerable<Finding> Find(RecipeFacts facts, SubstanceTable table)
    {
        var shares = facts.Finished.Substances;
        var touched = shares
            .SelectMany(s => table.Of(s.Name, s.Entry).Where(r => r.From is null || r.From <= facts.On).Select(r => new Hit(s, r, ProductGroup.Covers(facts.Kind, r.Groups))))
            .ToArray();
        return touched.SelectMany(h => One(h, facts))
            .Concat(SubstanceLimits.Find(touched, facts))
            .DistinctBy(f => (f.Rule, f.Message, f.Source));
    }

    private static IEnumerable<Finding> One(Hit hit, RecipeFacts facts)
    {
        var (share, rule, covers) = hit;
        var where = facts.Batch.Recipe.File;
        var from = share.From;
        var kind = facts.Kind.Name.ToLowerInvariant();
        var sure = covers == Applies.Yes && share.IsThere;
        switch (rule.Verdict)
        {
            case SubstanceVerdict.Prohibited when covers != Applies.No && sure:
                yield return Rules["substance.prohibited"].Find(where, share.Name, from, rule.Words.Length == 0 ? "" : $" ({rule.Words})", rule.Citation).By(rule.Basis);
                break;
            case SubstanceVerdict.Prohibited when covers != Applies.No:
                yield return Rules["substance.prohibited/unproven"].Find(where, share.Name, from, rule.Citation).By(rule.Basis);
                break;
            case SubstanceVerdict.ProhibitedIf when covers != Applies.No:
                yield return Rules["substance.prohibited/if"].Find(where, share.Name, rule.Words, from, rule.Citation).By(rule.Basis);
                break;
            case SubstanceVerdict.Only when covers == Applies.No:
                yield return Rules[Here(rule)].Find(where, share.Name, kind, Only(rule), rule.Citation).By(rule.Basis);
                break;
            case SubstanceVerdict.Only when covers == Applies.Perhaps:
                yield return Rules[Here(rule) + "-perhaps"].Find(where, share.Name, kind, Only(rule), rule.Citation).By(rule.Basis);
                break;
            case SubstanceVerdict.Not when covers == Applies.Yes:
                yield return Rules[Here(rule)].Find(where, share.Name, kind, Not(rule), rule.Citation).By(rule.Basis);
                break;
            case SubstanceVerdict.Not when covers == Applies.Perhaps:
                yield return Rules[Here(rule) + "-perhaps"].Find(where, share.Name, kind, Not(rule), rule.Citation).By(rule.Basis);
                break;
            case SubstanceVerdict.Unlisted:
                yield return Rules["colour.not-permitted/unlisted"].Find(where, share.Name, rule.Citation).By(rule.Basis);
                break;
            case SubstanceVerdict.Condition when covers != Applies.No:
                yield return Rules["substance.condition"].Find(where, share.Name, rule.Words, rule.Citation).By(rule.Basis);
                break;
            case SubstanceVerdict.Warning when covers != Applies.No && share.HighPercent > (rule.MostPercent ?? 0) && !SaysOnLabel(facts, rule.Words):
                yield return share.LowPercent > (rule.MostPercent ?? 0) || (rule.MostPercent is null && share.IsThere)
                    ? Rules["warning.missing"].Find(where, share.Name, rule.Words, rule.Citation).By(rule.Basis)
                    : Rules["warning.missing"].Find(where, share.Name, rule.Words, rule.Citation).By(rule.Basis) with { Severity = Severity.Should };
                break;
        }
    }

    /// <summary>A share in percent, for a sentence.</summary>
    internal static string Percent(decimal percent) => percent.ToString("0.######", CultureInfo.InvariantCulture) + " %";

    private static bool SaysOnLabel(RecipeFacts facts, string words) =>
        facts.Content.Warnings.Append(facts.Content.Directions ?? "").Any(t => t.Contains(words.TrimEnd('.'), StringComparison.OrdinalIgnoreCase));

    private static string Here(SubstanceRule rule) => rule.List == "IV" ? "colour.not-permitted/here" : "substance.prohibited/here";

    private static string Only(SubstanceRule rule) => $"permitted only in: {Groups(rule)}{Words(rule)}";

    private static string Not(SubstanceRule rule) => $"not permitted in: {Groups(rule)}{Words(rule)}";

    private static string Groups(SubstanceRule rule) => string.Join(", ", rule.Groups.Select(ProductGroup.Phrase));

    private static string Words(SubstanceRule rule) => rule.Words.Length == 0 ? "" : $" ({rule.Words})";
}

/// <summary>A substance of the product, a row of the table that touches it, and whether the row speaks of this kind of product.</summary>
internal sealed record Hit(SubstanceShare Share, SubstanceRule Rule, Applies Covers);
