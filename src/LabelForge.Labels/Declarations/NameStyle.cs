namespace LabelForge.Declarations;

/// <summary>In whose words a declaration names its ingredients.</summary>
public enum NameStyle
{
    /// <summary>As the market names them.</summary>
    Market,

    /// <summary>
    /// For one label sold in several markets: the European name and the US name in parentheses where the two differ,
    /// such as <c>Aqua (Water)</c> and <c>CI 77891 (Titanium Dioxide)</c>.
    /// </summary>
    Dual,
}

/// <summary>Name styles as a person writes them: <c>market</c>, <c>dual</c>.</summary>
public static class NameStyleText
{
    /// <summary>Reads a name style.</summary>
    public static Parsed<NameStyle> Parse(string text) => text.Trim().ToLowerInvariant() switch
    {
        "market" => Parsed<NameStyle>.Of(NameStyle.Market),
        "dual" => Parsed<NameStyle>.Of(NameStyle.Dual),
        _ => Parsed<NameStyle>.Refused("declaration.name-style", ("text", text.Trim())),
    };
}
