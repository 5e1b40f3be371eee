using System.Text.RegularExpressions;

namespace LabelForge.Checks.Words;

/// <summary>Finds that a label denies something: "no parabens", "paraben free", "free of parabens, dyes and sulfates".</summary>
internal static class DenialPattern
{
    // A list's other members stand between: "no parabens, sulfates or added dyes".
    private const string Before = @"(?:no|without(?:\s+any)?|zero|0\s?%|never\s+any|(?:is\s+)?free\s+(?:of|from)(?:\s+all)?|contains?\s+no|made\s+without|(?:does\s+not|doesn['’]t)\s+contain(?:\s+any)?)\s+(?:(?:added|harsh|harmful|nasty|any)\s+)?"
        + @"(?:[\p{L}-]+(?:\s[\p{L}-]+)?(?:\s*,\s*(?:or|and|no)?\s*|\s+(?:or|and|&)\s+)){0,6}?(?:(?:added|harsh|any|no)\s+)?";

    /// <summary>The pattern for these nouns and phrases.</summary>
    public static Regex For(IReadOnlyList<string> nouns, IReadOnlyList<string> phrases)
    {
        var parts = phrases.Select(PhrasePattern.Body).ToList();
        if (nouns.Count > 0)
        {
            var any = $"(?:{string.Join('|', nouns.OrderByDescending(n => n.Length).Select(PhrasePattern.Body))})";
            parts.Add(Before + any);
            parts.Add(any + @"[\s-]+free");
        }
        return new($@"(?<![\p{{L}}\d])(?:{string.Join('|', parts)})(?![\p{{L}}\d])", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant, TimeSpan.FromSeconds(5));
    }
}
