namespace LabelForge.Checks.Words;

/// <summary>Tells whether what must stand in both official languages of Canada stands in French too.</summary>
public static class FrenchWords
{
    private static readonly Lazy<IReadOnlyDictionary<string, Regex>> Lists = new(Load);

    /// <summary>Whether words say in French what a product is, or say it the same in both languages.</summary>
    public static bool NamesProduct(string text) => Lists.Value["identity"].IsMatch(text);

    /// <summary>A text without the words that say in French what a product is.</summary>
    public static string WithoutProductNames(string text) => Lists.Value["identity"].Replace(text, " ");

    /// <summary>Whether a name is the same in English and French.</summary>
    public static bool IsSameInBoth(string name) =>
        Lists.Value["both"].Match(name.Trim()) is { Success: true } match && match.Length == name.Trim().Length;

    /// <summary>The first English warning, or null where there is none or a French one stands on the label too.</summary>
    public static string? EnglishWarningAlone(string text) =>
        Lists.Value["warning-en"].Match(text) is { Success: true } english && !Lists.Value["warning-fr"].IsMatch(text)
            ? english.Value
            : null;

    private static Dictionary<string, Regex> Load()
    {
        const string name = "markets/Words/french.yaml";
        return YamlRecord.Embedded(name).ToDictionary(r => r.Text("id", "identity"), r => PhrasePattern.Any(r.Texts("words", "[savon]")));
    }
}
