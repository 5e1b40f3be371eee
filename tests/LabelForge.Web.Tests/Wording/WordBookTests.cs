using System.Text.RegularExpressions;
using LabelForge.Web.Wording;

namespace LabelForge.Web.Tests.Wording;

/// <summary>Every word of the page that is in its file is there in every language, with the same
/// places to fill; and each is used.</summary>
public partial class WordBookTests
{
    private static readonly WordBook English = WordBook.Of("en");
    private static readonly WordBook French = WordBook.Of("fr");

    public static TheoryData<string> Others => [.. WordBook.Languages.Skip(1).Select(l => l.Id)];

    [Theory]
    [MemberData(nameof(Others))]
    public void Every_language_has_the_same_words(string language) => Assert.Equal(English.Keys, WordBook.Of(language).Keys);

    [Theory]
    [MemberData(nameof(Others))]
    public void A_sentence_has_the_same_places_to_fill_in_every_language(string language)
    {
        var other = WordBook.Of(language);
        Assert.All(English.Keys, k => Assert.Equal(Places(English.Of(k)), Places(other.Of(k))));
    }

    [Fact]
    public void No_line_of_French_begins_with_a_sign_of_its_sentence() =>
        Assert.All(French.Keys.Select(k => French.Of(k)), t => Assert.DoesNotMatch(" [:;?!»]|« ", t));

    [Fact]
    public void What_a_page_asks_for_is_there_and_what_is_there_is_asked_for()
    {
        var sources = Directory.EnumerateFiles(Path.Combine(Repository(), "src", "LabelForge.Web"), "*.*", SearchOption.AllDirectories)
            .Where(f => (f.EndsWith(".razor", StringComparison.Ordinal) || f.EndsWith(".cs", StringComparison.Ordinal))
                && !f.Contains($"{Path.DirectorySeparatorChar}obj{Path.DirectorySeparatorChar}", StringComparison.Ordinal))
            .Select(File.ReadAllText).ToArray();
        var asked = sources.SelectMany(s => Asked().Matches(s)).Select(m => m.Groups["key"].Value).Distinct().ToArray();
        var begun = sources.SelectMany(s => Begun().Matches(s)).Select(m => m.Groups["key"].Value).Distinct().ToArray();
        Assert.NotEmpty(asked);
        Assert.DoesNotContain(asked, k => !English.Has(k) && !English.Has(k + ".one"));
        Assert.DoesNotContain(English.Keys,
            k => !asked.Contains(k)
                && !asked.Contains(k.Replace(".one", "", StringComparison.Ordinal).Replace(".many", "", StringComparison.Ordinal))
                && !begun.Any(b => k.StartsWith(b, StringComparison.Ordinal)));
    }

    // What rules quote of the page: "Fill in “Street”".
    [Theory]
    [InlineData("en", "“([^”]+)”")]
    [InlineData("fr", "«\u00a0([^»]+)\u00a0»")]
    public void A_rule_that_names_a_field_of_the_page_names_it_as_the_page_does(string language, string quoted)
    {
        var book = WordBook.Of(language);
        var labels = book.Keys.Select(k => book.Of(k)).ToHashSet();
        object[] filled = [.. Enumerable.Range(0, 12).Select(n => (object)$"{n}")];
        var named = LabelForge.Checks.RuleList.Sections(LabelForge.Markets.MarketBook.Shipped).SelectMany(r => r.Rules)
            .Where(r => r.PageFix is not null)
            .SelectMany(r => Regex.Matches(r.Find("label", filled).OnPage(language).Fix, quoted).Select(m => m.Groups[1].Value)).ToArray();
        Assert.True(named.Length > 30);
        Assert.All(named, n => Assert.Contains(n, labels));
    }

    [Theory]
    [InlineData("en")]
    [InlineData("fr")]
    public void Every_page_says_in_two_sentences_what_it_is_for(string language)
    {
        var book = WordBook.Of(language);
        var pages = Browsing.Routes.All.Where(r => r != "/not-found").ToArray();
        Assert.True(pages.Length > 20);
        Assert.All(pages, r =>
        {
            var key = $"help.{LabelForge.Web.Components.Parts.PageHelp.KeyOf(r)}";
            Assert.True(book.Has(key), $"{r} has no words under {key}");
            Assert.Equal(2, Sentence().Count(book.Of(key)));
        });
    }

    private static string[] Places(string text) =>
        [.. Filled().Matches(text).Select(m => m.Value).Distinct().Order(StringComparer.Ordinal)];

    private static string Repository()
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (!File.Exists(Path.Combine(folder!.FullName, "LabelForge.sln")))
            folder = folder.Parent;
        return folder.FullName;
    }

    [GeneratedRegex("""(?:(?:(?i:say|words)\[|Counted\()(?:[^\]\n]*? \? )?|(?<=\? "[a-z0-9.-]+") : )"(?<key>[a-z0-9-]+\.[a-z0-9.-]*[a-z0-9])"(?! \+)""")]
    private static partial Regex Asked();

    [GeneratedRegex("""(?:(?i:say|words)\[(?:[^\]\n]*? \? )?\$?"(?<key>[a-z0-9-]+\.[a-z0-9.-]*)(?:" \+|\{)|Named\("(?<key>[a-z0-9-]+)")""")]
    private static partial Regex Begun();

    [GeneratedRegex(@"[.!?](?=\s|\z)")]
    private static partial Regex Sentence();

    [GeneratedRegex(@"\{[0-9]\}")]
    private static partial Regex Filled();
}
