namespace LabelForge.Checks.Words;

/// <summary>Tells whether what must stand in both official languages of Canada stands in French too.</summary>
public static class FrenchWords
{
    private static readonly Lazy<IReadOnlyDictionary<string, Regex>> Lists = new(Load);

    private static readonly Lazy<ImmutableArray<(Regex En, Regex AnyEn, Regex Fr, Regex AnyFr)>> Warnings = new(LoadWarnings);

    /// <summary>Whether words say in French what a product is, or say it the same in both languages.</summary>
    public static bool NamesProduct(string text) => Lists.Value["identity"].IsMatch(text);

    /// <summary>A text without the words that say in French what a product is.</summary>
    public static string WithoutProductNames(string text) => Lists.Value["identity"].Replace(text, " ");

    /// <summary>Whether a name is the same in English and French.</summary>
    public static bool IsSameInBoth(string name) =>
        Lists.Value["in-both"].IsMatch(name)
            || Lists.Value["both"].Match(name.Trim()) is { Success: true } match && match.Length == name.Trim().Length;

    /// <summary>The first warning that stands in one of the two languages, and not in the other; null where none does.</summary>
    public static string? WarningAlone(string text) =>
        Warnings.Value.Select(w => Alone(text, w.En, w.AnyFr) ?? Alone(text, w.Fr, w.AnyEn)).FirstOrDefault(w => w is not null);

    private static string? Alone(string text, Regex words, Regex other) =>
        words.Match(text) is { Success: true } said && !other.IsMatch(text) ? said.Value : null;

    private static Dictionary<string, Regex> Load() => Records().Where(r => r.Has("words"))
        .ToDictionary(r => r.Text("id", "identity"), r => PhrasePattern.Any(r.Texts("words", "[savon]")));

    private static ImmutableArray<(Regex En, Regex AnyEn, Regex Fr, Regex AnyFr)> LoadWarnings() =>
        [.. Records().Where(r => r.Has("en")).Select(r => (Any(r, "en"), Any(r, "any-en"), Any(r, "fr"), Any(r, "any-fr")))];

    private static Regex Any(YamlRecord record, string key) => PhrasePattern.Any(record.Texts(key, "[avoid eyes]"));

    private static IEnumerable<YamlRecord> Records() => YamlRecord.Embedded("markets/Words/french.yaml");
}
