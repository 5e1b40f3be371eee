namespace LabelForge.Ingredients.Supplied;

/// <summary>A paper's list, and what it says it may contain besides; without heading.</summary>
internal sealed partial record PaperParts(string List, string MayContain, ImmutableArray<string> LeftOut)
{
    /// <summary>Finds the parts. What stands before the heading is left out: a product's name, an address.</summary>
    public static PaperParts Of(string text, Func<string, bool> names)
    {
        var leftOut = ImmutableArray.CreateBuilder<string>();
        var heading = Heading().Match(text);
        if (heading.Success && !IsAList(text[..heading.Index], names))
        {
            if (text[..heading.Index].Trim(' ', '\n', '\t', PaperText.Parting) is { Length: > 0 } before)
                leftOut.Add(before.ReplaceLineEndings(" "));
            text = text[(heading.Index + heading.Length)..];
        }
        var may = May().Match(text);
        if (!may.Success)
            return new PaperParts(text, "", leftOut.ToImmutable());
        // The bracket that opened with the words closes at the end of what they govern.
        var (list, rest) = (text[..may.Index], text[(may.Index + may.Length)..]);
        if (may.Groups["open"].Value is { Length: 1 } open)
        {
            var close = Closing(rest, open[0]);
            if (close >= 0)
            {
                list += "\n" + rest[(close + 1)..];
                rest = rest[..close];
            }
        }
        return new PaperParts(list, rest, leftOut.ToImmutable());
    }

    // "Glycerin, Water. Contains: ..." has its list before the word.
    private static bool IsAList(string before, Func<string, bool> names)
    {
        string[] pieces = before.Split([',', ';', '\n']);
        return pieces.Length > 1 && pieces.Any(names);
    }

    private static int Closing(string text, char open)
    {
        var close = open == '(' ? ')' : ']';
        var depth = 0;
        for (var at = 0; at < text.Length; at++)
        {
            if (text[at] == open)
                depth++;
            else if (text[at] == close && --depth < 0)
                return at;
        }
        return -1;
    }

    [GeneratedRegex(@"(?:^|\n|(?<=[.:;)]\s))[\s\u001F]*(?:full |product |complete |list of "
        + @")?(?:ingredients?|ingr[ée]dients?|inci|inhaltsstoffe|bestandteile|zusammensetzung|ingredientes|ingredienti|ingredi[ëe]nten|samenstelling|sk[łl]adniki|sk[łl]ad|composici[óo]n|composizione|composition|contains)\b(?:\s*(?:list|listing|declaration|statement|names?|inci|ingredients?|/\s*ingr[ée]dients?|/\s*composition|\([^()\n]{1,30}\)))*\s*(?::|\n)", RegexOptions.IgnoreCase)]
    private static partial Regex Heading();

    // "May contain traces of nuts" is no list of ingredients.
    [GeneratedRegex(@"(?<open>[(\[])?\s*(?:(?:may (?:also )?contain|peut contenir|kann "
        + @"enthalten)\b(?!\s+traces?\b)(?:\s*[(\[]?\s*\+\s*/?\s*-\s*[)\]]?)?|\+\s*/?\s*-)\s*:?", RegexOptions.IgnoreCase)]
    private static partial Regex May();
}
