using System.Globalization;
using System.Text;
using LabelForge.Checks;
using LabelForge.Markets;
using LabelForge.Tests.Checks.Claims;
using LabelForge.Tests.Checks.Corpus;
using LabelForge.Tests.Checks.FreshLabels;

namespace LabelForge.Tests.Checks;

/// <summary>The tables of docs/checks.md: how well labels and sentences of our own are judged.</summary>
internal static class ChecksPage
{
    /// <summary>The tables by the names of their places on the page.</summary>
    public static IReadOnlyDictionary<string, Func<string>> Tables { get; } = new Dictionary<string, Func<string>>
    {
        ["claims by language"] = ClaimsByLanguage,
        ["claims by rule"] = ClaimsByRule,
        ["labels by market"] = LabelsByMarket,
        ["labels by rule"] = LabelsByRule,
        ["fresh labels"] = FreshLabels,
    };

    private static readonly Lazy<(string Corpus, ClaimOutcome Outcome)[]> Claims = new(() =>
        [.. from corpus in ClaimSentence.Corpora
            from language in ClaimSentence.Languages
            from outcome in ClaimOutcome.OfAll(corpus, language)
            select (corpus, outcome)]);

    private static string ClaimsByLanguage()
    {
        var text =
            new StringBuilder(
                "| language | sentences | innocent | made with: wanted | recall | precision | held out: wanted | recall | precision |\n| "
                    + "--- | ---: | ---: | ---: | ---: | ---: | ---: | ---: | ---: |\n");
        foreach (var language in ClaimSentence.Languages)
        {
            var all = ClaimSentence.Corpora.SelectMany(c => ClaimSentence.Read(language, c)).ToArray();
            var of = Claims.Value.Where(c => c.Outcome.Sentence.Language == language).Select(c => c.Outcome).ToArray();
            text.Append(CultureInfo.InvariantCulture,
                $"| {language} | {all.Length} | {all.Count(s => s.IsInnocent)} | {Sum(of.Where(o => !o.Sentence.HeldOut))} | {Sum(of.Where(o => o.Sentence.HeldOut))} |\n");
        }
        var every = Claims.Value.Select(c => c.Outcome).ToArray();
        return text.Append(CultureInfo.InvariantCulture,
            $"| **all** | | | {Sum(every.Where(o => !o.Sentence.HeldOut))} | {Sum(every.Where(o => o.Sentence.HeldOut))} |\n").ToString();
    }

    private static string ClaimsByRule()
    {
        var text = new StringBuilder("| market | rule | wanted | recall | precision |\n| --- | --- | ---: | ---: | ---: |\n");
        foreach (var rows in Claims.Value.Select(c => c.Outcome).Where(o => o.Sentence.HeldOut).GroupBy(o => (o.Market, o.Rule))
            .OrderBy(g => g.Key.Market, StringComparer.Ordinal).ThenBy(g => g.Key.Rule, StringComparer.Ordinal))
            text.Append(CultureInfo.InvariantCulture, $"| {rows.Key.Market} | `{rows.Key.Rule}` | {Sum(rows)} |\n");
        return text.ToString();
    }

    private static string LabelsByMarket()
    {
        var text =
            new StringBuilder(
                "| market | labels | right ones | seeded defects | found | `must` told beside |\n| --- | ---: | ---: | ---: | "
                    + "---: | ---: |\n");
        foreach (var market in SeededLabel.All.GroupBy(l => l.Market.Id).OrderBy(g => g.Key, StringComparer.Ordinal))
        {
            text.Append(CultureInfo.InvariantCulture,
                $"| {market.Key} | {market.Count()} | {market.Count(l => l.Seeded.Count == 0)} | {market.Sum(l => l.Seeded.Count)} | {market.Sum(Hits)} | {market.Sum(False)} |\n");
        }
        return text.ToString();
    }

    private static string LabelsByRule()
    {
        var text = new StringBuilder("| rule | seeded | recall | precision |\n| --- | ---: | ---: | ---: |\n");
        foreach (var rule in SeededLabel.All.SelectMany(l => l.Seeded).Distinct().Order(StringComparer.Ordinal))
        {
            var seeded = SeededLabel.All.Where(l => l.Seeded.Contains(rule)).ToArray();
            var told = SeededLabel.All.Where(l => l.Found.Any(f => f.Rule == rule && f.Severity != Severity.Note)).ToArray();
            var hits = seeded.Count(l => l.Found.Any(f => f.Rule == rule));
            text.Append(CultureInfo.InvariantCulture,
                $"| `{rule}` | {seeded.Length} | {(double)hits / seeded.Length:0.000} | {(told.Length == 0 ? 1 : (double)told.Count(l => l.Seeded.Contains(rule)) / told.Length):0.000} |\n");
        }
        return text.ToString();
    }

    private static string FreshLabels()
    {
        var text =
            new StringBuilder(
                "| set | right labels without a false `must`, at first sight | slips found, at first sight | right labels now | slips now "
                    + "|\n| --- | ---: | ---: | ---: | ---: |\n");
        foreach (var set in FreshLabel.Sets)
        {
            var labels = FreshLabel.All.Where(l => l.Set == set.Name).ToArray();
            var slips = labels
                .SelectMany(l => l.Slips
                    .Select(x => l.Judged(x).Report.Findings.Any(f => f.Rule == x.Rule && f.Severity != Severity.Note)))
                .ToArray();
            text.Append(CultureInfo.InvariantCulture,
                $"| {set.Name} | {set.RightAtFirst} | {set.SlipsAtFirst} | {labels.Count(l => !l.Found.Any(f => f.Severity == Severity.Must))} of {labels.Length} | {slips.Count(f => f)} of {slips.Length} |\n");
        }
        return text.ToString();
    }

    private static int Hits(SeededLabel label) => label.Seeded.Count(r => label.Found.Any(f => f.Rule == r));

    private static int False(SeededLabel label) => label.Found.Count(f => f.Severity == Severity.Must && !label.Seeded.Contains(f.Rule));

    private static ClaimScore Sum(IEnumerable<ClaimOutcome> outcomes) => outcomes.Aggregate(default(ClaimScore), (s, o) => s + o.Score);
}

/// <summary>What docs/checks.md publishes is what comes of the corpora today.</summary>
public sealed class ChecksPageTests
{
    [Fact]
    public void The_published_scores_are_those_of_these_checks()
    {
        var page = Repository.Page("checks.md");
        var now = ChecksPage.Tables.Aggregate(page, (text, table) => With(text, table.Key, table.Value()));
        if (Environment.GetEnvironmentVariable("LABELFORGE_APPROVE") == "1")
            File.WriteAllText(Path.Combine(Repository.Folder, "docs", "checks.md"), now);
        else
            Assert.Equal(now, page);
    }

    private static string With(string page, string name, string table)
    {
        var (begin, end) = ($"<!-- begin {name} -->\n", $"<!-- end {name} -->");
        var from = page.IndexOf(begin, StringComparison.Ordinal);
        Assert.True(from >= 0, $"docs/checks.md has no {begin}");
        return page[..(from + begin.Length)] + table + page[page.IndexOf(end, from, StringComparison.Ordinal)..];
    }
}
