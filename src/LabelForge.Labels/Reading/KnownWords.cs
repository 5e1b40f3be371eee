using System.Collections.Concurrent;
using System.Collections.Frozen;
using System.Runtime.CompilerServices;
using LabelForge.Ingredients;

namespace LabelForge.Checks.Reading;

/// <summary>
/// Which words of a label are known: those of its languages, of the trade, of names of ingredients, and the names that stand
/// on it. English is known nearly whole; of the other languages some ten thousand words each, so that there only many unknown
/// words together say something.
/// </summary>
internal sealed class KnownWords
{
    private const string English = "en";
    private const int ShortestWord = 3;
    private const int ShortestPart = 4;

    private static readonly ConcurrentDictionary<string, string[]> Vocabularies = new(StringComparer.Ordinal);
    // "our shop: nettleanddock".
    private static readonly Lazy<Regex> Account = new(() => new Regex(
        $@"\b(?:{string.Join('|', YamlRecord.Embedded("markets/Words/accounts.yaml").SelectMany(r => r.Texts("words", "[shop]")))})\s?:?\s$",
        RegexOptions.RightToLeft, TimeSpan.FromSeconds(5)));

    private static readonly ConditionalWeakTable<IngredientDictionary, FrozenSet<string>> OfIngredients = [];

    // Languages that write compounds as one word: their words are known by their halves.
    private static readonly FrozenSet<string> Joining = new[] { "de", "nl", "sv", "da", "fi", "et", "hu" }
        .ToFrozenSet(StringComparer.Ordinal);

    private readonly string[] languages;
    private readonly HashSet<string> names;
    private readonly FrozenSet<string> ingredients;

    /// <summary>What is known on a label.</summary>
    /// <param name="languages">The languages that it is in.</param>
    /// <param name="names">Text that names a business, a product, a place: its words are known wherever they stand.</param>
    /// <param name="dictionary">The ingredients that are known.</param>
    public KnownWords(IEnumerable<string> languages, IEnumerable<string> names, IngredientDictionary dictionary)
    {
        this.languages = [.. languages.Append(English).Distinct()];
        this.names = [.. names.SelectMany(LanguageOf.Words)];
        ingredients = OfIngredients.GetValue(dictionary,
            d => d.Entries.SelectMany(e => e.Names).SelectMany(LanguageOf.Words).ToFrozenSet(StringComparer.Ordinal));
    }

    /// <summary>The words of a text that are not known, as they are written.</summary>
    public IEnumerable<string> Unknown(string text)
    {
        var folded = FoldedText.Of(text);
        for (var i = 0; i < folded.Length;)
        {
            var start = i;
            while (i < folded.Length && char.IsLetter(folded[i]))
                i++;
            if (i - start >= ShortestWord && !Has(folded[start..i]) && !IsHandle(folded, start, i))
                yield return text[start..i];
            i = Math.Max(i, start + 1);
        }
    }

    private bool Has(string word) =>
        names.Contains(word) || LanguageOf.IsCommon(word) || LanguageOf.IsOfTrade(word) || ingredients.Contains(word)
            || languages.Any(l => IsOf(word, l));

    private static bool IsOf(string word, string language)
    {
        var known = Vocabularies.GetOrAdd(language, Load);
        if (Has(known, word))
            return true;
        if (language == English)
            return Stems(word).Any(s => Has(known, s));
        if (SharesStem(known, word))
            return true;
        return Joining.Contains(language) && Halves(word).Any(h =>
            (Has(known, h.First) || (h.First[^1] == 's' && Has(known, h.First[..^1])))
                && (Has(known, h.Second) || SharesStem(known, h.Second)));
    }

    private static IEnumerable<(string First, string Second)> Halves(string word)
    {
        for (var at = ShortestPart; at <= word.Length - ShortestPart; at++)
            yield return (word[..at], word[at..]);
    }

    private static string[] Load(string language)
    {
        string[] words =
        [
            .. LawData.Vocabulary(language),
            .. YamlRecord.Embedded("markets/Words/everyday-words.yaml").Where(r => r.Text("language", English) == language)
                .SelectMany(r => r.Texts("words", "[rinse]")).SelectMany(LanguageOf.Words),
            .. Phrases.Languages.Contains(language) ? Phrases.Names.SelectMany(n => LanguageOf.Words(Phrases.Find(n, language)!)) : [],
        ];
        Array.Sort(words, StringComparer.Ordinal);
        return words;
    }

    private static bool Has(string[] sorted, string word) => Array.BinarySearch(sorted, word, StringComparer.Ordinal) >= 0;

    // Another form of a word that is known: "cheira" of "cheiro", "altem" of "alte".
    private static bool SharesStem(string[] sorted, string word)
    {
        var stem = word[..Math.Min(word.Length, Math.Max(ShortestPart, (word.Length * 3 + 4) / 5))];
        var at = Array.BinarySearch(sorted, stem, StringComparer.Ordinal);
        return at >= 0 || (~at < sorted.Length && sorted[~at].StartsWith(stem, StringComparison.Ordinal));
    }

    // "Upcycled", "destress": what may be put before and behind any word.
    private static IEnumerable<string> Stems(string word)
    {
        foreach (var ending in (string[])["s", "es", "ed", "d", "ing", "y", "er", "ly", "less", "like", "free", "line", "box", "book",
            "room", "house", "proof", "worthy"])
        {
            if (word.Length - ending.Length >= ShortestPart && word.EndsWith(ending, StringComparison.Ordinal))
                yield return word[..^ending.Length];
        }
        foreach (var beginning in (string[])["un", "re", "non", "pre", "up", "over", "off", "out", "under", "back", "rain", "sea", "hand",
            "home", "super", "multi"])
        {
            if (word.Length - beginning.Length >= ShortestPart && word.StartsWith(beginning, StringComparison.Ordinal))
                yield return word[beginning.Length..];
        }
    }

    // "@mossandmallow", "mossandmallow.example/refills", "#slow": addresses of a kind, not words.
    private static bool IsHandle(string text, int start, int end) =>
        (start > 0 && text[start - 1] is '@' or '#' or '/' or '_')
        || (end < text.Length - 1 && text[end] is '.' or '@' or '_' && char.IsLetterOrDigit(text[end + 1]))
        || (start > 1 && text[start - 1] == '.' && char.IsLetterOrDigit(text[start - 2])) || (start > 0 && char.IsDigit(text[start - 1]))
        || Account.Value.IsMatch(text[..start]);
}
