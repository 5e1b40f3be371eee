namespace LabelForge.Lots;

/// <summary>What the value of a GS1 Application Identifier is made of.</summary>
public enum Gs1Format
{
    /// <summary>Fourteen digits, the last a check digit (N14).</summary>
    Gtin,

    /// <summary>Six digits YYMMDD; day 00 means the last day of the month, where only the month is known (N6).</summary>
    Date,

    /// <summary>1 to 20 characters of GS1's character set 82 (X..20).</summary>
    Text,
}

/// <summary>Where a GS1 Digital Link URI carries an identifier.</summary>
public enum DigitalLinkPlace
{
    /// <summary>The item itself, first in the path.</summary>
    Key,

    /// <summary>Narrows the item, in the path after it, in the order of the table.</summary>
    Qualifier,

    /// <summary>Says something about it, in the query.</summary>
    Attribute,
}

/// <summary>A GS1 Application Identifier that a maker's label uses.</summary>
/// <param name="Code">Its digits.</param>
/// <param name="Title">Its data title.</param>
/// <param name="Format">What its value is made of.</param>
/// <param name="Place">Where a Digital Link URI carries it.</param>
/// <remarks>
/// Source: GS1 General Specifications, 3.2 to 3.5, as in the GS1 Syntax Dictionary (2026) for format and title;
/// order of qualifiers 22, 10, 21: GS1 Digital Link Standard, URI Syntax.
/// </remarks>
public sealed record Gs1Identifier(string Code, string Title, Gs1Format Format, DigitalLinkPlace Place)
{
    /// <summary>The greatest number of characters of a text value (X..20).</summary>
    public const int MostCharacters = 20;

    /// <summary>Characters of GS1's set 82, which text values are limited to (GS1 General
    /// Specifications, figure 7.11-1, from memory).</summary>
    public const string CharacterSet82 =
        "!\"%&'()*+,-./0123456789:;<=>?ABCDEFGHIJKLMNOPQRSTUVWXYZ_abcdefghijklmnopqrstuvwxyz";

    /// <summary>The identifiers known, qualifiers in the order that a Digital Link path wants.</summary>
    public static ImmutableArray<Gs1Identifier> Known { get; } =
    [
        new("01", "GTIN", Gs1Format.Gtin, DigitalLinkPlace.Key),
        new("22", "CPV", Gs1Format.Text, DigitalLinkPlace.Qualifier),
        new("10", "BATCH/LOT", Gs1Format.Text, DigitalLinkPlace.Qualifier),
        new("21", "SERIAL", Gs1Format.Text, DigitalLinkPlace.Qualifier),
        new("11", "PROD DATE", Gs1Format.Date, DigitalLinkPlace.Attribute),
        new("17", "USE BY or EXPIRY", Gs1Format.Date, DigitalLinkPlace.Attribute),
    ];

    /// <summary>The number of characters of the value where it is always the same, else null: then FNC1 must end it.</summary>
    public int? FixedLength => Format switch
    {
        Gs1Format.Gtin => 14,
        Gs1Format.Date => 6,
        _ => null,
    };

    /// <summary>The identifier with these digits, or null.</summary>
    public static Gs1Identifier? Find(string code) => Known.FirstOrDefault(known => known.Code == code);
}
