namespace LabelForge.Ingredients;

/// <summary>
/// A CAS Registry number whose check digit is right, such as 7732-18-5 for water. The default value is no number.
/// Source of the rule: CAS, "Check Digit Verification of CAS Registry Numbers".
/// </summary>
public readonly record struct CasNumber
{
    private readonly string? text;

    private CasNumber(string text) => this.text = text;

    /// <summary>Reads a number of two to seven digits, two digits and a check digit, parted by hyphens.</summary>
    public static Parsed<CasNumber> Parse(string written)
    {
        var number = written.Trim();
        var parts = number.Split('-');
        if (parts is not [{ Length: >= 2 and <= 7 } first, { Length: 2 } second, { Length: 1 } check]
            || !(first + second + check).All(char.IsAsciiDigit))
            return Parsed<CasNumber>.Refused("substances.not-a-cas-number", ("number", number));
        var due = CheckDigit(first + second);
        return due == check[0] - '0'
            ? Parsed<CasNumber>.Of(new CasNumber(number))
            : Parsed<CasNumber>.Refused("substances.cas-check-digit", ("number", number), ("first", first), ("second", second),
                ("due", due));
    }

    /// <summary>The check digit: the digits counted from the right, each times its place, summed, modulo 10.</summary>
    private static int CheckDigit(string digits) => digits.Select((d, i) => (d - '0') * (digits.Length - i)).Sum() % 10;

    /// <inheritdoc/>
    public override string ToString() => text ?? "";
}
