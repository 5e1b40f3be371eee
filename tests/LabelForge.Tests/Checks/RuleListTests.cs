using LabelForge.Checks;

namespace LabelForge.Tests.Checks;

/// <summary>The page of rules is the rules themselves.</summary>
public sealed class RuleListTests
{
    [Fact]
    public void The_page_of_rules_has_not_drifted_from_the_rules() => Assert.True(
        Repository.Page("rules.md") == RuleList.Markdown(MarketBook.Shipped),
        "docs/rules.md differs from the rules. Write it anew: dotnet run --project src/LabelForge.Cli -- rules > docs/rules.md");

    [Fact]
    public void The_page_of_the_law_has_not_drifted_from_the_data() =>
        Assert.True(Repository.Page("law.md") == LabelForge.Markets.LawPage.Markdown(MarketBook.Shipped),
            "docs/law.md differs from the data. Write it anew: dotnet run --project src/LabelForge.Cli -- rules --law > docs/law.md");

    [Fact]
    public void Every_rule_names_a_source_and_a_severity_and_something_to_do() =>
        Assert.All(RuleList.Sections(MarketBook.Shipped).SelectMany(s => s.Rules),
            r => Assert.False(string.IsNullOrWhiteSpace(r.Source) || string.IsNullOrWhiteSpace(r.Fix) || r.LastChecked < r.InForceFrom));
}
