using LabelForge.Checks;
using LabelForge.Checks.Reading;
using LabelForge.Ingredients;
using LabelForge.Markets;
using LabelForge.Measures;
using LabelForge.Recipes;

namespace LabelForge.Tests.Checks.Corpus;

/// <summary>A label of our own invention with known defects, and what is found on it.</summary>
/// <param name="File">Its file.</param>
/// <param name="Market">The market it is judged in.</param>
/// <param name="Seeded">The rules that a defect was seeded for.</param>
/// <param name="Reading">What was read.</param>
/// <param name="Report">What is told of it.</param>
internal sealed record SeededLabel(string File, Market Market, IReadOnlySet<string> Seeded, LabelStatement Reading, CheckReport Report)
{
    /// <summary>What was found.</summary>
    public IReadOnlyList<Finding> Found => Report.Findings;

    private static readonly DateOnly On = new(2026, 11, 25);

    /// <summary>All labels of the corpus.</summary>
    public static IReadOnlyList<SeededLabel> All { get; } =
        [.. Directory.GetFiles(Path.Combine(Repository.Folder, "tests", "LabelForge.Tests", "Checks", "Corpus"), "*.txt")
            .Order(StringComparer.Ordinal).Select(Read)];

    private static SeededLabel Read(string path)
    {
        var parts = System.IO.File.ReadAllText(path).Split("---\n", 2);
        var head = parts[0].Split('\n', StringSplitOptions.RemoveEmptyEntries).Select(l => l.Split(": ", 2))
            .ToDictionary(l => l[0], l => l[1]);
        var seeded = head["seeded"] == "none" ? [] : head["seeded"].Split(", ").ToHashSet();
        SoldAs? soldAs = head.GetValueOrDefault("options") == "soap" ? SoldAs.Soap : null;
        var reading = LabelStatement.Read(LabelText.Of(parts[1], Path.GetFileName(path)), IngredientDictionary.Shipped);
        var market = MarketBook.Shipped.Find(head.GetValueOrDefault("market", "us")).OrRefuse();
        return new(Path.GetFileName(path), market, seeded, reading,
            LabelCheck.Run(LabelJudgement.Of(reading, null, soldAs, null, On), market));
    }
}
