namespace LabelForge.Ingredients.Supplied;

/// <summary>A paper's text with one kind of space, hyphen and line end.</summary>
internal static partial class PaperText
{
    /// <summary>Stands between names where the paper surely parts them: at bullets.</summary>
    public const char Parting = '\u001F';

    /// <summary>Stands where a footnote was taken out: what follows may be a name, or a sentence that is none.</summary>
    public const char NoteWas = '\u001E';

    /// <summary>Stands where a word was broken at a line's end: it may be one word, or two with a hyphen.</summary>
    public const char Broken = '\u00AD';

    /// <summary>The text made plain; line ends are kept.</summary>
    public static string Of(string text)
    {
        var plain = new StringBuilder(text.Length);
        foreach (var c in text.ReplaceLineEndings("\n").Replace($"{Broken}\n", "-\n"))
            plain.Append(Plain(c));
        var lines = BrokenWord().Replace(plain.ToString(), Broken.ToString());
        lines = BrokenNumber().Replace(lines, "-");
        return Numbered().Replace(Bullet().Replace(lines.Replace("±", "+/-"), $"\n{Parting}"), $"\n{Parting}");
    }

    /// <summary>Words broken at line ends made whole: in the way that gives a known name, else as one word.</summary>
    public static string Whole(string name, Func<string, bool> knows)
    {
        if (!name.Contains(Broken))
            return name;
        var joined = name.Replace(Broken.ToString(), "");
        var hyphened = name.Replace(Broken, '-');
        return !knows(joined) && knows(hyphened) ? hyphened : joined;
    }

    private static string Plain(char c) => c switch
    {
        '\n' or '\t' => c.ToString(),
        '\u2010' or '\u2011' or '\u2012' or '\u2013' or '\u2014' or '\u2212' => "-",
        '\u2018' or '\u2019' or '\u2032' => "'",
        '\u2022' or '\u25CF' or '\u25E6' or '\u25AA' or '\u25A0' or '\u2023' => "\u2022",
        '\u2264' => "<=",
        '\u2265' => ">=",
        '\uFF0C' or '\u3001' => ",",
        // Marks of reading direction, joiners and inner soft hyphens print nothing.
        Broken or '\u200B' or '\u200C' or '\u200D' or '\u200E' or '\u200F' or '\uFEFF' => "",
        _ when char.IsWhiteSpace(c) || char.IsControl(c) => " ",
        _ => c.ToString(),
    };

    [GeneratedRegex(@"(?<=\p{L})-[ \t]*\n[ \t]*(?=\p{L})")]
    private static partial Regex BrokenWord();

    [GeneratedRegex(@"(?<=[\p{L}0-9])-[ \t]*\n[ \t]*(?=[\p{L}0-9])")]
    private static partial Regex BrokenNumber();

    // A hyphen with a figure after it is a range that was broken, not a bullet.
    [GeneratedRegex(@"(?:^|\n|(?<=\s))[ \t]*\u2022[ \t]*|(?:^|\n)[ \t]*-[ \t]+(?![0-9])")]
    private static partial Regex Bullet();

    [GeneratedRegex(@"(?:^|\n)[ \t]*[0-9]{1,3}[.)][ \t]+(?=\S)")]
    private static partial Regex Numbered();
}
