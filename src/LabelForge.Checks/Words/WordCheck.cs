using System.Text.RegularExpressions;

namespace LabelForge.Checks.Words;

/// <summary>Finds what words claim and deny.</summary>
public static partial class WordCheck
{
    /// <summary>Whether the words claim anything of this weight.</summary>
    public static bool Claims(string text, Makes makes) => WordLists.Claims.Where(c => c.Makes == makes).Any(c => Hits(text, c).Any());

    /// <summary>The words of a text that make a claim, where they claim it and do not deny it or warn.</summary>
    public static IEnumerable<string> Hits(string text, ClaimWords claim)
    {
        foreach (Match match in claim.Words.Matches(text))
        {
            var sentence = WordContext.SentenceAt(text, match.Index, match.Length, out var offset);
            if (claim.Unless?.IsMatch(sentence) != true && !WordContext.ClaimsNothing(sentence, offset, match.Length))
                yield return Plain(match.Value);
        }
    }

    /// <summary>The words of a text by which it denies something; null where it does not.</summary>
    public static string? Denial(string text, DenialWords denial) =>
        denial.Words.Matches(text).FirstOrDefault(m => !IsNot(text, m.Index)) is { } match ? Plain(match.Value) : null;

    // "Not vegan" denies nothing.
    private static bool IsNot(string text, int at) => NotBefore().IsMatch(text[Math.Max(0, at - 12)..at]);

    private static string Plain(string words) => Spaces().Replace(words, " ").Trim();

    [GeneratedRegex(@"\b(?:not|isn['’]t|non)[\s-]+(?:a\s+)?$", RegexOptions.IgnoreCase)]
    private static partial Regex NotBefore();

    [GeneratedRegex(@"\s+")]
    private static partial Regex Spaces();
}
