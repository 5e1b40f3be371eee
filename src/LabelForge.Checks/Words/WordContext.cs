using System.Text.RegularExpressions;

namespace LabelForge.Checks.Words;

/// <summary>Judges words by their sentence: denied ("does not treat"), or part of a warning ("if a rash occurs").</summary>
public static partial class WordContext
{
    /// <summary>The sentence around a place in the text. A line that starts anew with a capital ends one too.</summary>
    public static string SentenceAt(string text, int start, int length, out int offset)
    {
        var from = start;
        while (from > 0 && !Ends(text, from - 1))
            from--;
        var to = start + length;
        while (to < text.Length && !Ends(text, to))
            to++;
        offset = start - from;
        return text[from..to];
    }

    /// <summary>Whether a claim is denied, or stands in a warning and so claims nothing.</summary>
    public static bool ClaimsNothing(string sentence, int offset, int length)
    {
        if (Warning().IsMatch(sentence))
            return true;
        var before = sentence[..offset];
        if (Negation().Matches(before).LastOrDefault() is not { } not)
            return false;
        var between = before[(not.Index + not.Length)..];
        // "Not tested on animals, treats acne": after a comma a verb in -s starts anew; "diagnose, treat, or cure" does not.
        var word = sentence.Substring(offset, length);
        return !Turn().IsMatch(between) && !(between.Contains(',') && (StartsAnew().IsMatch(word) || StartsAnew().IsMatch(between[(between.LastIndexOf(',') + 1)..].Trim())));
    }

    private static bool Ends(string text, int at) => text[at] switch
    {
        '!' or '?' or '•' or '|' or ';' or '·' => true,
        '.' => at + 1 >= text.Length || char.IsWhiteSpace(text[at + 1]),
        '\n' => NextIsCapital(text, at + 1),
        _ => false,
    };

    private static bool NextIsCapital(string text, int at)
    {
        while (at < text.Length && text[at] == ' ')
            at++;
        return at >= text.Length || !char.IsLower(text[at]);
    }

    [GeneratedRegex(@"^\W*(?:if|do not|don['’]t|avoid|discontinue|stop using|stop use|consult|see a doctor|warnings?|cautions?|not recommended|not suitable|keep out|for external use|seek)\b|\b(?:consult (?:a|your|with)|ask (?:a|your) (?:doctor|physician)|discontinue (?:use|immediately)|stop use|may cause|may irritate|if (?:you have|rash|irritation|redness|itching|a rash)|on broken|broken or irritated|may increase|sunburn alert|before use if|allergic reactions?|is not intended|are not intended|not been evaluated)\b", RegexOptions.IgnoreCase)]
    private static partial Regex Warning();

    [GeneratedRegex(@"\b(?:not(?!\s+(?:only|just|merely))|never|cannot|nor|neither|makes? no claims?)\b|n['’]t\b", RegexOptions.IgnoreCase)]
    private static partial Regex Negation();

    [GeneratedRegex(@"\b(?:but|however|yet|instead)\b|\s[–—-]\s", RegexOptions.IgnoreCase)]
    private static partial Regex Turn();

    [GeneratedRegex(@"^(?:[\p{L}]+(?:s|ing)\b|great|good|perfect|ideal|for\b|it\b)", RegexOptions.IgnoreCase)]
    private static partial Regex StartsAnew();
}
