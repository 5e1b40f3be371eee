using LabelForge.Checks;
using LabelForge.Markets;

namespace LabelForge.Tests.Checks.Corpus;

/// <summary>
/// Labels of our own invention with known defects. A file's head names the rules that a defect was seeded for ("none" for a
/// lawful label), how the product is sold where the maker would say so, and the market if it is not us; below the dashes stands the label.
/// </summary>
public sealed class CorpusTests(ITestOutputHelper output)
{
    private static IReadOnlyList<SeededLabel> Labels => SeededLabel.All;

    [Fact]
    public void The_corpus_holds_eighty_labels_of_which_twenty_are_lawful()
    {
        Assert.True(Labels.Count >= 80, $"{Labels.Count} labels");
        Assert.True(Labels.Count(l => l.Seeded.Count == 0) >= 20);
    }

    [Fact]
    public void Every_seeded_defect_is_found()
    {
        var missed =
            Labels.SelectMany(l => l.Seeded.Except(l.Found.Select(f => f.Rule))
                .Select(r => $"{l.File}: {r} was not found; read {l.Reading.Names.Length}")).ToArray();
        Assert.True(missed.Length == 0, string.Join("\n", missed));
    }

    [Fact]
    public void No_must_stands_that_was_not_seeded()
    {
        var alarms =
            Labels.SelectMany(l => l.Found.Where(f => f.Severity == Severity.Must && !l.Seeded.Contains(f.Rule))
                .Select(f => $"{l.File}: {f.Rule}: {f.Message}")).ToArray();
        Assert.True(alarms.Length == 0, string.Join("\n", alarms));
    }

    [Fact]
    public void On_a_lawful_label_little_is_said()
    {
        var noise = Labels.Where(l => l.Seeded.Count == 0)
            .SelectMany(l => l.Found.Where(f => f.Severity != Severity.Note).Select(f => $"{l.File}: {f.Rule}: {f.Message}")).ToArray();
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
            output.WriteLine(
                FormattableString.Invariant(
                    $"{rule,-36} seeded {seeded,3}  precision {(found == 0 ? 0 : (double)hits / found):0.00}  recall {(double)hits / seeded:0.00}"));
            Assert.Equal(seeded, hits);
        }
    }
}
