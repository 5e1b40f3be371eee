namespace LabelForge.Lots;

/// <summary>One Application Identifier with its value, checked against the identifier's format.</summary>
public sealed record Gs1Element
{
    private Gs1Element(Gs1Identifier identifier, string value)
    {
        Identifier = identifier;
        Value = value;
    }

    /// <summary>What the value means.</summary>
    public Gs1Identifier Identifier { get; }

    /// <summary>The value, without the identifier's digits.</summary>
    public string Value { get; }

    /// <summary>An element, or what is wrong with the value.</summary>
    /// <param name="code">The Application Identifier's digits: 01, 10, 11, 17, 21 or 22.</param>
    /// <param name="value">Its value.</param>
    public static Parsed<Gs1Element> Of(string code, string value)
    {
        ArgumentNullException.ThrowIfNull(code);
        ArgumentNullException.ThrowIfNull(value);
        var identifier = Gs1Identifier.Find(code);
        if (identifier is null)
        {
            return Parsed<Gs1Element>.Refused("gs1.unknown-identifier", ("code", code),
                ("list", string.Join(", ", Gs1Identifier.Known.Select(known => $"({known.Code}) {known.Title}"))));
        }

        var wrong = identifier.Format switch
        {
            Gs1Format.Gtin => WrongGtin(value),
            Gs1Format.Date => WrongDate(value),
            _ => WrongText(value),
        };
        return wrong is { } inner
            ? Parsed<Gs1Element>.Refused("gs1.element", ("code", code), ("title", identifier.Title), ("inner", inner))
            : Parsed<Gs1Element>.Of(new Gs1Element(identifier, value));
    }

    /// <summary>The day that a date element names, or null for other elements.</summary>
    /// <param name="today">Decides the century: the year nearest to today's within 49 years back
    /// and 50 ahead (GS1 General Specifications, 7.12).</param>
    public DateOnly? Day(DateOnly today)
    {
        if (Identifier.Format != Gs1Format.Date)
            return null;
        var (yy, month, day) = Parts(Value);
        var year = today.Year - today.Year % 100 + yy;
        if (year - today.Year >= 51)
            year -= 100;
        else if (year - today.Year <= -50)
            year += 100;
        var last = DateTime.DaysInMonth(year, month);
        return new DateOnly(year, month, day == 0 ? last : Math.Min(day, last));
    }

    /// <summary>A day as the six digits of a date element.</summary>
    public static string Digits(DateOnly day) => day.ToString("yyMMdd", CultureInfo.InvariantCulture);

    private static (int Year, int Month, int Day) Parts(string value)
    {
        var number = int.Parse(value, CultureInfo.InvariantCulture);
        return (number / 10000, number / 100 % 100, number % 100);
    }

    private static Problem? WrongGtin(string value)
    {
        if (value.Length != 14)
            return new Problem("gs1.not-14-digits", ("value", value), ("count", value.Length));
        var gtin = Gtin.Parse(value);
        return gtin.Problem;
    }

    private static Problem? WrongDate(string value)
    {
        if (value.Length != 6 || !value.All(char.IsAsciiDigit))
            return new Problem("gs1.not-six-digits", ("value", value));
        var (year, month, day) = Parts(value);
        // Two digits do not tell the century; of those in reach only 2000 is divisible by 100, and it was a leap year.
        return month is < 1 or > 12 || day > DateTime.DaysInMonth(2000 + year, month)
            ? new Problem("gs1.no-such-date", ("value", value))
            : null;
    }

    private static Problem? WrongText(string value)
    {
        if (value.Length is 0 or > Gs1Identifier.MostCharacters)
            return new Problem("gs1.characters", ("value", value), ("count", value.Length),
                ("most", Gs1Identifier.MostCharacters));
        foreach (var character in value)
        {
            if (!Gs1Identifier.CharacterSet82.Contains(character))
                return new Problem("gs1.character", ("value", value), ("character", character));
        }

        return null;
    }
}
