using LabelForge.Web.Wording;

namespace LabelForge.Web.Workbench;

/// <summary>What a finding is about, in plain words, with the word of the law beside it: by the first part of its rule's id.</summary>
/// <param name="Name">In plain words.</param>
/// <param name="Term">The word of the law or the trade, by its key; null where the plain one says it all.</param>
internal sealed record FindingSubject(string Name, string? Term)
{
    private static readonly Dictionary<string, (string Subject, string? Term)> Keys = new()
    {
        ["identity"] = ("identity", "identity"),
        ["net-quantity"] = ("net-quantity", "net-quantity"),
        ["ingredients"] = ("ingredients", "ingredients"),
        ["allergen"] = ("allergen", null),
        ["business-name"] = ("business", "business"),
        ["business-place"] = ("business", "business"),
        ["contact"] = ("business", "business"),
        ["lot"] = ("lot", "lot"),
        ["warning"] = ("warnings", "warnings"),
        ["claim"] = ("claim", "claim"),
        ["colour"] = ("colour", null),
        ["fragrance"] = ("fragrance", null),
        ["substance"] = ("substance", null),
        ["package"] = ("package", "panel"),
        ["language"] = ("language", null),
        ["directions"] = ("directions", null),
        ["product"] = ("product", null),
    };

    /// <summary>The subject of a rule.</summary>
    public static FindingSubject Of(string rule, Say say)
    {
        var first = rule.Split('.')[0];
        return Keys.TryGetValue(first, out var known) ? new(say["subject." + known.Subject], known.Term)
            : new(char.ToUpperInvariant(first[0]) + first[1..].Replace('-', ' '), null);
    }
}
