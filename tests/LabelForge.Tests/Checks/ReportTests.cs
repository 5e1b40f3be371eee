using System.Text;
using LabelForge.Checks;
using LabelForge.Checks.Reading;
using LabelForge.Markets;
using LabelForge.Tests.Checks.Corpus;
using LabelForge.Tests.Checks.FreshLabels;
using LabelForge.Tests.Checks.FreshRecipes;

namespace LabelForge.Tests.Checks;

/// <summary>Whole reports, word by word, as they were approved: of each corpus of labels, with what each slip adds and where on the
/// label each finding points, and of the recipes. After a change that is
/// meant, <c>LABELFORGE_APPROVE=1</c> with this class writes them anew, to be read before they are committed.</summary>
public sealed class ReportTests
{
    /// <summary>The sets that reports are approved of.</summary>
    public static TheoryData<string> Sets { get; } = [.. FreshLabel.Sets.Select(s => s.Name), "corpus", "recipes", "recipes-second"];

    [Theory]
    [MemberData(nameof(Sets))]
    public void What_is_told_is_what_was_approved(string set)
    {
        var sentences = new HashSet<string>(StringComparer.Ordinal);
        var told = string.Concat(Reports(set).Select(r => Told(r, sentences)));
        var (now, before) = (told.Split('\n'), Repository.Approved($"reports/{set}.txt", told).Split('\n'));
        var at = Enumerable.Range(0, Math.Max(now.Length, before.Length)).FirstOrDefault(i =>
            now.ElementAtOrDefault(i) != before.ElementAtOrDefault(i), -1);
        Assert.True(at < 0, $"{set}.txt:{at + 1}: \"{now.ElementAtOrDefault(at)}\", approved is \"{before.ElementAtOrDefault(at)}\"");
    }

    private static IEnumerable<Reported> Reports(string set) => set switch
    {
        "corpus" => SeededLabel.All.Select(l => new Reported(l.File, l.Reading, l.Report)),
        "recipes" => OfRecipes("first"),
        "recipes-second" => OfRecipes("second"),
        _ => FreshLabel.All.Where(l => l.Set == set)
            .SelectMany(l => l.Slips.Select(s => OfSlip(l, s)).Prepend(new(l.Id, l.Reading, l.Report))),
    };

    private static IEnumerable<Reported> OfRecipes(string set) =>
        FreshRecipeTests.Reports(set).Select(r => new Reported(r.Of, null, r.Report));

    // Of a slip only what the right label is not told: the rest stands above.
    private static Reported OfSlip(FreshLabel label, FreshSlip slip)
    {
        var (reading, report) = label.Judged(slip);
        return new($"{label.Id}, {slip.Rule}", reading,
            report with { Findings = [.. report.Findings.ExceptBy(label.Found.Select(Sentence), Sentence)] }, false);
    }

    // What was told of one in the very same words is not written again of another.
    private static string Told(Reported of, HashSet<string> sentences)
    {
        var told = new StringBuilder($"== {of.Of} | {of.Report.Market}\n");
        foreach (var (what, text) in of.Report.Found.Parts.Where(p => of.Whole && p.Text.Length > 0))
            told.Append($"{what}: {OnOneLine(text)}\n");
        foreach (var finding in of.Report.Findings)
        {
            told.Append($"{finding.Severity.ToString().ToLowerInvariant()} {finding.Rule} @ {finding.Where} ({finding.Source})\n");
            if (of.Reading is { } reading && FindingPlaces.Of(finding, reading) is { IsEmpty: false } places)
                told.Append($"    at {OnOneLine(string.Join(" ... ", places.Select(s => reading.Text.Text.Substring(s.Start, s.Length))))}\n");
            foreach (var line in finding.Unless.Select(u => "unless " + u).Prepend(finding.Fix).Prepend(finding.Message))
            {
                if (sentences.Add(line))
                    told.Append($"    {OnOneLine(line)}\n");
            }
        }

        return told.ToString();
    }

    private static (string, string) Sentence(Finding finding) => (finding.Rule, finding.Message);

    private static string OnOneLine(string text) => text.ReplaceLineEndings(" / ");

    /// <summary>A report, of what, the label it is of where there is one, and whether the label's parts are shown.</summary>
    private sealed record Reported(string Of, LabelStatement? Reading, CheckReport Report, bool Whole = true);
}
