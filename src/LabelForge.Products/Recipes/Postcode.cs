namespace LabelForge.Recipes;

/// <summary>The shapes of postal codes, as pieces of patterns in capitals: for addresses that are
/// typed and for those that are read on labels.</summary>
/// <remarks>The national posts' guides and the Universal Postal Union's addressing systems by country; from memory.</remarks>
public static class Postcode
{
    private static readonly string[] BeforeTown =
        ["AT", "BE", "BG", "CH", "CY", "CZ", "DE", "DK", "EE", "ES", "FI", "FR", "GR", "HR", "IS", "IT", "LI", "LT", "LU", "NL", "NO",
            "PL", "PT", "RO", "SE", "SI", "SK"];

    /// <summary>Whether a country writes the postcode before the town, as most of the continent does.</summary>
    /// <param name="country">Two letters (ISO 3166-1), or null where none is known.</param>
    public static bool StandsBeforeTown(string? country) => BeforeTown.Contains(country);

    /// <summary>The United Kingdom: <c>ZZ1 1ZZ</c>.</summary>
    public const string British = @"[A-Z]{1,2}[0-9][A-Z0-9]?\s?[0-9][A-Z]{2}";

    /// <summary>Canada: <c>H0H 0H0</c>.</summary>
    public const string Canadian = "[A-Z][0-9][A-Z][ -]?[0-9][A-Z][0-9]";

    /// <summary>The United States: five figures, or nine.</summary>
    public const string American = "[0-9]{5}(?:-[0-9]{4})?";

    /// <summary>The Netherlands: four figures and two letters.</summary>
    public const string Dutch = @"[0-9]{4}\s?[A-Z]{2}";

    /// <summary>Poland.</summary>
    public const string Polish = "[0-9]{2}-[0-9]{3}";

    /// <summary>Ireland: a routing key and four letters or figures.</summary>
    public const string Irish = @"(?:[AC-FHKNPRTV-Y][0-9]{2}|D6W)\s?[0-9AC-FHKNPRTV-Y]{4}";

    /// <summary>Malta: three letters and four figures.</summary>
    public const string Maltese = @"[A-Z]{3}\s?[0-9]{4}";

    /// <summary>Portugal.</summary>
    public const string Portuguese = "[0-9]{4}-[0-9]{3}";

    /// <summary>Sweden, Czechia, Slovakia and Greece: five figures, parted.</summary>
    public const string Parted = @"[0-9]{3}\s[0-9]{2}";
}
