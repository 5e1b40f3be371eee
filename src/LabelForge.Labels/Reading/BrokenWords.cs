namespace LabelForge.Checks.Reading;

/// <summary>
/// Words that a hyphen breaks at the end of a line are made whole, so that they are read as what they say: "abspü-" over "len". The
/// end of the line moves behind them; every other place of the text keeps its index.
/// </summary>
internal static partial class BrokenWords
{
    /// <summary>The text with its broken words whole.</summary>
    /// <param name="text">The text.</param>
    /// <param name="not">What is left as it is: lists of ingredients, whose names say themselves whether a hyphen belongs to them.</param>
    public static LabelText Joined(LabelText text, IEnumerable<TextSpan> not)
    {
        var breaks = Break().Matches(text.Text).Where(m => !not.Any(n => n.Overlaps(new TextSpan(m.Index, m.Length)))).ToArray();
        if (breaks.Length == 0)
            return text;
        var whole = new StringBuilder(text.Text);
        foreach (var at in breaks)
        {
            var (first, rest) = (at.Groups["first"].Value.TrimEnd(' ', '\n', '-'), at.Groups["rest"].Value);
            // "Fragrance-" over "free" keeps its hyphen: together the two are no word.
            var hyphen = KnownWords.IsWord(first + at.Groups["letters"].Value, text.Text[..at.Index]) ? "" : "-";
            var joined = first + hyphen + rest;
            whole.Remove(at.Index, at.Length).Insert(at.Index, joined + new string(' ', at.Length - joined.Length - 1) + "\n");
        }
        return text with { Text = whole.ToString() };
    }

    // Small letters go on after small ones, capitals after capitals.
    [GeneratedRegex(@"(?<![\p{L}0-9])(?<first>\p{L}*(?:\p{Ll}-[ ]?\n[ ]*(?=\p{Ll})|\p{Lu}-[ ]?\n[ ]*(?=\p{Lu}{2})))(?<rest>(?<letters>\p{L}+)[^\s]*)")]
    private static partial Regex Break();
}
