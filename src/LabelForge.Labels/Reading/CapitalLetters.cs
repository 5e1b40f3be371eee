namespace LabelForge.Checks.Reading;

/// <summary>Gives a label that is set in small letters alone, or in capitals alone, the letters by which names and places are
/// told.</summary>
internal static partial class CapitalLetters
{
    // A capital in a lot code or a unit is no name.
    private const double Few = 0.01;

    // Symbols of units and addresses of the network are small on a label in capitals.
    private const double Most = 0.75;

    /// <summary>The text with capitals where it has hardly any, or where a line with an address
    /// has none, each letter where it stood; else as it is.</summary>
    public static string Given(string text) => AreAll(text) ? Lowered(text)
        : text.Count(char.IsUpper) > Few * text.Count(char.IsLetter)
        ? string.Join('\n', text.Split('\n').Select(l => l.Any(char.IsUpper) || !State().IsMatch(l) ? l : Titled(l)))
        : Titled(text);

    /// <summary>Whether a text is set in capitals, so that they tell no names.</summary>
    public static bool AreAll(string text) => text.Count(char.IsUpper) > Most * text.Count(char.IsLetter);

    // Words of two letters are states and parts of codes more often than not; of the small words of sentences few are in names.
    private static string Lowered(string text) => Capitals().Replace(text, m => m.Value switch
    {
        "GMBH" => "GmbH",
        "GBR" => "GbR",
        "LLC" or "LLP" or "SARL" or "SAS" or "SASU" or "EURL" or "SNC" or "SRL" or "UAB" or "SIA" or "OHG" or "USA" => m.Value,
        "AND" or "OF" or "THE" or "WITH" or "FOR" or "FROM" or "IT" or "IS" or "ARE" or "THIS" or "THAT" or "YOU" or "YOUR" or "NOT"
            or "WHEN" or "ABOUT" or "AFTER" or "UNTIL" => m.Value.ToLowerInvariant(),
        var word => word[0] + word[1..].ToLowerInvariant(),
    });

    private static string Titled(string text) =>
        State().Replace(FirstLetter().Replace(text, m => m.Value.ToUpperInvariant()), m => m.Value.ToUpperInvariant());

    [GeneratedRegex(@"(?<![\p{L}0-9.@/'’])\p{Ll}(?=\p{L})(?![\p{L}]*[.@]\p{L})")]
    private static partial Regex FirstLetter();

    [GeneratedRegex(@"(?<![\p{L}0-9.@])(?:\p{Lu}{3,}|OF|BY|AT|DU|LE|DI|IT|IS)(?![\p{L}0-9])")]
    private static partial Regex Capitals();

    [GeneratedRegex(@"(?<=[, ])\p{L}{2}(?=\s+[0-9]{5}\b)")]
    private static partial Regex State();
}
