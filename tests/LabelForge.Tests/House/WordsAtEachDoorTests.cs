using System.Text.RegularExpressions;
using LabelForge.Markets;

namespace LabelForge.Tests.House;

/// <summary>Advice in the command's words carries a code, and by it the page has words of its own: none of the command's show there.</summary>
public partial class WordsAtEachDoorTests
{
    // What only the command reaches, or what is printed on paper for it.
    private static readonly string[] OnlyAtTheCommand = ["OutputPath.cs", "RuleList.cs", "LawPage.cs", "CalibrationPage.cs", "PartUsedSheets.cs", "SerialNumbers.cs", "FillItem.cs", "RecallLetters.cs", "BookCopy.cs", "WorkshopCopy.cs"];

    // Told at the field that it is about, or about the thing alone: the same words serve at both doors.
    private static readonly string[] TheSameAtBoth =
        ["material.unknown", "product.unknown", "copy.refused", "pour.unreadable", "printing.spoiled-more", "return.more-back"];

    private static readonly string Page = File.ReadAllText(Path.Combine(Repository.Folder, "src", "LabelForge.Web", "Workbench", "PageWords.cs"));

    [Fact]
    public void Advice_that_names_a_command_has_a_code()
    {
        var without = Sources("Core", "Composition", "Law", "Products", "Labels", "Print", "Records", "App").Where(f => !OnlyAtTheCommand.Contains(f.Name))
            .SelectMany(f => f.Lines.Where((l, at) => NamesACommand().IsMatch(l) && !l.TrimStart().StartsWith("//", StringComparison.Ordinal) && !Code().IsMatch(Statement(f.Lines, at))).Select(l => $"{f.Name}: {l.Trim()}"));
        Assert.Empty(without);
    }

    // A sentence's code stands behind it: on its line or, where the statement goes on, on one of those below.
    private static string Statement(string[] lines, int at) =>
        string.Concat(lines.Skip(at).Take(1 + lines.Skip(at).TakeWhile(l => !l.TrimEnd().EndsWith(';')).Count()));

    // A finding is told at both doors in one sentence, so it speaks of the thing and not of an option.
    [Fact]
    public void No_finding_names_a_command() => Assert.Empty(
        MarketBook.Shipped.All.SelectMany(m => m.Rules).Where(r => NamesACommand().IsMatch($"\"{r.Message} {r.Fix}")).Select(r => r.Id)
            .Concat(Sources("Checks").SelectMany(f => f.Lines.Where(l => NamesACommand().IsMatch(l)).Select(l => $"{f.Name}: {l.Trim()}"))).Distinct());

    [Fact]
    public void The_page_has_words_for_every_code()
    {
        var codes = Sources("Core", "Law", "Products", "Labels", "Checks", "Print", "Records", "App").SelectMany(f => f.Lines).SelectMany(l => Code().Matches(l)).Select(m => m.Groups["code"].Value).Distinct().ToArray();
        Assert.True(codes.Length > 25);
        Assert.DoesNotContain(codes.Except(TheSameAtBoth), c => !Page.Contains($"[\"{c}\"]", StringComparison.Ordinal));
    }

    [Fact]
    public void No_word_of_the_command_stands_on_the_page() => Assert.DoesNotMatch(NamesACommand(), Page);

    // Codes and keys tell where a problem belongs; how a sentence ends does not.
    [Fact]
    public void No_sentence_of_a_problem_is_searched_by_the_page() => Assert.Empty(
        Sources("Web").SelectMany(f => f.Lines.Where(l => SearchedSentence().IsMatch(l)).Select(l => $"{f.Name}: {l.Trim()}")));

    private static IEnumerable<(string Name, string[] Lines)> Sources(params string[] layers) => layers
        .SelectMany(l => Directory.EnumerateFiles(Path.Combine(Repository.Folder, "src", $"LabelForge.{l}"), "*", SearchOption.AllDirectories))
        .Where(f => Path.GetExtension(f) is ".cs" or ".razor" && !Path.GetRelativePath(Repository.Folder, f).Split(Path.DirectorySeparatorChar).Any(p => p is "obj" or "bin"))
        .Order(StringComparer.Ordinal)
        .Select(f => (Path.GetFileName(f), File.ReadAllLines(f)));

    [GeneratedRegex("\"[^\"]*(labelforge [a-z]| --[a-z])")]
    private static partial Regex NamesACommand();

    [GeneratedRegex("(?:Code = (?:[^\";]*\\? )?|code: )\"(?<code>[a-z-]+\\.[a-z-]+)\"")]
    private static partial Regex Code();

    [GeneratedRegex("(Wrong|Write|Message)\\.(Contains|EndsWith|StartsWith|IndexOf|Replace)\\(\"")]
    private static partial Regex SearchedSentence();
}
