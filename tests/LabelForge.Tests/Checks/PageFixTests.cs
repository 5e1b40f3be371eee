using System.Text.RegularExpressions;
using LabelForge.Checks;
using LabelForge.Markets;

namespace LabelForge.Tests.Checks;

/// <summary>What a finding tells those who fill in fields on a page and never see a file.</summary>
public sealed partial class PageFixTests
{
    private static readonly string[] Languages = ["en", "fr"];

    // A set of several products has no page of its own: its file is all there is.
    private static readonly string[] OfFiles = ["package.missing/set"];

    private static IEnumerable<Rule> Rules => RuleList.Sections(MarketBook.Shipped).SelectMany(s => s.Rules);

    [Fact]
    public void No_rule_sends_the_reader_of_a_page_to_a_file_or_to_its_keys()
    {
        object[] filled = [.. Enumerable.Range(0, 12).Select(n => (object)$"<{n}>")];
        var told = from rule in Rules
                   where !OfFiles.Contains(rule.Id)
                   let finding = rule.Find("label", filled)
                   from language in Languages
                   let page = finding.OnPage(language)
                   where FileOrKey().IsMatch($"{page.Message} {page.Fix}")
                   select $"{rule.Id} ({language}): {page.Message} {page.Fix}";
        Assert.Empty(told);
    }

    [Fact]
    public void What_a_rule_asks_is_on_a_page_a_question_and_no_name_of_a_fact()
    {
        object[] filled = [.. Enumerable.Range(0, 12).Select(n => (object)$"<{n}>")];
        var asking = Rules.Where(r => !r.Unless.IsEmpty).Select(r => r.Find("label", filled)).ToArray();
        Assert.True(asking.Length > 10);
        Assert.All(asking, f => Assert.NotEmpty(f.Asks));
        Assert.All(asking.SelectMany(f => f.Asks.Select(a => (f, a))), p => Assert.Contains(p.a.Id, p.f.Fix, StringComparison.Ordinal));
        Assert.All(asking, f => Assert.Equal(f.Asks.Length, f.Asks.Count(a => a.AsksIn("fr") != a.Asks)));
        Assert.All(asking, f => Assert.DoesNotMatch("yes or no|yes ou no", f.OnPage("en").Fix + f.OnPage("fr").Fix));
    }

    [GeneratedRegex(@"\.yaml\b|\byes or no\b|\byes ou no\b|\b(?:identity|net|pieces|(?<!the )business|place|street|contact|country|origin|best before|period after opening|allergens|limits|item|responsible|warnings|superfat|amount|purity|package|facts):(?!\S)")]
    private static partial Regex FileOrKey();
}
