namespace LabelForge.Markets;

/// <summary>Standard phrases of labels by language, from Markets/Phrases; the translations are the project's own.</summary>
public static class Phrases
{
    private static readonly Lazy<ImmutableDictionary<string, ImmutableDictionary<string, string>>> Loaded = new(Load);

    /// <summary>The languages, by ISO 639-1: the official ones of the European Union.</summary>
    public static IReadOnlyList<string> Languages { get; } = [
        "en", "fr", "de", "es", "it", "nl", "pl",
        "bg", "cs", "da", "el", "et", "fi", "ga", "hr", "hu", "lt", "lv", "mt", "pt", "ro", "sk", "sl", "sv",
    ];

    /// <summary>The names of the phrases.</summary>
    public static IEnumerable<string> Names => Loaded.Value.Keys.Order(StringComparer.Ordinal);

    /// <summary>A phrase in a language, or null where there is none of that name.</summary>
    public static string? Find(string name, string language) =>
        Loaded.Value.TryGetValue(name, out var phrase) ? phrase[language] : null;

    private static ImmutableDictionary<string, ImmutableDictionary<string, string>> Load()
    {
        const string file = "markets/Phrases/standard.yaml";
        return YamlRecord.Embedded(file).ToImmutableDictionary(
            r => r.Text("id", "a name, such as external-only"),
            r =>
            {
                r.OnlyKeys(["id", .. Languages]);
                return Languages.ToImmutableDictionary(l => l, l => r.Text(l, "the phrase in this language"));
            });
    }
}
