using LabelForge.Measures;

namespace LabelForge.Markets;

/// <summary>A market whose labelling law can be applied.</summary>
public enum Market
{
    /// <summary>The United States.</summary>
    Us,

    /// <summary>The European Union.</summary>
    Eu,

    /// <summary>Great Britain.</summary>
    Uk,

    /// <summary>Canada.</summary>
    Ca,
}

/// <summary>Markets as a person writes them: <c>us</c>, <c>eu</c>, <c>uk</c>, <c>ca</c>.</summary>
public static class MarketText
{
    /// <summary>Reads a market, upper or lower case.</summary>
    public static Parsed<Market> Parse(string text) => text.Trim().ToLowerInvariant() switch
    {
        "us" => Parsed<Market>.Of(Market.Us),
        "eu" => Parsed<Market>.Of(Market.Eu),
        "uk" => Parsed<Market>.Of(Market.Uk),
        "ca" => Parsed<Market>.Of(Market.Ca),
        _ => Parsed<Market>.Refused($"\"{text.Trim()}\" is not a market known here.", "Write us, eu, uk or ca."),
    };

    /// <summary>The market as it is written in files and on the command line.</summary>
    public static string Of(Market market) => market switch
    {
        Market.Us => "us",
        Market.Eu => "eu",
        Market.Uk => "uk",
        Market.Ca => "ca",
        _ => throw new ArgumentOutOfRangeException(nameof(market)),
    };
}
