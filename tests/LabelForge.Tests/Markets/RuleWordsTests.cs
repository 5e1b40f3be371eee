using System.Text.RegularExpressions;
using LabelForge.Checks;
using LabelForge.Checks.Words;
using LabelForge.Markets;

namespace LabelForge.Tests.Markets;

/// <summary>What a rule says is said in French too, with all that the English sentence names.</summary>
public sealed partial class RuleWordsTests
{
    private static readonly object[] Arguments = [.. Enumerable.Range(0, 10).Select(i => $"A{i}")];

    // Sentences that are all argument: what they say comes with them.
    private static readonly string[] Given = ["lye.excess", "claim.needs-proof", "claim.unfair", "net-quantity.form"];

    private static IEnumerable<(Market Market, Rule Rule)> Shipped => MarketBook.Shipped.All.SelectMany(m => m.Rules.Select(r => (m, r)));

    [Fact]
    public void Every_shipped_rule_is_told_in_French()
    {
        foreach (var (market, rule) in Shipped.Where(r => !Given.Any(g => r.Rule.Id.StartsWith(g, StringComparison.Ordinal))))
        {
            var (message, _) = Found(rule).In("fr");
            Assert.True(message != Found(rule).Message, $"{market} {rule.Id} has no French message");
        }
    }

    [Fact]
    public void The_French_names_what_the_English_names()
    {
        foreach (var (market, rule) in Shipped)
        {
            var english = Found(rule);
            var (message, fix) = english.In("fr");
            Assert.True(Named(english.Message).SetEquals(Named(message)) && Named(english.Fix).SetEquals(Named(fix)),
                $"{market} {rule.Id}: {english.Message} {english.Fix} / {message} {fix}");
        }
    }

    [Fact]
    public void What_would_take_a_product_out_of_a_rule_is_asked_in_French()
    {
        foreach (var rule in Shipped.Select(r => r.Rule).Where(r => !r.Unless.IsEmpty))
        {
            var (message, fix) = Found(rule).In("fr");
            Assert.Contains("C’est exigé, sauf si ", message, StringComparison.Ordinal);
            Assert.Equal(rule.Unless.Length - 1, OtherCondition().Count(message));
            Assert.All(rule.Unless, e => Assert.DoesNotContain(e.Words, message, StringComparison.Ordinal));
            Assert.All(rule.Unless, e => Assert.DoesNotContain(e.Fact.Asks, fix, StringComparison.Ordinal));
            Assert.All(rule.Unless, e => Assert.Contains(e.Fact.Id, fix, StringComparison.Ordinal));
        }
    }

    [Fact]
    public void What_words_claim_and_what_to_write_instead_is_told_in_French()
    {
        ClaimSaid[] said =
        [
            .. WordLists.Claims.SelectMany(c => new ClaimSaid[] { new(c.Id, "says", c.Says), new(c.Id, "instead", c.Instead) }),
            .. WordLists.Denials.Where(d => d.Instead.Length > 0).Select(d => new ClaimSaid($"without-{d.Id}", "instead", d.Instead)),
            new("without", "instead", "or keep it out of the product"),
        ];
        Assert.All(said, s => Assert.NotEqual(s.English, s.In("fr")));
        Assert.Equal(said.Select(s => s.Id).Distinct().Order(StringComparer.Ordinal),
            LawWords.All("claims-said-fr").Keys.Order(StringComparer.Ordinal));
        foreach (var (market, rule) in Shipped.Where(r => r.Rule.Id == "claim.drug"))
        {
            var found = rule.Find("words", "heals", said.First(s => s.Id == "heals"), said.Last(s => s.Id == "heals"));
            Assert.Contains("heals or cures", found.Message, StringComparison.Ordinal);
            Assert.Contains("dit que le produit guérit", found.In("fr").Message, StringComparison.Ordinal);
            Assert.Contains("parle du toucher", found.In("fr").Fix, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void A_finding_told_in_another_language_is_the_same_finding()
    {
        var rule = MarketBook.Shipped.All.First().Rules.First(r => r.Id == "identity.missing");
        Assert.Equal(rule.Find("label"), rule.Find("label"));
        Assert.Equal((rule.Message, rule.Fix), rule.Find("label").In("de"));
    }

    private static Finding Found(Rule rule) => rule.Find("label", Arguments);

    private static HashSet<string> Named(string sentence) => [.. Argument().Matches(sentence).Select(m => m.Value)];

    [GeneratedRegex(@"\S, ou si [^\s,]")]
    private static partial Regex OtherCondition();

    [GeneratedRegex("A[0-9]")]
    private static partial Regex Argument();
}
