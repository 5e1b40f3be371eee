using System.Globalization;
using System.Text;
using LabelForge.Markets;

namespace LabelForge.Checks;

/// <summary>Writes the rules as a page for people; docs/rules.md is this text.</summary>
public static class RuleList
{
    /// <summary>The page. A number in braces stands for what a finding fills in.</summary>
    /// <param name="market">The market whose rules to write; all where null.</param>
    public static string Markdown(Market? market = null)
    {
        var page = new StringBuilder("# Rules\n\nWritten by `labelforge rules`. must: a rule requires it. should: good practice, or a risk. note: worth knowing. An id `rule/case` is a case of a rule with words or weight of its own, reported under the rule's name. What is looked up in lists of substances and colours stands in `ingredients/tables`.\n");
        foreach (var (book, heading, markets) in RuleBook.Everything.Where(b => market is not { } m || b.Markets.Contains(m)))
        {
            page.Append(CultureInfo.InvariantCulture, $"\n# {heading}\n");
            foreach (var rule in book.All)
                Append(page, rule);
        }
        return page.ToString();
    }

    private static void Append(StringBuilder page, Rule rule)
    {
        page.Append(CultureInfo.InvariantCulture, $"\n## {rule.Id}\n\n{rule.Severity.ToString().ToLowerInvariant()}, from {rule.InForceFrom:yyyy-MM-dd}. Source: {rule.Source}. Last checked {rule.LastChecked:yyyy-MM-dd}.\n");
        if (!rule.Products.IsEmpty)
            page.Append(CultureInfo.InvariantCulture, $"For: {string.Join(", ", rule.Products)}.\n");
        page.Append(CultureInfo.InvariantCulture, $"\n{rule.Message}\n\nDo: {rule.Fix}\n");
    }
}
