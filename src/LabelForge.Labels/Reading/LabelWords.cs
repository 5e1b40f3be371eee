using System.Collections.Concurrent;

namespace LabelForge.Checks.Reading;

/// <summary>What the words of a label announce.</summary>
public enum LabelWord
{
    /// <summary>The list of ingredients.</summary>
    Ingredients,

    /// <summary>What only some shades hold.</summary>
    MayContain,

    /// <summary>The lot.</summary>
    Lot,

    /// <summary>The date of minimum durability.</summary>
    BestBefore,

    /// <summary>Opening the package, beside a number of months.</summary>
    Opening,

    /// <summary>Months.</summary>
    Months,

    /// <summary>Who made it, sells it or answers for it.</summary>
    Responsible,

    /// <summary>The country of origin.</summary>
    MadeIn,

    /// <summary>Directions for use.</summary>
    Directions,

    /// <summary>Warnings and storage.</summary>
    Warnings,

    /// <summary>The net quantity.</summary>
    Net,

    /// <summary>A line of another kind.</summary>
    Other,

    /// <summary>Makers, who speak of themselves.</summary>
    Maker,
}

/// <summary>The words by which the parts of a label are told apart, in every official language of the European Union.</summary>
public static class LabelWords
{
    private static readonly TimeSpan Limit = TimeSpan.FromSeconds(5);
    private static readonly Lazy<ImmutableArray<YamlRecord>> Records =
        new(() => [.. YamlRecord.Embedded("markets/Words/label-words.yaml")]);
    private static readonly ConcurrentDictionary<LabelWord, Regex> Patterns = new();
    private static readonly ConcurrentDictionary<(LabelWord Word, string Language), Regex?> Own = new();

    /// <summary>The words of a kind in every language, as they stand in the data.</summary>
    public static IEnumerable<string> Of(LabelWord word) => Languages.SelectMany(l => Of(word, l));

    /// <summary>The languages that have words, by ISO 639-1.</summary>
    public static IEnumerable<string> Languages => Records.Value.Select(r => r.Text("language", "en"));

    /// <summary>The words of a kind in one language.</summary>
    public static IEnumerable<string> Of(LabelWord word, string language) =>
        Records.Value.Where(r => r.Text("language", "en") == language && r.Has(Key(word)))
            .SelectMany(r => r.Texts(Key(word), "[ingredients]"));

    /// <summary>Whether a text in a language has words of a kind in it.</summary>
    public static bool Has(LabelWord word, string language, string text) =>
        Own.GetOrAdd((word, language),
            w => Of(w.Word, w.Language).ToArray() is { Length: > 0 } words ? Whole(Alternatives(words)) : null)
            ?.IsMatch(FoldedText.Of(text)) == true;

    /// <summary>Finds words of a kind anywhere in folded text (<see cref="FoldedText"/>).</summary>
    public static Regex Pattern(LabelWord word) =>
        Patterns.GetOrAdd(word, w => Whole(Alternatives(w)));

    private static Regex Whole(string alternatives) =>
        new($@"(?<![\p{{L}}0-9])(?:{alternatives})(?![\p{{L}}])", RegexOptions.CultureInvariant, Limit);

    /// <summary>Whether words begin a part of a label in any language, as directions, warnings or a date do.</summary>
    public static bool BeginsPart(string words) => Begins.Value.IsMatch(BeginningOf(words));

    /// <summary>Whether words begin one of these parts in any language.</summary>
    public static bool BeginsAny(string words, IEnumerable<LabelWord> parts) =>
        BeginningOf(words) is var beginning
            && parts.Any(p => Pattern(p).Match(beginning) is { Success: true } at && !beginning[..at.Index].Any(char.IsLetterOrDigit));

    // What begins a part stands in its first words; signs without end before them begin nothing.
    private static string BeginningOf(string words) => FoldedText.Of(words.Length > LongestBeginning ? words[..LongestBeginning] : words);

    private const int LongestBeginning = 200;

    private static readonly Lazy<Regex> Begins = new(() => new Regex(
        $@"^\W*(?:(?:{string.Join('|', Records.Value.Select(r => r.Text("language", "en")))}|gb|uk|dk|cz|gr|se|si|ee|at|be|ie)[\s:/)-]+)*(?:{string.Join('|', Enum.GetValues<LabelWord>().Where(w => w is not (LabelWord.Opening or LabelWord.Months or LabelWord.Maker)).Select(Alternatives))})(?![\p{{L}}])", RegexOptions.CultureInvariant, Limit));

    /// <summary>The words of a kind as the alternatives of a pattern over folded text, the longest first.</summary>
    public static string Alternatives(LabelWord word) => Alternatives(Of(word));

    /// <summary>Phrases as the alternatives of a pattern over folded text, the longest first.</summary>
    public static string Alternatives(IEnumerable<string> phrases) =>
        string.Join('|',
            phrases.Select(FoldedText.Of).Distinct().OrderByDescending(p => p.Length).ThenBy(p => p, StringComparer.Ordinal).Select(Body));

    private static string Key(LabelWord word) => word switch
    {
        LabelWord.MayContain => "may-contain",
        LabelWord.BestBefore => "best-before",
        LabelWord.MadeIn => "made-in",
        _ => word.ToString().ToLowerInvariant(),
    };

    // A space may be a line's end or a hyphen; a full stop after a short form may be there or not.
    private static string Body(string phrase)
    {
        var body = new StringBuilder();
        for (var i = 0; i < phrase.Length; i++)
        {
            var afterDot = i > 0 && phrase[i - 1] == '.';
            body.Append(phrase[i] switch
            {
                ' ' => afterDot ? @"[\s-]*" : @"[\s-]+",
                '-' => afterDot ? @"[\s-]*" : @"[\s-]?",
                '.' => @"\.?",
                '*' => @"\p{L}*",
                var c => Regex.Escape(c.ToString()),
            });
        }
        return body.ToString();
    }
}
