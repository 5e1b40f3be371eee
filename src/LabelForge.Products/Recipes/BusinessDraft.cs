using LabelForge.Recipes.Files;

namespace LabelForge.Recipes;

/// <summary>A new workshop's <c>workshop.yaml</c>, from what a maker filled in. What is empty is left out.</summary>
public sealed record BusinessDraft(
    string Name, string Role, string Street, string City, string Region, string Postcode, string Country, string Phone, string Web,
    string Email, string Market, string Currency)
{
    /// <summary>The file's text; it can be read back at once.</summary>
    /// <param name="markets">The markets that may be named.</param>
    /// <exception cref="InputException">The name is missing, or something in it cannot be used.</exception>
    public string ToYaml(MarketBook markets)
    {
        var text = new StringBuilder("# Your business, as it stands on every label.\n");
        Line(text, "business", Name);
        Line(text, "role", Role);
        Set(text, "place", ("street", Street), ("city", City), ("region", Region), ("postcode", Postcode), ("country", Country));
        Set(text, "contact", ("phone", Phone), ("web", Web), ("email", Email));
        Line(text, "market", Market);
        Line(text, "currency", Currency);
        Business.Read(YamlFile.ReadText(text.ToString(), "workshop.yaml"), markets);
        return text.ToString();
    }

    private static void Set(StringBuilder text, string key, params (string Key, string Value)[] values)
    {
        if (values.All(v => string.IsNullOrWhiteSpace(v.Value)))
            return;
        text.Append(CultureInfo.InvariantCulture, $"{key}:\n");
        foreach (var (inner, value) in values)
            Line(text, "  " + inner, value);
    }

    private static void Line(StringBuilder text, string key, string value)
    {
        if (!string.IsNullOrWhiteSpace(value))
            text.Append(CultureInfo.InvariantCulture, $"{key}: {YamlScalar.QuotedLine(value)}\n");
    }
}
