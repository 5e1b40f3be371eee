using System.Text.RegularExpressions;
using LabelForge.Measures;

namespace LabelForge.Tests.House;

/// <summary>
/// A problem is data: a code, a place, arguments. Its words stand in one catalogue, for the command and the page, and a sentence that
/// is put together in code is found here.
/// </summary>
public partial class ProblemWordsTests
{
    // What only the command reaches: its own calls, files that it writes, copies, rolls and fills.
    private static readonly string[] OnlyAtTheCommand = ["call.", "backup.", "output.", "sheet.how-many-of-what",
        "sheet.not-serial-numbers", "sheet.nothing-to-fill"];

    private static readonly (string File, string Code, string[] Names)[] Uses = [.. Sources().SelectMany(UsesIn)];

    private static readonly string[] Mentioned = [.. Sources()
        .SelectMany(f => AnyCode().Matches(f.Text).Select(m => m.Groups["code"].Value)).Distinct()];

    public static TheoryData<string> Languages => [.. ProblemWords.Languages];

    [Fact]
    public void A_problem_is_a_code_and_no_sentence()
    {
        Assert.True(Uses.Length > 500);
        Assert.Empty(Sources().SelectMany(f => Sentence().Matches(f.Text).Select(m => $"{f.Name}: {m.Value}")));
    }

    [Theory]
    [MemberData(nameof(Languages))]
    public void Every_code_has_words_in_every_language(string language)
    {
        // A group that a language has not got yet is told in English; one that it has, it has whole.
        var known = ProblemWords.Page(language).All().Select(w => w.Code).ToHashSet();
        var groups = known.Select(GroupOf).ToHashSet();
        Assert.Empty(Uses.Where(u => (language == "en" || groups.Contains(GroupOf(u.Code))) && !known.Contains(u.Code))
            .Select(u => $"{u.File}: {u.Code}"));
        Assert.Equal(ProblemWords.Command.All().Select(w => w.Code).Where(c => groups.Contains(GroupOf(c))).Order(StringComparer.Ordinal),
            known.Order(StringComparer.Ordinal));
    }

    [Theory]
    [MemberData(nameof(Languages))]
    public void Every_place_in_the_words_has_an_argument_wherever_the_problem_is_found(string language)
    {
        var words = ProblemWords.Page(language).All().ToDictionary(w => w.Code, w => w.Words);
        Assert.Empty(
            from use in Uses
            from text in words.GetValueOrDefault(use.Code) ?? []
            from Match place in Place().Matches(text)
            where !use.Names.Contains(place.Groups["name"].Value)
            select $"{use.File}: {use.Code} has no {place.Value}");
    }

    [Fact]
    public void No_words_stand_in_the_catalogue_that_no_problem_uses() =>
        Assert.DoesNotContain(ProblemWords.Command.All().Select(w => w.Code),
            c => !Mentioned.Contains(c) && !Mentioned.Any(m => c.StartsWith(m + "-", StringComparison.Ordinal)));

    [Fact]
    public void No_word_of_the_command_stands_on_the_page() => Assert.DoesNotContain(
        ProblemWords.Page("en").All().Where(w => !OnlyAtTheCommand.Any(o => w.Code.StartsWith(o, StringComparison.Ordinal))),
        w => NamesACommand().IsMatch(w.Words.Length == 3 ? w.Words[0] + w.Words[2] : w.Words[0] + w.Words[1]));

    // An argument is a name or a figure, or a problem with words of its own: no sentence comes in as one.
    [Theory]
    [MemberData(nameof(Languages))]
    public void Words_are_more_than_an_argument(string language) =>
        Assert.Empty(ProblemWords.Page(language).All().Where(w => w.Words.Any(Only().IsMatch)).Select(w => w.Code));

    [Fact]
    public void A_problem_is_told_at_its_place_in_the_words_of_each_door()
    {
        var problem = new Problem("recipes/bar.yaml", 4, "lot.not-closed", ("lot", "26R25-01E"));
        Assert.Equal(
            "recipes/bar.yaml, line 4: Lot 26R25-01E is not finished, so nothing of it can leave. Close it first: labelforge batch close "
                + "26R25-01E --made N", problem.ToString());
        Assert.Equal("Finish it first, on the batch bench.", problem.In(ProblemWords.Page("en")).Write);
        Assert.Equal("26R25-01E", problem.ValueOf("lot"));
    }

    // What is left in English: groups of the command alone, and of files that no maker writes.
    [Fact]
    public void What_a_page_can_tell_is_told_in_french_too()
    {
        var french = ProblemWords.Page("fr").All().Select(w => GroupOf(w.Code)).ToHashSet();
        string[] left = [.. ProblemWords.Command.All().Select(w => GroupOf(w.Code)).Where(g => !french.Contains(g)).Distinct()
            .Order(StringComparer.Ordinal)];
        Assert.Equal(["backup", "call", "claims", "import", "rule", "substances"], left);
        var problem = new Problem(null, 0, "amount.percent-of-what", ("text", "5 %"), ("figure", 5));
        Assert.Equal(("fr", "« 5 % » : un pourcentage de quoi ?"),
            (problem.In(ProblemWords.Page("fr")).Language, problem.In(ProblemWords.Page("fr")).Wrong));
        var told = new Problem(null, 0, "backup.books-hold-entries").In(ProblemWords.Page("fr"));
        Assert.Equal("en", told.Language);
    }

    [Fact]
    public void What_a_maker_is_to_write_in_braces_stays_as_it_is() =>
        Assert.Contains("{ use: clear-bag, count: 1 }", new Problem(null, 0, "money.not-packaging").Write, StringComparison.Ordinal);

    private static string GroupOf(string code) => code[..code.IndexOf('.', StringComparison.Ordinal)];

    private static IEnumerable<(string Name, string Text)> Sources() =>
        Directory.EnumerateFiles(Path.Combine(Repository.Folder, "src"), "*.*", SearchOption.AllDirectories)
            .Where(f => Path.GetExtension(f) is ".cs" or ".razor" && !f.Split(Path.DirectorySeparatorChar).Any(p => p is "obj" or "bin"))
            .Order(StringComparer.Ordinal).Select(f => (Path.GetFileName(f), File.ReadAllText(f)));

    // A problem's code with the arguments that stand behind it, up to the bracket that closes the call.
    private static IEnumerable<(string File, string Code, string[] Names)> UsesIn((string Name, string Text) file)
    {
        foreach (Match call in Call().Matches(file.Text))
        {
            var (depth, at) = (1, call.Index + call.Length);
            for (; at < file.Text.Length && depth > 0; at++)
                depth += file.Text[at] switch { '(' => 1, ')' => -1, _ => 0 };
            yield return (file.Name, call.Groups["code"].Value,
                [.. Named().Matches(file.Text[(call.Index + call.Length)..at]).Select(m => m.Groups["name"].Value)]);
        }
    }

    [GeneratedRegex("""\b(?:new (?:Problem|InputException)|Refused?|RefuseAt|Refusal|Need|Wrong|Entry\.(?:Needed|Amount))\((?:[^;"]|"(?:[^"\\]|\\.)*",)*?"(?<code>(?!(?:workshop|market|usual)\.yaml)[a-z0-9-]+\.[a-z0-9-]+)"(?=[,)])""")]
    private static partial Regex Call();

    [GeneratedRegex("""\("(?<name>[a-z0-9-]+)",\s""")]
    private static partial Regex Named();

    [GeneratedRegex("""\b(?:new (?:Problem|InputException)|Refused?|Refusal)\((?!context)(?:[^;"()]|\([^()]*\))*\$?"[A-Z][^"]*""")]
    private static partial Regex Sentence();

    [GeneratedRegex(""""(?<code>[a-z][a-z0-9-]*\.[a-z0-9-]+)"""")]
    private static partial Regex AnyCode();

    [GeneratedRegex("""\{(?<name>[a-z][a-z0-9-]*)(?:\.wrong|\.write)?\}""")]
    private static partial Regex Place();

    [GeneratedRegex("""^\{[a-z0-9-]+\}$""")]
    private static partial Regex Only();

    [GeneratedRegex("(labelforge [a-z]| --[a-z])")]
    private static partial Regex NamesACommand();
}
