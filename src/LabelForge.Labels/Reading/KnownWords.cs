using System.Collections.Concurrent;
using System.Collections.Frozen;
using System.Runtime.CompilerServices;
using LabelForge.Ingredients;

namespace LabelForge.Checks.Reading;

/// <summary>
/// Which words of a label are known: those of its languages, of the trade, of names of ingredients, and the names that stand
/// on it. Most languages are known nearly whole (<see cref="WordList.IsWhole"/>); of the others only many unknown words together
/// say something.
/// </summary>
internal sealed partial class KnownWords
{
    private const string English = "en";
    private const int ShortestWord = 3;
    private const int ShortestPart = 4;

    private static readonly ConcurrentDictionary<string, FrozenSet<string>> OfLabels = new(StringComparer.Ordinal);

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
        return LanguageOf.WordsAt(folded)
            .Where(w => w.Length >= ShortestWord && !Has(folded[w.Start..w.End])
                && !IsHandle(folded, w.Start, w.End) && !IsOfAccount(folded, w.Start, w.End))
            .Select(w => text[w.Start..w.End]);
    }

    private bool Has(string word) =>
        names.Contains(word) || LanguageOf.IsCommon(word) || LanguageOf.IsOfTrade(word) || ingredients.Contains(word)
            || languages.Any(l => IsOf(word, l));

    /// <summary>Whether letters are a word in English or in the language of the text that they stand in.</summary>
    public static bool IsWord(string letters, string text) =>
        FoldedText.Of(letters) is var word
            && new[] { English, LanguageOf.Find(text)?.Language ?? English }.Distinct().Any(l => IsOf(word, l));

    /// <summary>Whether a folded word is an English one.</summary>
    public static bool IsEnglish(string word) => IsOf(word, English);

    /// <summary>Whether all words of a text are French ones.</summary>
    public static bool AreFrench(string text) =>
        LanguageOf.Words(text).ToArray() is { Length: > 0 } words && words.All(w => IsOf(w, "fr"));

    /// <summary>Whether a word that is not known in a language is hardly one.</summary>
    public static bool IsWhole(string language) => WordList.Of(language)?.IsWhole == true;

    private static bool IsOf(string word, string language)
    {
        if (OfLabels.GetOrAdd(language, Load).Contains(word))
            return true;
        if (WordList.Of(language) is not { } known)
            return false;
        if (known.Knows(word))
            return true;
        if (language == English)
            return Stems(word).Any(s => known.Has(s))
                || American(word).Any(w => known.Knows(w) || Stems(w).Any(s => known.Has(s)))
                || (word.LastIndexOf("is", StringComparison.Ordinal) is > ShortestPart and var at
                    && known.Knows($"{word[..at]}iz{word[(at + 2)..]}"));
        return (!known.IsWhole && known.Begins(StemOf(word))) || (Joining.Contains(language) && IsJoined(known, word, ShortestWord));
    }

    // Of two words and more, the first with what joins it: "Haselnussgroße", "Zahnarztstuhl".
    private static bool IsJoined(WordList known, string word, int shortest)
    {
        for (var at = shortest; at <= word.Length - ShortestPart; at++)
        {
            var (first, second) = (word[..at], word[at..]);
            // Three letters are a word so often that more has to follow.
            if (at == ShortestWord && second.Length <= ShortestPart)
                continue;
            if ((known.Has(first) || Links.Any(l => first.Length - l.Length >= ShortestPart && first.EndsWith(l, StringComparison.Ordinal)
                    && known.Has(first.AsSpan(0, first.Length - l.Length))))
                && (known.Knows(second)
                    || (!known.IsWhole && known.Begins(StemOf(second)))
                    || (second.Length > 2 * ShortestPart && IsJoined(known, second, ShortestPart))))
                return true;
        }
        return false;
    }

    // What may stand between the words of a compound (German, Dutch and their neighbours).
    private static readonly string[] Links = ["s", "n", "en", "e", "er", "o"];

    // What labels say beside a language's ordinary words.
    private static FrozenSet<string> Load(string language) =>
        YamlRecord.Embedded("markets/Words/everyday-words.yaml").Where(r => r.Text("language", English) == language)
            .SelectMany(r => r.Texts("words", "[rinse]")).SelectMany(LanguageOf.Words)
            .Concat(Phrases.Languages.Contains(language)
                ? Phrases.Names.SelectMany(n => LanguageOf.Words(Phrases.Find(n, language)!)) : [])
            .ToFrozenSet(StringComparer.Ordinal);

    // Another form of a word that is known: "cheira" of "cheiro", "altem" of "alte".
    private static string StemOf(string word) => word[..Math.Min(word.Length, Math.Max(ShortestPart, (word.Length * 3 + 4) / 5))];

    // "Neighbours", "travelled", "theatre": as they are spelt in Britain, as America spells them.
    private static IEnumerable<string> American(string word)
    {
        foreach (var (british, american) in ((string, string)[])[("our", "or"), ("yse", "yze"), ("ogue", "og"), ("tre", "ter"), ("ence", "ense"),
            ("lled", "led"), ("lling", "ling"), ("aes", "es"), ("oes", "es")])
        {
            if (word.Contains(british, StringComparison.Ordinal))
                yield return word.Replace(british, american, StringComparison.Ordinal);
        }
    }

    // "Upcycled", "destress", and "pressurised" for pressurized: what may be put before and behind any word.
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
        || (start > 1 && text[start - 1] == '.' && char.IsLetterOrDigit(text[start - 2])) || (start > 0 && char.IsDigit(text[start - 1]));

    // "shop: nettleanddock", "zap @mossandmallow": an account, told by its shape, and what stands before it.
    private bool IsOfAccount(string text, int start, int end) =>
        BeforeHandle().IsMatch(text[end..])
        || (BeforeName().Match(text[end..]) is { Success: true } name && IsRunTogether(name.Groups["name"].Value))
        || (text[end..].Trim().Length == 0 && AfterColon().IsMatch(text[..start]) && IsRunTogether(text[start..end]));

    // Words that are known, without spaces between them.
    private bool IsRunTogether(string word) => Enumerable.Range(ShortestWord, Math.Max(0, word.Length - (2 * ShortestWord) + 1))
        .Any(n => Has(word[..n]) && (Has(word[n..]) || IsRunTogether(word[n..])));

    [GeneratedRegex(@"^(?:\s\p{L}+)?\s?:?\s?@[\w.]+")]
    private static partial Regex BeforeHandle();

    [GeneratedRegex(@"^(?:\s\p{L}+)?\s?:\s?(?<name>\p{L}{8,40})\s*$")]
    private static partial Regex BeforeName();

    [GeneratedRegex(@"^\s*(?:\p{L}+\s){0,2}\p{L}+\s?:\s?$")]
    private static partial Regex AfterColon();
}
