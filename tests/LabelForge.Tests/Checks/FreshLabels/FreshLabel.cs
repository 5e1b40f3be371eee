using System.Collections.Concurrent;
using LabelForge.Checks;
using LabelForge.Checks.Reading;
using LabelForge.Ingredients;
using LabelForge.Markets;

namespace LabelForge.Tests.Checks.FreshLabels;

/// <summary>A right label as somebody might write it, with the last name of its list, and what one slip makes of it.</summary>
public sealed record FreshLabel(string Set, string Id, Market Market, string LastName, string Text, IReadOnlyList<FreshSlip> Slips)
{
    private static readonly DateOnly On = new(2026, 11, 26);
    private readonly ConcurrentDictionary<FreshSlip, (LabelStatement, CheckReport)> slips = new();

    /// <summary>The sets in the order in which they were written.</summary>
    public static IReadOnlyList<FreshSet> Sets { get; } =
        [.. File.ReadAllLines(Path.Combine(Folder, "sets.txt")).Select(l => l.Split('|', StringSplitOptions.TrimEntries))
            .Select(l => new FreshSet(l[0], l[1], l[2]))];

    /// <summary>Every label of every set.</summary>
    public static IReadOnlyList<FreshLabel> All { get; } =
        [
            .. Sets.SelectMany(set => File.ReadAllText(Path.Combine(Folder, set.Name + ".txt")).Split("\n=== ").Skip(1)
                .Select(entry => Read(set.Name, entry)))];

    private static string Folder => Path.Combine(Repository.Folder, "tests", "LabelForge.Tests", "Checks", "FreshLabels");

    /// <summary>The label as it is read.</summary>
    public LabelStatement Reading { get; } = LabelStatement.Read(LabelText.Of(Text, Id), IngredientDictionary.Shipped);

    /// <summary>What is told of the right label.</summary>
    internal CheckReport Report => field ??= Judged(Reading);

    /// <summary>What is found on the right label.</summary>
    public IReadOnlyList<Finding> Found => Report.Findings;

    /// <summary>What is found on a text in this label's market.</summary>
    public IReadOnlyList<Finding> Judge(string text) => Judged(Read(text)).Findings;

    /// <summary>What is read of a slip, and told of it.</summary>
    internal (LabelStatement Reading, CheckReport Report) Judged(FreshSlip slip) => slips.GetOrAdd(slip, s =>
    {
        var read = Read(s.Text);
        return (read, Judged(read));
    });

    private LabelStatement Read(string text) => LabelStatement.Read(LabelText.Of(text, Id), IngredientDictionary.Shipped);

    private CheckReport Judged(LabelStatement reading) => LabelCheck.Run(LabelJudgement.Of(reading, null, null, null, On), Market);

    private static FreshLabel Read(string set, string entry)
    {
        var parts = entry.Split("\n--- ");
        var lines = parts[0].Split('\n', 2);
        var head = lines[0].Split('|', StringSplitOptions.TrimEntries);
        return new(set, head[0], Market.Named(head[1]), head[2], lines[1],
            [.. parts.Skip(1).Select(p => FreshSlip.Read(p, lines[1], head[0]))]);
    }
}

/// <summary>A set of labels and how it came out when it was first tried, before anything was changed for it.</summary>
public sealed record FreshSet(string Name, string RightAtFirst, string SlipsAtFirst);

/// <summary>The rule that one slip breaks, and the label's text with the slip in it.</summary>
public sealed record FreshSlip(string Rule, string Text)
{
    /// <summary>A slip from its edits: "- words" are taken out, "words => words" are exchanged.</summary>
    public static FreshSlip Read(string entry, string right, string label)
    {
        var lines = entry.Split('\n');
        var text = lines.Skip(1).Where(l => l.Trim().Length > 0).Aggregate(right, (t, line) => Edited(t, line, label));
        return new(lines[0].Trim(), text);
    }

    private static string Edited(string text, string line, string label)
    {
        var arrow = line.IndexOf(" =>", StringComparison.Ordinal);
        var (old, replacement) = arrow < 0
            ? (line[(line.IndexOf("- ", StringComparison.Ordinal) + 2)..].Trim(), "")
            : (line[..arrow], line[(arrow + 3)..].TrimStart(' '));
        Assert.True(text.Contains(old, StringComparison.Ordinal), $"{label}: \"{old}\" is not on the label");
        return text.Replace(old, replacement, StringComparison.Ordinal);
    }
}
