namespace LabelForge.Ingredients;

/// <summary>How a name is compared: without regard to letter case, spacing, footnote marks or the kind of apostrophe.</summary>
public static partial class NameText
{
    private const int ColourIndexDigits = 5;

    /// <summary>The name as it is compared: in small letters, one space for any, none around a
    /// stroke, <c>C.I. 77491</c> as <c>ci 77491</c>.</summary>
    /// <remarks>Written out and not as patterns, since every name of the dictionary passes here before the first label is drawn.</remarks>
    public static string Plain(string name)
    {
        var written = name.AsSpan().Trim().TrimEnd("*.†").Trim();
        var plain = new StringBuilder(written.Length);
        var space = false;
        foreach (var sign in written)
        {
            if (char.IsWhiteSpace(sign))
            {
                space = true;
                continue;
            }
            if (space && sign != '/' && plain[^1] != '/')
                plain.Append(' ');
            space = false;
            plain.Append(sign switch { '’' => '\'', '–' => '-', _ => char.ToLowerInvariant(sign) });
        }
        return ColourIndexOr(plain.ToString());
    }

    // c.i. 77491, ci77491 and their like.
    private static string ColourIndexOr(string plain)
    {
        if (!plain.StartsWith('c') || plain.Length < ColourIndexDigits + 2)
            return plain;
        var digits = plain.AsSpan(plain.Length - ColourIndexDigits);
        foreach (var digit in digits)
        {
            if (!char.IsDigit(digit))
                return plain;
        }
        return plain.AsSpan(0, plain.Length - ColourIndexDigits) is "ci" or "ci " or "ci." or "ci. " or "c.i" or "c.i " or "c.i."
            or "c.i. " ? $"ci {digits}" : plain;
    }

    /// <summary>The name without what stands in parentheses or brackets: <c>Cocos Nucifera
    /// (Coconut) Oil</c> to <c>Cocos Nucifera Oil</c>.</summary>
    public static string WithoutParentheses(string name) =>
        Plain(name.AsSpan().IndexOfAny('(', '[') < 0 ? name : Parentheses().Replace(name, " "));

    /// <summary>The parts of a name given twice: <c>Aqua (Water)</c>, <c>Aqua/Water/Eau</c>, <c>Titanium Dioxide [CI 77891]</c>.</summary>
    public static IEnumerable<string> Parts(string name)
    {
        // In the middle of a botanical name, (Green Tea) is its common name and no second name of the whole.
        var pair = NameThenName().Match(name.Trim());
        return (pair.Success ? new[] { pair.Groups["first"].Value, pair.Groups["second"].Value } : [name])
            .SelectMany(p => Parentheses().Replace(p, " ").Split('/'))
            .Select(Plain)
            .Where(p => p.Length > 0);
    }

    [GeneratedRegex(@"[(\[][^()\[\]]*[)\]]")]
    private static partial Regex Parentheses();

    [GeneratedRegex(@"^(?<first>.+?)\s*[(\[](?<second>[^()\[\]]*)[)\]]$")]
    private static partial Regex NameThenName();
}
