namespace LabelForge.Recipes;

/// <summary>The shapes of postal codes, as pieces of patterns in capitals: for addresses that are typed and for those that are read on labels.</summary>
/// <remarks>The national posts' guides and the Universal Postal Union's addressing systems by country; from memory.</remarks>
public static class Postcode
{
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
}
