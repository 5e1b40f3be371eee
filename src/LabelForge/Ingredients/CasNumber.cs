using LabelForge.Measures;

namespace LabelForge.Ingredients;

/// <summary>A CAS Registry Number whose check digit is right.</summary>
/// <remarks>
/// The check digit is the sum of the other digits, each times its place counted from the right, modulo 10
/// (CAS, "Check Digit Verification of CAS Registry Numbers"; worked there for 107-07-3).
/// </remarks>
public readonly record struct CasNumber
{
    private readonly string? _text;

    private CasNumber(string text) => _text = text;

    /// <summary>Reads a number such as <c>7732-18-5</c>.</summary>
    public static Parsed<CasNumber> Parse(string text)
    {
        var parts = text.Split('-');
        if (parts is not [{ Length: >= 2 and <= 7 }, { Length: 2 }, { Length: 1 }] || !parts.All(p => p.All(char.IsAsciiDigit)))
            return Parsed<CasNumber>.Refused($"\"{text}\" is not a CAS number.", "Write it with its hyphens, for example 7732-18-5.");
        var digits = parts[0] + parts[1];
        var sum = digits.Reverse().Select((d, place) => (d - '0') * (place + 1)).Sum();
        return sum % 10 == parts[2][0] - '0'
            ? Parsed<CasNumber>.Of(new CasNumber(text))
            : Parsed<CasNumber>.Refused($"\"{text}\" fails its check digit, which should be {sum % 10}.", "Copy the number again from its source.");
    }

    /// <inheritdoc/>
    public override string ToString() => _text ?? "";
}
