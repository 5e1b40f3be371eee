using System.Globalization;
using System.Text;

namespace LabelForge.Checks;

/// <summary>Writes a rule book as a page for people; docs/rules.md is this text.</summary>
public static class RuleList
{
    /// <summary>The page. A number in braces stands for what a finding fills in.</summary>
    /// <param name="book">The rules.</param>
    /// <param name="market">The market's name, as in "the rules of ...".</param>
    public static string Markdown(RuleBook book, string market)
    {
        var page = new StringBuilder($"# Rules of {market}\n\nWritten by `labelforge rules`. must: a rule requires it. should: good practice, or a risk. note: worth knowing.\n");
        foreach (var rule in book.All)
        {
            page.Append(CultureInfo.InvariantCulture, $"\n## {rule.Id}\n\n{rule.Severity.ToString().ToLowerInvariant()}, from {rule.InForceFrom:yyyy-MM-dd}. Source: {rule.Source}. Last checked {rule.LastChecked:yyyy-MM-dd}.\n");
            if (!rule.Products.IsEmpty)
                page.Append(CultureInfo.InvariantCulture, $"For: {string.Join(", ", rule.Products)}.\n");
            page.Append(CultureInfo.InvariantCulture, $"\n{rule.Message}\n\nDo: {rule.Fix}\n");
        }
        return page.ToString();
    }
}
