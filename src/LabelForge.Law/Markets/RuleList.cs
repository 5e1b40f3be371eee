using LabelForge.Markets;

namespace LabelForge.Checks;

/// <summary>Rules that stand together.</summary>
/// <param name="Heading">What heads them.</param>
/// <param name="Markets">The markets in which they bind.</param>
/// <param name="Rules">The rules, by id.</param>
public sealed record RuleSection(string Heading, IReadOnlyList<Market> Markets, IEnumerable<Rule> Rules);

/// <summary>Writes the rules as a page for people; docs/rules.md is this text.</summary>
public static class RuleList
{
    /// <summary>The page. A number in braces stands for what a finding fills in.</summary>
    /// <param name="known">The markets known.</param>
    /// <param name="market">The market whose rules to write; all where null.</param>
    public static string Markdown(MarketBook known, Market? market = null)
    {
        var page =
            new StringBuilder(
                "# Rules\n\nWritten by `labelforge rules`. must: a rule requires it. should: good practice, or a risk. note: worth "
                    + "knowing. An id `rule/case` is a case of a rule with words or weight of its own, reported under the rule's name. "
                    + "text: the source was read, in the copy named after it (docs/law.md). secondary: an account of it was read, or it "
                    + "is common practice. memory: it was written down from memory. What is looked up in lists of substances and colours "
                    + "stands in `ingredients/tables`.\n");
        foreach (var section in Sections(known, market))
        {
            page.Append(CultureInfo.InvariantCulture, $"\n# {section.Heading}\n");
            foreach (var rule in section.Rules)
                Append(page, rule);
        }
        return page.ToString();
    }

    /// <summary>The rules by whose folder they stand in, each with the markets in which they bind.</summary>
    /// <param name="known">The markets known.</param>
    /// <param name="market">The market whose rules to list, those included that it takes over; all where null.</param>
    public static IEnumerable<RuleSection> Sections(MarketBook known, Market? market = null)
    {
        Market[] markets = market is null ? [.. known.All] : market.Basis is { } basis ? [basis, market] : [market];
        foreach (var one in markets.Where(m => m.OwnRules.Any()))
        {
            var takers = known.All.Where(m => m.Basis == one).ToArray();
            var too = takers.Length == 0
                ? ""
                : $", and {string.Join(" and ", takers.Select(m => m.Name))} where it has no rule of its own";
            yield return new(char.ToUpperInvariant(one.Name[0]) + one.Name[1..] + too, [one, .. takers], one.OwnRules);
        }
        yield return new("Any market", market is null ? [.. known.All] : [market],
            known.Every.Rules.Values.OrderBy(r => r.Id, StringComparer.Ordinal));
    }

    private static void Append(StringBuilder page, Rule rule)
    {
        page.Append(CultureInfo.InvariantCulture,
            $"\n## {rule.Id}\n\n{rule.Severity.ToString().ToLowerInvariant()}, from {rule.InForceFrom:yyyy-MM-dd}. Source: {rule.Source} ({BasisText.Of(rule.Basis)}{(rule.Read is { } read ? ": " + read : "")}). Last checked {rule.LastChecked:yyyy-MM-dd}.\n");
        if (!rule.Products.IsEmpty)
            page.Append(CultureInfo.InvariantCulture, $"For: {string.Join(", ", rule.Products)}.\n");
        if (!rule.Unless.IsEmpty)
            page.Append(CultureInfo.InvariantCulture,
                $"Unless {string.Join(", or ", rule.Unless.Select(e => e.Words))} (facts: {string.Join(", ", rule.Unless.Select(e => e.Fact.Id))}).\n");
        page.Append(CultureInfo.InvariantCulture, $"\n{rule.Message}\n\nDo: {rule.Fix}\n");
    }
}
