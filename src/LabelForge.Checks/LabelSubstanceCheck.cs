using LabelForge.Ingredients;
using LabelForge.Markets;

namespace LabelForge.Checks;

/// <summary>Holds the names of a label's ingredient list against a market's lists of substances, as far as names without shares tell.</summary>
public static class LabelSubstanceCheck
{
    /// <summary>The findings.</summary>
    /// <param name="facts">The label's facts.</param>
    /// <param name="table">The market's table.</param>
    /// <param name="rules">The market's rules.</param>
    public static IEnumerable<Finding> Find(LabelFacts facts, SubstanceTable table, RuleBook rules)
    {
        var conditions = new List<string>();
        foreach (var item in facts.Reading.Names)
        {
            foreach (var rule in table.Of(item.Name, item.Known).Where(r => r.From is null || r.From <= facts.On))
            {
                var covers = facts.Kind is { } kind ? ProductGroup.Covers(kind, rule.Groups) : rule.Groups.Contains("all") ? Applies.Yes : Applies.Perhaps;
                if (rule.Verdict is SubstanceVerdict.AtMost or SubstanceVerdict.AtMostIf or SubstanceVerdict.Condition && covers != Applies.No)
                    conditions.Add(item.Name);
                else if (One(item.Name, rule, covers, facts, rules) is { } finding)
                    yield return finding;
            }
        }
        if (conditions.Count > 0)
            yield return rules["substance.conditions"].Find("ingredients", string.Join(", ", conditions.Distinct()));
    }

    private static Finding? One(string name, SubstanceRule rule, Applies covers, LabelFacts facts, RuleBook rules)
    {
        var kind = facts.Kind?.Name.ToLowerInvariant() ?? "product";
        var groups = string.Join(", ", rule.Groups.Select(ProductGroup.Phrase)) + (rule.Words.Length == 0 ? "" : $" ({rule.Words})");
        var colour = rule.List == "IV";
        return (rule.Verdict, covers) switch
        {
            (SubstanceVerdict.Prohibited, Applies.Yes) => rules["substance.prohibited/label"].Find(name, name, rule.Words.Length == 0 ? "" : $" ({rule.Words})", rule.Citation).By(rule.Basis),
            (SubstanceVerdict.Prohibited, Applies.Perhaps) => rules["substance.prohibited/label-if"].Find(name, name, $"the product is one of: {groups}", rule.Citation).By(rule.Basis),
            (SubstanceVerdict.ProhibitedIf, not Applies.No) => rules["substance.prohibited/label-if"].Find(name, name, rule.Words, rule.Citation).By(rule.Basis),
            (SubstanceVerdict.Only, Applies.No) => RuleBook.Substances[colour ? "colour.not-permitted/here" : "substance.prohibited/here"].Find(name, name, kind, $"permitted only in: {groups}", rule.Citation).By(rule.Basis),
            (SubstanceVerdict.Not, Applies.Yes) => RuleBook.Substances[colour ? "colour.not-permitted/here" : "substance.prohibited/here"].Find(name, name, kind, $"not permitted in: {groups}", rule.Citation).By(rule.Basis),
            (SubstanceVerdict.Unlisted, _) => RuleBook.Substances["colour.not-permitted/unlisted"].Find(name, name, rule.Citation).By(rule.Basis),
            (SubstanceVerdict.Warning, Applies.Yes) when !facts.Reading.Text.Text.Contains(rule.Words.TrimEnd('.'), StringComparison.OrdinalIgnoreCase) =>
                rules["warning.missing/substance"].Find("warnings", name, rule.Words, rule.Citation).By(rule.Basis),
            _ => null,
        };
    }
}
