namespace LabelForge.Ingredients;

/// <summary>
/// A Colour Index constitution number of five digits, such as CI 77891 for titanium dioxide, as Annex IV of
/// Regulation (EC) No 1223/2009 uses it. The default value is no number.
/// </summary>
public readonly partial record struct ColourIndexNumber
{
    private readonly string? digits;

    private ColourIndexNumber(string digits) => this.digits = digits;

    /// <summary>Reads five digits, with or without "CI" before them.</summary>
    public static Parsed<ColourIndexNumber> Parse(string written)
    {
        var text = written.Trim();
        var number = text.StartsWith("CI", StringComparison.OrdinalIgnoreCase) ? text[2..].Trim() : text;
        return number.Length == 5 && number.All(char.IsAsciiDigit)
            ? Parsed<ColourIndexNumber>.Of(new ColourIndexNumber(number))
            : Parsed<ColourIndexNumber>.Refused("substances.not-a-colour-index", ("text", text));
    }

    /// <summary>The number that a label gives as a colour's name, as <c>C.I. 74260</c> or <c>CI 15510:1</c>; or null.</summary>
    public static ColourIndexNumber? OnLabel(string name) =>
        Written().Match(name) is { Success: true } number ? new ColourIndexNumber(number.Groups["digits"].Value) : null;

    /// <summary>The number as a label names the colour: <c>CI 77891</c>.</summary>
    public override string ToString() => digits is null ? "" : $"CI {digits}";

    [GeneratedRegex(@"^\W*c\.?\s?i\.?\s?#?\s?(?<digits>[0-9]{5})(?::[0-9])?\W*$", RegexOptions.IgnoreCase)]
    private static partial Regex Written();
}
