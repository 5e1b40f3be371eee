using System.Runtime.CompilerServices;
using LabelForge.Checks;
using LabelForge.Checks.Reading;
using LabelForge.Ingredients;
using LabelForge.Markets;

namespace LabelForge.Tests.Checks.HardLabels;

/// <summary>
/// Labels that are hard to read, right ones in every official language of the Union and ones with seeded defects: all
/// invented. The file heads say what they are. Each list is read to its last name, each defect is found, and no right label
/// gets a must.
/// </summary>
public sealed class HardLabelTests(ITestOutputHelper output)
{
    private static readonly DateOnly On = new(2026, 11, 26);

    private static IReadOnlyList<HardLabel> Labels { get; } = Read();

    [Fact]
    public void Every_list_is_read_to_its_last_name()
    {
        var wrong = Labels.Where(l => l.Reading.Names.Length != l.Names)
            .Select(l => $"{l.Id}: {l.Reading.Names.Length} names of {l.Names}: {string.Join(" | ", l.Reading.Names.Select(n => n.Name))}")
            .ToArray();
        Assert.True(wrong.Length == 0, $"{wrong.Length} of {Labels.Count}\n{string.Join("\n", wrong)}");
    }

    [Fact]
    public void Every_seeded_defect_is_found()
    {
        var seeded = Labels.Sum(l => l.Seeded.Count);
        var missed = Labels.SelectMany(l => l.Seeded.Where(s => !l.Has(s)).Select(r => $"{l.Id}: {r}")).ToArray();
        output.WriteLine($"{seeded - missed.Length} of {seeded} found");
        Assert.True(missed.Length == 0, $"{missed.Length} of {seeded}\n{string.Join("\n", missed)}");
    }

    [Fact]
    public void No_must_stands_that_was_not_seeded()
    {
        var alarms =
            Labels.SelectMany(l => l.Found.Where(f => f.Severity == Severity.Must && !l.Seeded.Contains(f.Rule))
                .Select(f => $"{l.Id}: {f.Rule}: {f.Message}")).ToArray();
        foreach (var market in Labels.GroupBy(l => l.Market).OrderBy(g => g.Key.Id))
        {
            var right = market.Where(l => l.Seeded.Count == 0).ToArray();
            output.WriteLine(
                $"{market.Key.Id}: {right.Count(l => !l.Found.Any(f => f.Severity == Severity.Must))} of {right.Length} right labels clean; {market.Sum(l => l.Seeded.Count(l.Has))} of {market.Sum(l => l.Seeded.Count)} defects");
        }
        Assert.True(alarms.Length == 0, $"{alarms.Length}\n{string.Join("\n", alarms)}");
    }

    private static IReadOnlyList<HardLabel> Read([CallerFilePath] string here = "") =>
        [.. Directory.GetFiles(Path.GetDirectoryName(here)!, "*.txt").Order(StringComparer.Ordinal)
            .SelectMany(f => File.ReadAllText(f).Split("\n=== ").Skip(1)).Select(HardLabel.Read)];

    private sealed record HardLabel(string Id, Market Market, int Names, IReadOnlySet<string> Seeded, LabelStatement Reading,
        IReadOnlyList<Finding> Found)
    {
        public bool Has(string rule) => Found.Any(f => f.Rule == rule && f.Severity != Severity.Note);

        public static HardLabel Read(string entry)
        {
            var head = entry[..entry.IndexOf('\n')].Split('|', StringSplitOptions.TrimEntries);
            var reading = LabelStatement.Read(LabelText.Of(entry[(entry.IndexOf('\n') + 1)..], head[0]), IngredientDictionary.Shipped);
            var market = Market.Named(head[1]);
            return new(head[0], market, int.Parse(head[2]), head[3] == "none" ? new HashSet<string>() : head[3].Split(", ").ToHashSet(),
                reading, LabelCheck.Run(LabelJudgement.Of(reading, null, null, null, On), market).Findings);
        }
    }
}
