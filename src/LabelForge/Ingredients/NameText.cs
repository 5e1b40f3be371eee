using System.Text.RegularExpressions;

namespace LabelForge.Ingredients;

/// <summary>How a name is compared: without regard to letter case, spacing, footnote signs or the kind of apostrophe.</summary>
internal static partial class NameText
{
    /// <summary>The name as it is compared.</summary>
    public static string Plain(string name)
    {
        var plain = name.Trim().TrimEnd('*', '.', '†').Replace('’', '\'').Replace('–', '-').Trim().ToLowerInvariant();
        return ColourIndex().Replace(AroundSlash().Replace(Spaces().Replace(plain, " "), "/"), "ci $1");
    }

    /// <summary>The name without what stands in parentheses or brackets: <c>Cocos Nucifera (Coconut) Oil</c> to <c>Cocos Nucifera Oil</c>.</summary>
    public static string WithoutParentheses(string name) => Plain(Parentheses().Replace(name, " "));

    /// <summary>The parts of a name given twice: <c>Aqua (Water)</c>, <c>Aqua/Water/Eau</c>, <c>Titanium Dioxide [CI 77891]</c>.</summary>
    public static IEnumerable<string> Parts(string name)
    {
        // In the middle of a botanical name, (Green Tea) is its common name and no second name of the whole.
        var pair = NameThenName().Match(name.Trim());
        return (pair.Success ? new[] { pair.Groups["first"].Value, pair.Groups["second"].Value } : [name])
            .SelectMany(p => Parentheses().Replace(p, " ").Split('/'))
            .Select(Plain)
            .Where(p => p.Length > 0);
    }

    [GeneratedRegex(@"\s*/\s*")]
    private static partial Regex AroundSlash();

    [GeneratedRegex(@"^c\.?i\.? ?(\d{5})$")]
    private static partial Regex ColourIndex();

    [GeneratedRegex(@"\s+")]
    private static partial Regex Spaces();

    [GeneratedRegex(@"[(\[][^()\[\]]*[)\]]")]
    private static partial Regex Parentheses();

    [GeneratedRegex(@"^(?<first>.+?)\s*[(\[](?<second>[^()\[\]]*)[)\]]$")]
    private static partial Regex NameThenName();
}
