using System.Text.RegularExpressions;
using LabelForge.Markets;

namespace LabelForge.Tests.House;

/// <summary>The command and the page say each thing in their own words, and neither searches the other's sentences.</summary>
public partial class WordsAtEachDoorTests
{
    // A finding is told at both doors in one sentence, so it speaks of the thing and not of an option.
    [Fact]
    public void No_finding_names_a_command() => Assert.Empty(
        MarketBook.Shipped.All.SelectMany(m => m.Rules).Where(r => NamesACommand().IsMatch($"\"{r.Message} {r.Fix}")).Select(r => r.Id)
            .Concat(Sources("Checks").SelectMany(f => f.Lines.Where(l => NamesACommand().IsMatch(l)).Select(l => $"{f.Name}: {l.Trim()}")))
            .Distinct());

    // Whoever shows a problem shows it in the words of the door.
    [Fact]
    public void The_page_tells_problems_in_its_own_words() => Assert.Empty(
        Sources("Web").Where(f => f.Name is not ("PageWords.cs" or "Trouble.razor"))
            .SelectMany(f => f.Lines.Where(l => TellsItself().IsMatch(l)).Select(l => $"{f.Name}: {l.Trim()}")));

    // Codes and keys tell where a problem belongs; how a sentence ends does not.
    [Fact]
    public void No_sentence_of_a_problem_is_searched_by_the_page() => Assert.Empty(
        Sources("Web").SelectMany(f => f.Lines.Where(l => SearchedSentence().IsMatch(l)).Select(l => $"{f.Name}: {l.Trim()}")));

    private static IEnumerable<(string Name, string[] Lines)> Sources(params string[] layers) => layers
        .SelectMany(l => Directory.EnumerateFiles(Path.Combine(Repository.Folder, "src", $"LabelForge.{l}"), "*",
            SearchOption.AllDirectories))
        .Where(f => Path.GetExtension(f) is ".cs" or ".razor"
            && !Path.GetRelativePath(Repository.Folder, f).Split(Path.DirectorySeparatorChar).Any(p => p is "obj" or "bin"))
        .Order(StringComparer.Ordinal)
        .Select(f => (Path.GetFileName(f), File.ReadAllLines(f)));

    [GeneratedRegex("\"[^\"]*(labelforge [a-z]| --[a-z])")]
    private static partial Regex NamesACommand();

    [GeneratedRegex(@"(?<!PageWords\.Of\([\w., ]*\))\.(?:Wrong|Write)\}|@[\w.]*(?:[Pp]roblem|not|refused)\.(?:Wrong|Write)\b")]
    private static partial Regex TellsItself();

    [GeneratedRegex("(Wrong|Write|Message)\\.(Contains|EndsWith|StartsWith|IndexOf|Replace)\\(\"")]
    private static partial Regex SearchedSentence();
}
