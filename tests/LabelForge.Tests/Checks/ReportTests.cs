using System.Text;
using LabelForge.Checks;
using LabelForge.Markets;
using LabelForge.Tests.Checks.Corpus;
using LabelForge.Tests.Checks.FreshLabels;
using LabelForge.Tests.Checks.FreshRecipes;

namespace LabelForge.Tests.Checks;

/// <summary>Whole reports, word by word, as they were approved: of each corpus of labels, and of the recipes. After a change that is
/// meant, <c>LABELFORGE_APPROVE=1</c> with this class writes them anew, to be read before they are committed.</summary>
public sealed class ReportTests
{
    /// <summary>The sets that reports are approved of.</summary>
    public static TheoryData<string> Sets { get; } = [.. FreshLabel.Sets.Select(s => s.Name), "corpus", "recipes"];

    [Theory]
    [MemberData(nameof(Sets))]
    public void What_is_told_is_what_was_approved(string set)
    {
        var sentences = new HashSet<string>(StringComparer.Ordinal);
        var told = string.Concat(Reports(set).Select(r => Told(r.Of, r.Report, sentences)));
        var (now, before) = (told.Split('\n'), Repository.Approved($"reports/{set}.txt", told).Split('\n'));
        var at = Enumerable.Range(0, Math.Max(now.Length, before.Length)).FirstOrDefault(i =>
            now.ElementAtOrDefault(i) != before.ElementAtOrDefault(i), -1);
        Assert.True(at < 0, $"{set}.txt:{at + 1}: \"{now.ElementAtOrDefault(at)}\", approved is \"{before.ElementAtOrDefault(at)}\"");
    }

    private static IEnumerable<(string Of, CheckReport Report)> Reports(string set) => set switch
    {
        "corpus" => SeededLabel.All.Select(l => (l.File, l.Report)),
        "recipes" => FreshRecipeTests.Reports("first"),
        _ => FreshLabel.All.Where(l => l.Set == set).Select(l => (l.Id, l.Report)),
    };

    // What was told of one in the very same words is not written again of another.
    private static string Told(string of, CheckReport report, HashSet<string> sentences)
    {
        var told = new StringBuilder($"== {of} | {report.Market}\n");
        foreach (var (what, text) in report.Found.Parts.Where(p => p.Text.Length > 0))
            told.Append($"{what}: {text.ReplaceLineEndings(" / ")}\n");
        foreach (var finding in report.Findings)
        {
            told.Append($"{finding.Severity.ToString().ToLowerInvariant()} {finding.Rule} @ {finding.Where} ({finding.Source})\n");
            foreach (var line in finding.Unless.Select(u => "unless " + u).Prepend(finding.Fix).Prepend(finding.Message))
            {
                if (sentences.Add(line))
                    told.Append($"    {line.ReplaceLineEndings(" / ")}\n");
            }
        }

        return told.ToString();
    }
}
