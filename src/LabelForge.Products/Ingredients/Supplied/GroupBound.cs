namespace LabelForge.Ingredients.Supplied;

/// <summary>A bound that a paper puts before several names at once: "contains less than 2 % of:",
/// "1 % or less of the following".</summary>
internal static partial class GroupBound
{
    /// <summary>The parts of a list, each with the bound that is said of all in it; the first has none.</summary>
    /// <exception cref="InputException">The figure is no share.</exception>
    public static ImmutableArray<(string Text, ShareRange? Bound)> Parts(string list)
    {
        var parts = ImmutableArray.CreateBuilder<(string, ShareRange?)>();
        ShareRange? bound = null;
        var from = 0;
        foreach (Match match in Said().Matches(list))
        {
            parts.Add((list[from..match.Index].TrimEnd(' ', ',', ';', '('), bound));
            (bound, from) = (Bound(match), match.Index + match.Length);
        }
        parts.Add((list[from..], bound));
        return [.. parts.Where(p => p.Item1.Trim().Length > 0)];
    }

    private static ShareRange Bound(Match match)
    {
        var parsed = ShareText.Parse($"<= {match.Groups["most"].Value.Replace(',', '.')} %");
        return parsed.IsValue
            ? parsed.Value
            : throw new InputException("supplied.share-in", ("words", match.Value.Trim()), ("inner", parsed.Problem));
    }

    private const string Percent = @"\s*(?:%|per\s?cent|pct\.?)\s*";

    [GeneratedRegex(@"(?:(?:and|also|it|which)\s+)*(?:(?:contains?|containing|with|and)\s*:?\s*)?(?:(?:less than|not more than|no more "
        + @"than|up to|at most|under|below|max(?:imum|\.)?(?:\s+of)?|<=|<)\s*(?<most>[0-9]{1,3}(?:[.,][0-9]+)?)" + Percent
        + @"(?:or less\s*)?(?:each\s*)?of(?:\s+(?:each|any|all))?(?:\s+of)?(?:\s+(?:the\s+following|these|the\s+rest))?(?:\s+ingredients?)?\s*:?|(?<most>[0-9]{1,3}(?:[.,][0-9]+)?)" + Percent + @"or less\s*(?:each\s*)?(?:of)?(?:\s+(?:each|any|all))?(?:\s+of)?(?:\s+the following)?(?:\s+ingredients?)?\s*:|the following(?:\s+ingredients)? (?:at|are|in)(?: less than| under| below| <=?)?\s*(?<most>[0-9]{1,3}(?:[.,][0-9]+)?)" + Percent + @"(?:or less\s*)?(?:each)?\s*:)", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant, 20_000)]
    private static partial Regex Said();
}
