using System.Text.RegularExpressions;

namespace LabelForge.Ingredients;

/// <summary>Brings a name to the one form in which names are compared.</summary>
internal static partial class IngredientName
{
    /// <summary>Lower case, single spaces, no spaces around slashes, "CI 77891" and "CI77891" alike.</summary>
    public static string Fold(string name)
    {
        var folded = Spaces().Replace(name.Trim().ToLowerInvariant(), " ");
        folded = AroundSlash().Replace(folded, "/");
        return ColourIndex().Replace(folded, "$1");
    }

    /// <summary>The name without what stands in parentheses: "Cocos Nucifera (Coconut) Oil" as "Cocos Nucifera Oil".</summary>
    public static string WithoutParentheses(string name) => Spaces().Replace(Parentheses().Replace(name, " "), " ").Trim();

    /// <summary>What stands in parentheses, or null.</summary>
    public static string? InParentheses(string name) => Parentheses().Match(name) is { Success: true } match ? match.Groups[1].Value : null;

    [GeneratedRegex(@"\s+")]
    private static partial Regex Spaces();

    [GeneratedRegex(@"\s*/\s*")]
    private static partial Regex AroundSlash();

    [GeneratedRegex(@"^c\.?i\.? ?(\d{5}(:\d)?)$")]
    private static partial Regex ColourIndex();

    [GeneratedRegex(@"\(([^()]*)\)")]
    private static partial Regex Parentheses();
}
