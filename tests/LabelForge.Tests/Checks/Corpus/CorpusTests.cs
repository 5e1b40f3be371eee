using System.Runtime.CompilerServices;
using LabelForge.Checks;
using LabelForge.Checks.Reading;
using LabelForge.Ingredients;
using LabelForge.Markets;
using LabelForge.Recipes;

namespace LabelForge.Tests.Checks.Corpus;

/// <summary>
/// Labels of our own invention with known defects. A file's head names the rules that a defect was seeded for ("none" for a
/// lawful label), how the product is sold where the maker would say so, and the market if it is not us; below the dashes stands the label.
/// </summary>
public sealed class CorpusTests(ITestOutputHelper output)
{
    private static readonly DateOnly On = new(2026, 11, 25);

    private static IReadOnlyList<SeededLabel> Labels { get; } = Read();

    [Fact]
    public void The_corpus_holds_eighty_labels_of_which_twenty_are_lawful()
    {
        Assert.True(Labels.Count >= 80, $"{Labels.Count} labels");
        Assert.True(Labels.Count(l => l.Seeded.Count == 0) >= 20);
    }

    [Fact]
    public void Every_seeded_defect_is_found()
    {
        var missed = Labels.SelectMany(l => l.Seeded.Except(l.Found.Select(f => f.Rule)).Select(r => $"{l.File}: {r} was not found; read {l.Reading.Names.Length}")).ToArray();
        Assert.True(missed.Length == 0, string.Join("\n", missed));
    }

    [Fact]
    public void No_must_stands_that_was_not_seeded()
    {
        var alarms = Labels.SelectMany(l => l.Found.Where(f => f.Severity == Severity.Must && !l.Seeded.Contains(f.Rule)).Select(f => $"{l.File}: {f.Rule}: {f.Message}")).ToArray();
        Assert.True(alarms.Length == 0, string.Join("\n", alarms));
    }

    [Fact]
    public void On_a_lawful_label_little_is_said()
    {
        var noise = Labels.Where(l => l.Seeded.Count == 0).SelectMany(l => l.Found.Where(f => f.Severity != Severity.Note).Select(f => $"{l.File}: {f.Rule}: {f.Message}")).ToArray();
        foreach (var line in noise)
            output.WriteLine(line);
        Assert.True(noise.Length <= Labels.Count(l => l.Seeded.Count == 0) / 2, string.Join("\n", noise));
    }

    [Fact]
    public void Precision_and_recall_of_each_rule()
    {
        foreach (var rule in Labels.SelectMany(l => l.Seeded).Distinct().Order(StringComparer.Ordinal))
        {
            var hits = Labels.Count(l => l.Seeded.Contains(rule) && l.Found.Any(f => f.Rule == rule));
            var found = Labels.Count(l => l.Found.Any(f => f.Rule == rule && f.Severity != Severity.Note));
            var seeded = Labels.Count(l => l.Seeded.Contains(rule));
            output.WriteLine(FormattableString.Invariant($"{rule,-36} seeded {seeded,3}  precision {(found == 0 ? 0 : (double)hits / found):0.00}  recall {(double)hits / seeded:0.00}"));
            Assert.Equal(seeded, hits);
        }
    }

    private static IReadOnlyList<SeededLabel> Read([CallerFilePath] string here = "") =>
        [.. Directory.GetFiles(Path.GetDirectoryName(here)!, "*.txt").Order(StringComparer.Ordinal).Select(SeededLabel.Read)];

    private sealed record SeededLabel(string File, IReadOnlySet<string> Seeded, LabelStatement Reading, IReadOnlyList<Finding> Found)
    {
        public static SeededLabel Read(string path)
        {
            var parts = System.IO.File.ReadAllText(path).Split("---\n", 2);
            var head = parts[0].Split('\n', StringSplitOptions.RemoveEmptyEntries).Select(l => l.Split(": ", 2)).ToDictionary(l => l[0], l => l[1]);
            var seeded = head["seeded"] == "none" ? [] : head["seeded"].Split(", ").ToHashSet();
            SoldAs? soldAs = head.GetValueOrDefault("options") == "soap" ? SoldAs.Soap : null;
            var reading = LabelStatement.Read(LabelText.Of(parts[1], Path.GetFileName(path)), IngredientDictionary.Shipped);
            var market = MarketText.Parse(head.GetValueOrDefault("market", "us")).OrRefuse();
            return new(Path.GetFileName(path), seeded, reading, LabelCheck.Run(LabelJudgement.Of(reading, null, soldAs, null, On), market).Findings);
        }
    }
}
