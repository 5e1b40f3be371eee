namespace LabelForge.Web.Workbench;

/// <summary>What a finding is about, in plain words: the first part of its rule's id.</summary>
internal static class FindingSubjects
{
    private static readonly Dictionary<string, string> Names = new()
    {
        ["identity"] = "What it is called (statement of identity)",
        ["net-quantity"] = "Weight (net quantity)",
        ["ingredients"] = "Ingredients (declaration)",
        ["allergen"] = "Allergens of the fragrance",
        ["business-name"] = "Your name, place and contact",
        ["business-place"] = "Your name, place and contact",
        ["contact"] = "Your name, place and contact",
        ["lot"] = "Lot",
        ["warning"] = "Warnings",
        ["claim"] = "What you promise (claims)",
        ["colour"] = "Colours",
        ["fragrance"] = "Fragrance",
        ["substance"] = "Substances with limits",
        ["package"] = "Package",
        ["language"] = "Languages",
        ["directions"] = "Directions",
        ["product"] = "What it is",
    };

    /// <summary>The subject of a rule.</summary>
    public static string Of(string rule)
    {
        var first = rule.Split('.')[0];
        return Names.GetValueOrDefault(first) ?? char.ToUpperInvariant(first[0]) + first[1..].Replace('-', ' ');
    }
}
