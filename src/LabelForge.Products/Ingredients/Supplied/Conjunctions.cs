namespace LabelForge.Ingredients.Supplied;

/// <summary>Splits at <c>and</c>, <c>(and)</c>, <c>&amp;</c> and <c>/</c>, where what stands on
/// the sides are names of their own.</summary>
internal static partial class Conjunctions
{
    /// <summary>The names of a piece, in order; the piece itself where it is one name or where nothing is certain.</summary>
    public static IEnumerable<string> Split(string piece, Func<string, bool> known)
    {
        var text = Leading().Replace(piece, "");
        // The sign for a blend of names is never part of one.
        var blend = BlendSign().Split(text);
        if (blend.Length > 1)
            return blend.SelectMany(b => Split(b, known));
        if (known(text))
            return [text];
        if (Colours(text, known) is { } colours)
            return colours;
        var words = At(text, And().Matches(text));
        // One known side is enough: no name ends in "and Glycerin". Without one, "Black and White Clay" stays whole.
        if (words.Length > 1 && words.Any(known))
            return words;
        var parts = At(text, Slash().Matches(text));
        return parts.Length > 1 && parts.All(known) ? parts : [text];
    }

    /// <summary>Whether the sign of a blend stands in it.</summary>
    public static bool IsBlend(string piece) => BlendSign().IsMatch(piece);

    // Iron Oxides (CI 77491, CI 77492, CI 77499): a common name over several numbers, each a colourant of its own.
    private static string[]? Colours(string text, Func<string, bool> known)
    {
        var match = Numbers().Match(text.Trim());
        if (!match.Success || !known(match.Groups["name"].Value.Trim()))
            return null;
        string[] numbers = [.. match.Groups["number"].Captures.Select(c => $"CI {c.Value}")];
        return numbers.All(known) ? numbers : null;
    }

    private static string[] At(string text, MatchCollection matches)
    {
        var inside = Brackets.Inside(text);
        var parts = new List<string>();
        var from = 0;
        foreach (Match match in matches)
        {
            if (inside[match.Index + match.Length / 2])
                continue;
            parts.Add(text[from..match.Index]);
            from = match.Index + match.Length;
        }
        parts.Add(text[from..]);
        return [.. parts];
    }

    [GeneratedRegex(@"^\s*(?:and|&)\s+(?=\S)", RegexOptions.IgnoreCase)]
    private static partial Regex Leading();

    [GeneratedRegex(@"\s*\(\s*(?:and|&)\s*\)\s*", RegexOptions.IgnoreCase)]
    private static partial Regex BlendSign();

    [GeneratedRegex(@"\s+(?:and|&)\s+", RegexOptions.IgnoreCase)]
    private static partial Regex And();

    [GeneratedRegex(@"\s*/\s*")]
    private static partial Regex Slash();

    [GeneratedRegex(@"^(?<name>[^()\[\]]+?)\s*[(\[]\s*C\.?\s?I\.?\s*(?<number>[0-9]{5})(?:\s*(?:,|/|;|\band\b|&)\s*(?:C\.?\s?I\.?\s*)?(?<number>[0-9]{5}))+\s*[)\]]$", RegexOptions.IgnoreCase)]
    private static partial Regex Numbers();
}
