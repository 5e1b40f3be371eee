using LabelForge.Checks.Reading;

namespace LabelForge.Checks.Words;

/// <summary>
/// Finds that a label denies an ingredient: "no parabens", "paraben free", "free of parabens, dyes and sulfates", "sans
/// parfum ni colorant", "parabenfrei". How a language denies and joins stands in its grammar; of those that have none, what denies.
/// </summary>
internal static class DenialPattern
{
    // A list's other members stand between: "no parabens, sulfates or added dyes"; each a word or two.
    private static readonly string Leads = string.Join('|', SentenceGrammar.All.Select(g =>
    {
        var (lacks, added, and) = (Any(g.Lacks), Any(g.Added), Any(g.And));
        var gap = $@"(?:[\s-]+|(?<='))(?:{added}(?:[\s-]+|(?<='))){{0,2}}";
        return $@"{lacks}{gap}(?:[\p{{L}}'-]+(?:\s[\p{{L}}'-]+)?(?:\s*,\s*(?:{and}{gap})?|\s+{and}{gap})){{0,6}}?(?:{added}(?:[\s-]+|(?<='))){{0,2}}";
    }).Append($@"{Any(OtherLanguageClaims.Lacks())}[\s-]+(?:[\p{{L}}-]+\s*,\s*){{0,6}}?"));

    private static readonly string After = Any([.. SentenceGrammar.All.SelectMany(g => g.Lacking)]);

    /// <summary>What parts the members of a list.</summary>
    public static Regex Joins { get; } =
        new(
        $@"\s*,\s*(?:{Any([.. SentenceGrammar.All.SelectMany(g => g.And)])}\s+)?|\s+{Any([.. SentenceGrammar.All.SelectMany(g => g.And)])}\s+",
        RegexOptions.IgnoreCase | RegexOptions.CultureInvariant, TimeSpan.FromSeconds(5));

    /// <summary>The words that deny what comes after them, up to it.</summary>
    public static string Lead => $"(?:{Leads})";

    /// <summary>The words that deny what stands before them: "-free".</summary>
    public static string Tail => $@"[\s-]*(?<=[\s-]|(?=frei|vrij)){After}";

    /// <summary>The pattern for these nouns and phrases, in a text without accents.</summary>
    public static Regex For(IReadOnlyList<string> nouns, IReadOnlyList<string> phrases)
    {
        var parts = phrases.Select(p => PhrasePattern.Body(FoldedText.KeepingCase(p))).ToList();
        if (nouns.Count > 0)
        {
            var any = Any(nouns);
            parts.Add(Lead + any);
            parts.Add(any + Tail);
        }
        return new($@"(?<![\p{{L}}0-9])(?:{string.Join('|', parts)})(?![\p{{L}}0-9])",
            RegexOptions.IgnoreCase | RegexOptions.CultureInvariant, TimeSpan.FromSeconds(5));
    }

    // Made for the label that has such a word at all.
    private static readonly Lazy<Regex> Led = new(() => new(
        $@"(?<![\p{{L}}0-9]){Lead}$", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant, TimeSpan.FromSeconds(5)));

    private static readonly Lazy<Regex> Tailed = new(() => new(
        $@"^[\s-]*{After}(?![\p{{L}}0-9])", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant, TimeSpan.FromSeconds(5)));

    /// <summary>Whether the words beside some, in their sentence, say that it is not in there: "no propellant", "SLS free".</summary>
    public static bool Lacks(ClaimPlace place) => Led.Value.IsMatch(place.Before) || Tailed.Value.IsMatch(place.After);

    private static string Any(IEnumerable<string> words) =>
        $"(?:{string.Join('|', words.OrderByDescending(n => n.Length).Select(w => PhrasePattern.Body(FoldedText.KeepingCase(w))))})";
}
