namespace LabelForge.Web.Workbench;

/// <summary>What choices are called on the page.</summary>
internal static class Words
{
    /// <summary>Markets.</summary>
    public static IReadOnlyList<(string Id, string Name)> Markets(this Say say, Workshop? workshop) =>
        [.. (workshop?.Markets ?? Shipped.Markets).All.Select(m => (m.Id, say.NameOf(m)))];

    /// <summary>A market, by itself; one of the workshop's own by the name in its folder.</summary>
    public static string NameOf(this Say say, Market market) => say.Has($"market-name.{market.Id}") ? say[$"market-name.{market.Id}"]
        : market.Name.StartsWith("the ", StringComparison.Ordinal) ? market.Name[4..] : market.Name;

    /// <summary>What a material is bought as, in the order of lists.</summary>
    public static IReadOnlyList<string> Kinds { get; } = ["base", "oil", "fragrance", "colourant", "additive", "lye", "water",
        "packaging"];

    /// <summary>What is chosen of, each with its words under a group of the page's words.</summary>
    public static IEnumerable<(string Id, string Name)> Named(this Say say, string group, params IEnumerable<string> ids) =>
        ids.Select(id => (id, say[$"{group}.{id.Replace(' ', '-')}"]));

    /// <summary>The kinds of product.</summary>
    public static IEnumerable<(string Id, string Name)> ProductKinds(this Say say) =>
        LabelForge.Markets.ProductKinds.All.Select(k => (k.Id, say[$"product-kind.{k.Id}"]));

    /// <summary>How far a supplier's order can be trusted.</summary>
    public static IReadOnlyList<string> Listed { get; } = ["label", "strict", "none"];

    /// <summary>Grams to a tenth of what a small scale shows, or a dash where they are not known.</summary>
    public static string Grams(decimal grams) =>
        grams.ToString(grams >= 100 ? "#,0.0" : "0.00", System.Globalization.CultureInfo.InvariantCulture) + " g";

    /// <summary>A percentage with two places.</summary>
    public static string Percent(decimal percent) =>
        percent.ToString(percent is > 0 and < 0.01m ? "0.####" : "0.00", System.Globalization.CultureInfo.InvariantCulture) + " %";
}
