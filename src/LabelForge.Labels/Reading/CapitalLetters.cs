namespace LabelForge.Checks.Reading;

/// <summary>Gives a label that is set in small letters alone the capitals by which names and places are told.</summary>
internal static partial class CapitalLetters
{
    // A capital in a lot code or a unit is no name.
    private const double Few = 0.01;

    /// <summary>The text with capitals where it has hardly any, or where a line with an address
    /// has none, each letter where it stood; else as it is.</summary>
    public static string Given(string text) => text.Count(char.IsUpper) > Few * text.Count(char.IsLetter)
        ? string.Join('\n', text.Split('\n').Select(l => l.Any(char.IsUpper) || !State().IsMatch(l) ? l : Titled(l)))
        : Titled(text);

    private static string Titled(string text) =>
        State().Replace(FirstLetter().Replace(text, m => m.Value.ToUpperInvariant()), m => m.Value.ToUpperInvariant());

    [GeneratedRegex(@"(?<![\p{L}0-9.@/'’])\p{Ll}(?=\p{L})(?![\p{L}]*[.@]\p{L})")]
    private static partial Regex FirstLetter();

    [GeneratedRegex(@"(?<=[, ])\p{L}{2}(?=\s+[0-9]{5}\b)")]
    private static partial Regex State();
}
