namespace LabelForge.Checks.Reading;

/// <summary>The words and the sentences of a text, and in which language they are: by the words that stand in any text of it and by
/// the words of labels. Claims tell the languages that have a grammar apart by its own short list: <c>small</c> in grammar.yaml says
/// why.</summary>
public static class LanguageOf
{
    private static readonly Lazy<ImmutableArray<(string Language, HashSet<string> Words)>> Held = new(Load);

    private const int FewWords = 5;

    private static readonly string[] Files =
    [
        "identities", "identities-languages", "identity-parts", "denials", "claims", "claims-de", "claims-es", "claims-fr", "claims-it",
        "meanings-en", "meanings-de", "meanings-es", "meanings-fr", "meanings-it",
    ];

    /// <summary>The lists that stand once for all languages, so that none lacks what another knows: the words of each under the
    /// language's own key.</summary>
    public static ImmutableArray<string> SharedLists { get; } = ["illnesses", "doings", "comparisons"];

    // What everyday words of the trade are known by: the names of products, and what claims are made of.
    private static readonly Lazy<string[]> Phrases = new(() =>
        [.. Under(Files, ["words", "nouns", "phrases"]), .. Under(SharedLists, ["en", "de", "es", "fr", "it"])]);

    private static IEnumerable<string> Under(IEnumerable<string> files, string[] keys) =>
        files.SelectMany(f => YamlRecord.Embedded($"markets/Words/{f}.yaml"))
            .SelectMany(r => keys.Where(r.Has).SelectMany(k => r.Texts(k, "[soap]")));

    private static readonly Lazy<HashSet<string>> Trade = new(() => [.. Phrases.Value.SelectMany(Words)]);

    // Words that may go on: "eczem*".
    private static readonly Lazy<HashSet<string>> Stems = new(() =>
        [.. Phrases.Value.SelectMany(p => p.Split(' ', '-')).Where(w => w.EndsWith('*') && w.Length > ShortestStem)
            .Select(w => FoldedText.Of(w.TrimEnd('*')))]);

    private const int ShortestStem = 4;

    /// <summary>The words of a text, folded: letters alone, two and more.</summary>
    public static IEnumerable<string> Words(string text)
    {
        var folded = FoldedText.Of(text);
        return WordsAt(folded).Where(w => w.Length > 1).Select(w => folded[w.Start..w.End]);
    }

    /// <summary>Where the words of a text stand: letters alone.</summary>
    internal static IEnumerable<TextSpan> WordsAt(string text) => Runs(text, at => char.IsLetter(text[at]));

    /// <summary>Where the sentences of a line stand, without what ends them.</summary>
    public static IEnumerable<TextSpan> SentencesAt(string line) => Runs(line, at => !EndsSentence(line, at));

    /// <summary>Whether a sentence ends with a character of a text.</summary>
    public static bool EndsSentence(string text, int at) => text[at] switch
    {
        '!' or '?' or '•' or '|' or ';' or '·' => true,
        '.' => at + 1 >= text.Length || char.IsWhiteSpace(text[at + 1]),
        _ => false,
    };

    private static IEnumerable<TextSpan> Runs(string text, Func<int, bool> belongs)
    {
        for (var i = 0; i < text.Length;)
        {
            var start = i;
            while (i < text.Length && belongs(i))
                i++;
            if (i > start)
                yield return new(start, i - start);
            else
                i++;
        }
    }

    /// <summary>The language of most of the words, by ISO 639-1, and the share of words that are known in it, 0 to 1.</summary>
    /// <param name="text">The words.</param>
    /// <returns>Null where no word is known in any.</returns>
    public static (string Language, double Share)? Find(string text)
    {
        var words = Words(text).ToArray();
        var best = Held.Value.Select(l => (l.Language, Count: words.Count(w => l.Words.Contains(w)))).OrderByDescending(l => l.Count)
            .FirstOrDefault();
        // One word of five may be anything.
        return words.Length == 0 || best.Count < (words.Length < FewWords ? 1 : 2)
            ? null
            : (best.Language, (double)best.Count / words.Length);
    }

    /// <summary>Whether at least half of the words of a text are English words.</summary>
    public static bool IsMostlyEnglish(string text) =>
        Words(text).ToArray() is var words && words.Count(KnownWords.IsEnglish) * 2 >= words.Length;

    /// <summary>Whether a folded word names a product in any language, or is one that claims are made of.</summary>
    public static bool IsOfTrade(string word) =>
        Trade.Value.Contains(word)
            || Enumerable.Range(ShortestStem, Math.Max(0, word.Length - ShortestStem + 1)).Any(n => Stems.Value.Contains(word[..n]));

    /// <summary>Whether a folded word stands in any text of some language.</summary>
    public static bool IsCommon(string word) => Held.Value.Any(l => l.Words.Contains(word));

    private static ImmutableArray<(string Language, HashSet<string> Words)> Load()
    {
        var parts = LabelWords.Languages
            .ToDictionary(l => l, l => Enum.GetValues<LabelWord>().SelectMany(w => LabelWords.Of(w, l)).SelectMany(Words).ToHashSet());
        return
        [
            .. YamlRecord.Embedded("markets/Words/common-words.yaml")
                .Select(r => (Language: r.Text("language", "en"), Words: r.Texts("words", "[the, and]").SelectMany(Words).ToHashSet()))
                .Select(l => (l.Language, (HashSet<string>)[.. l.Words, .. parts.GetValueOrDefault(l.Language) ?? []])),
        ];
    }
}
