using LabelForge.Markets;
using LabelForge.Recipes;

namespace LabelForge.Web.Workbench;

/// <summary>What choices are called on the page.</summary>
internal static class Words
{
    /// <summary>Markets.</summary>
    public static IReadOnlyList<(string Id, string Name)> Markets(Workshop? workshop) => [.. (workshop?.Markets ?? MarketBook.Shipped).All.Select(m => (m.Id, NameOf(m)))];

    /// <summary>A market, by itself.</summary>
    public static string NameOf(Market market) => market.Name.StartsWith("the ", StringComparison.Ordinal) ? market.Name[4..] : market.Name;

    /// <summary>What a material is bought as.</summary>
    public static IReadOnlyList<(string Id, string Name)> Kinds { get; } =
    [
        ("base", "Ready-made base"), ("oil", "Oil, butter or wax"), ("fragrance", "Fragrance or essential oil"), ("colourant", "Colour"),
        ("additive", "Anything else that goes in"), ("lye", "Lye"), ("water", "Water"), ("packaging", "Packaging"),
    ];

    /// <summary>How far a supplier's order can be trusted.</summary>
    public static IReadOnlyList<(string Id, string Name)> Listed { get; } =
        [("label", "As on a lawful label: by weight down to 1 %"), ("strict", "By weight throughout"), ("none", "In no order")];

    /// <summary>A material's kind in words.</summary>
    public static string Of(MaterialKind kind) => Kinds.First(k => k.Id == kind.ToString().ToLowerInvariant()).Name;

    /// <summary>Grams to a tenth of what a small scale shows, or a dash where they are not known.</summary>
    public static string Grams(decimal grams) => grams.ToString(grams >= 100 ? "#,0.0" : "0.00", System.Globalization.CultureInfo.InvariantCulture) + " g";

    /// <summary>A percentage with two places.</summary>
    public static string Percent(decimal percent) => percent.ToString(percent is > 0 and < 0.01m ? "0.####" : "0.00", System.Globalization.CultureInfo.InvariantCulture) + " %";
}
