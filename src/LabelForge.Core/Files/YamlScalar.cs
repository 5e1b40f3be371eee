namespace LabelForge.Recipes.Files;

/// <summary>How a value is written so that it reads back as the same text.</summary>
public static partial class YamlScalar
{
    /// <summary>The text, plain where that is safe anywhere in a file, else in double quotation marks.</summary>
    public static string Write(string text) => Plain().IsMatch(text) && !Words().IsMatch(text) ? text : Quoted(text);

    /// <summary>What was typed as one line, written so: without control characters, and no blank at either end.</summary>
    public static string Line(string typed) => Write(OneLine(typed));

    /// <summary>The same in quotation marks whatever it is: a postcode of 04101 must not lose its zero, nor a telephone its
    /// plus.</summary>
    public static string QuotedLine(string typed) => Quoted(OneLine(typed));

    private static string OneLine(string typed) => new string([.. typed.Where(c => !char.IsControl(c))]).Trim();

    private static string Quoted(string text)
    {
        var quoted = new StringBuilder("\"");
        foreach (var c in text)
        {
            _ = c switch
            {
                '"' => quoted.Append("\\\""),
                '\\' => quoted.Append("\\\\"),
                '\n' => quoted.Append("\\n"),
                '\t' => quoted.Append("\\t"),
                '\r' => quoted,
                _ when char.IsControl(c) || c is '\u2028' or '\u2029' or '\ufeff' =>
                    quoted.Append(CultureInfo.InvariantCulture, $"\\u{(int)c:X4}"),
                _ => quoted.Append(c),
            };
        }
        return quoted.Append('"').ToString();
    }

    // Nothing that means something in YAML: no colon or hash, no bracket or comma, no indicator at the front, no blank at either end.
    // A comparison at the front (<= 1 %) is how shares are written, and means nothing in YAML.
    [GeneratedRegex(@"^(?:[<≤≥]=? ?|(?=[\p{L}0-9]))[\p{L}0-9](?:[\p{L}\p{M}0-9 ()/.'+%&;=_–—×·-]*[\p{L}\p{M}0-9)/.'+%;_])?\z")]
    private static partial Regex Plain();

    // Figures with a leading zero and words that some programs take for something else.
    [GeneratedRegex(@"^(?:true|false|yes|no|on|off|null|y|n|0[0-9]+)\z", RegexOptions.IgnoreCase)]
    private static partial Regex Words();
}
