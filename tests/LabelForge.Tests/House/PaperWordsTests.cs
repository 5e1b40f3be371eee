using System.Text.RegularExpressions;
using LabelForge.Papers;

namespace LabelForge.Tests.House;

/// <summary>The words of the papers for the bench and the table are there in every language, with
/// the same places to fill, and each is asked for.</summary>
public sealed partial class PaperWordsTests
{
    public static TheoryData<string> Others => [.. PaperWords.Languages.Where(l => l != PaperWords.English.Language)];

    [Theory]
    [MemberData(nameof(Others))]
    public void Every_language_has_the_same_words_with_the_same_places_to_fill(string language)
    {
        var other = PaperWords.In(language);
        Assert.Equal(PaperWords.English.Keys.Order(StringComparer.Ordinal), other.Keys.Order(StringComparer.Ordinal));
        Assert.All(PaperWords.English.Keys, k => Assert.Equal(Places(PaperWords.English[k]), Places(other[k])));
    }

    [Fact]
    public void Every_word_is_asked_for_somewhere()
    {
        var sources = string.Join('\n',
            Directory.EnumerateFiles(Path.Combine(Repository.Folder, "src"), "*.*", SearchOption.AllDirectories)
            .Where(f => Path.GetExtension(f) is ".cs" or ".razor"
                && !f.Contains($"{Path.DirectorySeparatorChar}obj{Path.DirectorySeparatorChar}", StringComparison.Ordinal))
            .Select(File.ReadAllText));
        Assert.DoesNotContain(PaperWords.English.Keys,
            k => !sources.Contains($"\"{Counted().Replace(k, "")}\"", StringComparison.Ordinal));
    }

    [Fact]
    public void A_language_that_is_not_there_speaks_English() => Assert.Same(PaperWords.English, PaperWords.In("tlh"));

    private static string[] Places(string text) =>
        [.. Filled().Matches(text).Select(m => m.Value).Distinct().Order(StringComparer.Ordinal)];

    [GeneratedRegex(@"\{[0-9]\}")]
    private static partial Regex Filled();

    [GeneratedRegex("-(one|many)$")]
    private static partial Regex Counted();
}
