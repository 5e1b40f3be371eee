namespace LabelForge.Lots;

/// <summary>A Global Trade Item Number of 8, 12, 13 or 14 digits, its check digit right.</summary>
/// <remarks>Two numbers are the same item where <see cref="Fourteen"/> is the same; equality here
/// follows that. Source: GS1 General Specifications, 2.1 and 7.9.</remarks>
public sealed class Gtin : IEquatable<Gtin>
{
    private Gtin(string digits) => Digits = digits;

    /// <summary>The number as given: 8, 12, 13 or 14 digits.</summary>
    public string Digits { get; }

    /// <summary>The number filled with zeros on the left to 14 digits, as AI (01) and a Digital Link carry it.</summary>
    public string Fourteen => Digits.PadLeft(14, '0');

    /// <summary>The check digit that a number without one asks for.</summary>
    /// <param name="body">1 to 17 digits. From the right, digits weigh 3, 1, 3, 1, ...; the check
    /// digit fills the sum up to a multiple of 10.</param>
    /// <remarks>GS1 General Specifications, 7.9.1: 629104150021 asks for 3.</remarks>
    /// <exception cref="ArgumentException">Empty, or not digits alone.</exception>
    public static char CheckDigit(string body)
    {
        ArgumentException.ThrowIfNullOrEmpty(body);
        if (!body.All(char.IsAsciiDigit))
            throw new ArgumentException("Only digits 0 to 9 have a check digit.", nameof(body));
        var sum = 0;
        for (var fromRight = 0; fromRight < body.Length; fromRight++)
            sum += (body[^(fromRight + 1)] - '0') * (fromRight % 2 == 0 ? 3 : 1);
        return (char)('0' + (10 - sum % 10) % 10);
    }

    /// <summary>Reads a GTIN; spaces and hyphens between the digits are passed over.</summary>
    public static Parsed<Gtin> Parse(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        var digits = new string([.. text.Where(c => c is not (' ' or '-'))]);
        if (digits.Length == 0 || !digits.All(char.IsAsciiDigit))
            return Parsed<Gtin>.Refused("gtin.not-digits", ("text", text));
        if (digits.Length is not (8 or 12 or 13 or 14))
            return Parsed<Gtin>.Refused("gtin.digits", ("text", text), ("count", digits.Length));
        var check = CheckDigit(digits[..^1]);
        return check == digits[^1]
            ? Parsed<Gtin>.Of(new Gtin(digits))
            : Parsed<Gtin>.Refused("gtin.check-digit", ("text", text), ("digit", digits[..^1]), ("check", check));
    }

    /// <summary>Builds the GTIN of a maker's own item.</summary>
    /// <param name="companyPrefix">The GS1 Company Prefix as GS1 licensed it, 4 to 11 digits (9521321 in examples). One that starts with 0
    /// (a U.P.C. prefix written out) gives a GTIN-12.</param>
    /// <param name="item">The item's number, from 0, in the digits that the prefix leaves free (12 less its length).</param>
    public static Parsed<Gtin> FromPrefix(string companyPrefix, int item)
    {
        ArgumentNullException.ThrowIfNull(companyPrefix);
        if (!companyPrefix.All(char.IsAsciiDigit) || companyPrefix.Length is < 4 or > 11)
            return Parsed<Gtin>.Refused("gtin.not-a-prefix", ("company-prefix", companyPrefix));
        var free = 12 - companyPrefix.Length;
        var number = item.ToString(CultureInfo.InvariantCulture).PadLeft(free, '0');
        if (item < 0 || number.Length > free)
        {
            return Parsed<Gtin>.Refused("gtin.item-number", ("item", item), ("company-prefix", companyPrefix), ("free", free),
                ("value", new string('9', free)));
        }

        var body = companyPrefix + number;
        if (body[0] == '0')
            body = body[1..];
        return Parsed<Gtin>.Of(new Gtin(body + CheckDigit(body)));
    }

    /// <summary>The 13 digits that an EAN-13 symbol carries, or null for a GTIN-14 of a carton.</summary>
    public string? Thirteen => Fourteen[0] == '0' ? Fourteen[1..] : null;

    /// <summary>The 12 digits that a UPC-A symbol carries, or null where the number needs 13 or 14 digits.</summary>
    public string? Twelve => Fourteen.StartsWith("00", StringComparison.Ordinal) ? Fourteen[2..] : null;

    /// <inheritdoc/>
    public bool Equals(Gtin? other) => other is not null && other.Fourteen == Fourteen;

    /// <inheritdoc/>
    public override bool Equals(object? obj) => Equals(obj as Gtin);

    /// <inheritdoc/>
    public override int GetHashCode() => Fourteen.GetHashCode(StringComparison.Ordinal);

    /// <summary>The digits as given.</summary>
    public override string ToString() => Digits;
}
