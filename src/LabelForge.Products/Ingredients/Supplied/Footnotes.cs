namespace LabelForge.Ingredients.Supplied;

/// <summary>The footnotes of a paper: what each mark means, and the text without them.</summary>
internal sealed partial record Footnotes(string Text, ImmutableArray<(string Sign, string Meaning)> Notes)
{
    /// <summary>Takes the footnotes out of the text.</summary>
    /// <param name="text">The paper's text.</param>
    /// <param name="names">Whether a piece of text is a known name: a mark may stand before a name too.</param>
    public static Footnotes Of(string text, Func<string, bool> names)
    {
        var notes = new List<(string Sign, string Meaning)>();
        text = Bracketed().Replace(text, m =>
        {
            notes.Add((m.Groups["sign"].Value, Meaning(m.Groups["text"].Value)));
            return " ";
        });
        // Two lines that begin with the same single star are a list with stars for bullets.
        if (StarLine().Count(text) > 1 && !SignAfterName().IsMatch(text))
            text = StarLine().Replace(text, $"\n{PaperText.Parting}");
        var kept = new System.Text.StringBuilder();
        var from = 0;
        foreach (Match start in Start().Matches(text))
        {
            if (start.Index < from)
                continue;
            var end = End(text, start.Index + start.Length, names);
            if (end < 0)
                continue;
            kept.Append(text, from, start.Index - from).Append(PaperText.NoteWas);
            notes.Add((start.Groups["sign"].Value, Meaning(text[(start.Index + start.Length)..end])));
            from = end;
        }
        kept.Append(text, from, text.Length - from);
        return new Footnotes(kept.ToString(), [.. notes]);
    }

    /// <summary>Whether the mark says organic.</summary>
    public bool IsOrganic(string sign) => Notes.Any(n => n.Sign == sign && Organic().IsMatch(n.Meaning));

    /// <summary>Whether any footnote explains the mark.</summary>
    public bool Explains(string sign) => Notes.Any(n => n.Sign == sign);

    /// <summary>A word that says organic.</summary>
    [GeneratedRegex(@"\b(organic(ally)?|biologi\w*|bio|kba)\b", RegexOptions.IgnoreCase)]
    public static partial Regex Organic();

    // Where the footnote ends: at its sentence's or line's end, at the next mark, or before a comma with a known name after it;
    // -1 where it is no footnote but a mark before a name.
    private static int End(string text, int from, Func<string, bool> names)
    {
        var end = text.IndexOfAny(['\n', '*', '\u2020', '\u2021', PaperText.Parting, PaperText.NoteWas], from);
        end = end < 0 ? text.Length : end;
        // The next sentence is none of the footnote's: it may say what the material may contain.
        if (Sentence().Match(text, from, end - from) is { Success: true } stop)
            end = stop.Index;
        var at = from;
        while (at < end)
        {
            var next = text.IndexOfAny([',', ';'], at, end - at);
            next = next < 0 ? end : next;
            if (names(text[at..next].Trim().TrimEnd('.')))
                return at == from ? -1 : at - 1;
            at = next + 1;
        }
        return end;
    }

    private static string Meaning(string text) => text.Trim(' ', '\t', '=', ':', '-', '.', ',');

    [GeneratedRegex(@"[(\[]\s*(?<sign>\*+|\u2020+|\u2021+)\s*[=:]?\s*(?<text>[^()\[\]*\u2020\u2021\n]+)[)\]]")]
    private static partial Regex Bracketed();

    [GeneratedRegex(@"\.(?=\s)|\s(?=\+/?-)", RegexOptions.IgnoreCase)]
    private static partial Regex Sentence();

    [GeneratedRegex(@"(?:^|\n)[ \t]*\*[ \t]+")]
    private static partial Regex StarLine();

    [GeneratedRegex(@"[\p{L})\]]\*")]
    private static partial Regex SignAfterName();

    [GeneratedRegex(@"(?:^|\n|(?<=[.;,)\]]\s)|(?<=\s)(?=[*\u2020\u2021]+\s*=))[ \t]*(?<sign>\*+|\u2020+|\u2021+)[ \t]*[=:]?")]
    private static partial Regex Start();
}
