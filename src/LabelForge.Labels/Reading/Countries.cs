namespace LabelForge.Checks.Reading;

/// <summary>Countries as labels name them, in every official language of the European Union, to
/// two letters (ISO 3166-1 alpha-2).</summary>
public static partial class Countries
{
    // "United States of America" has four words, "l-Istati Uniti" fewer.
    private const int MostWords = 5;

    /// <summary>A country's English name for a sentence; the letters where it is not known.</summary>
    public static string Name(string code) => code switch
    {
        "US" => "the USA",
        "GB" => "the United Kingdom",
        "NL" => "the Netherlands",
        _ => Country.All.FirstOrDefault(c => c.Code == code)?.Name ?? code,
    };

    /// <summary>The two letters of a country, or null.</summary>
    public static string? Code(string name) => Country.OnLabel(name)?.Code;

    /// <summary>The first country named in a text that begins within so many words; null where none is.</summary>
    /// <param name="text">The text.</param>
    /// <param name="within">How many words from its start are tried as the first of the name.</param>
    public static (string Code, int Start, int Length)? FirstIn(string text, int within)
    {
        var words = Word().Matches(text);
        for (var i = 0; i < Math.Min(words.Count, within); i++)
        {
            for (var last = Math.Min(words.Count - 1, i + MostWords - 1); last >= i; last--)
            {
                var start = words[i].Index;
                var length = words[last].Index + words[last].Length - start;
                // Names are written with capitals: "in den Niederlanden" is, "malta" is no country.
                if (char.IsUpper(text[start])
                    && !text.AsSpan(start, length).ContainsAny('\n', ',')
                    && Code(text.Substring(start, length)) is { } code)
                    return (code, start, length);
            }
        }
        return null;
    }

    /// <summary>The first word of a text where it is a country's name in another case, as "v Kanadě" of Kanada; null where it is
    /// none. Many languages bend names after "made in".</summary>
    public static string? BentIn(string text)
    {
        if (Word().Match(text) is not { Success: true } word || !char.IsUpper(word.Value[0]))
            return null;
        var folded = FoldedText.Of(word.Value.TrimEnd('.'));
        return Enumerable.Range(1, MostBent).Where(n => folded.Length - n >= ShortestStem)
            .Any(n => Country.AnyOnLabelBeginsWith(folded[..^n], folded.Length + 1))
            ? word.Value
            : null;
    }

    // So many letters at the end of a name change with its case, and so many before them stay.
    private const int MostBent = 3;
    private const int ShortestStem = 4;

    [GeneratedRegex(@"[\p{L}][\p{L}.'’]*")]
    private static partial Regex Word();
}
