namespace LabelForge.Ingredients.Supplied;

/// <summary>The share that stands beside a name: <c>5 %</c>, <c>(10-30%)</c>, <c>&lt;1%</c>,
/// <c>max. 2 %</c>, <c>&gt;=1 - &lt;5 % w/w</c>.</summary>
internal static partial class ShareWords
{
    /// <summary>Parts a piece of a list into what is left of it, its share, and a remark where a figure is no bound.</summary>
    /// <exception cref="InputException">The figures cannot be a share: above 100 %, or from high to low.</exception>
    public static (string Left, ShareRange Share, string? Remark) Take(string piece)
    {
        var match = AtEnd().Match(piece);
        if (!match.Success)
            match = AtStart().Match(piece);
        if (!match.Success)
            return Balance().Match(piece) is { Success: true } rest
                ? (Without(piece, rest), ShareRange.Unknown, $"\"{rest.Value.Trim()}\" is no figure")
                : (piece, ShareRange.Unknown, null);
        var left = Without(piece, match);
        // An approximate figure bounds nothing: what is meant by "about" only the supplier can say.
        if (match.Groups["about"].Success)
            return (left, ShareRange.Unknown, $"\"{match.Value.Trim()}\" is no bound: ask for a range");
        return (left, Range(match), null);
    }

    private static ShareRange Range(Match match)
    {
        var (first, second) = (Figure(match, "low"), Figure(match, "high"));
        var sign = match.Value.Contains("or less", StringComparison.OrdinalIgnoreCase) ? "<=" : Sign(match.Groups["sign"].Value);
        var text = second is null ? $"{sign} {first} %" : $"{first}-{second} %";
        var isRange = second is not null;
        if (isRange && sign == "<=")
            throw new InputException("supplied.not-a-share-2", ("match", match.Value.Trim()));
        var parsed = ShareText.Parse(text.Trim());
        return parsed.IsValue
            ? parsed.Value
            : throw new InputException("supplied.share-in", ("words", match.Value.Trim()), ("inner", parsed.Problem));
    }

    private static string? Figure(Match match, string group) =>
        match.Groups[group] is { Success: true, Value: var value } ? value.Replace(',', '.') : null;

    private static string Sign(string written) => written.ToLowerInvariant().TrimEnd('.') switch
    {
        "" or "between" or "from" => "",
        "<" or "<=" or "max" or "maximum" or "up to" or "less than" or "at most" or "below" or "under" => "<=",
        _ => ">=",
    };

    private static string Without(string piece, Match match) =>
        (piece[..match.Index].TrimEnd() + " " + piece[(match.Index + match.Length)..].TrimStart()).Trim()
            .TrimEnd(':', '=', '-', '.', '(', '\t', ' ').TrimStart(':', '=', '-', ')', ' ');

    private const string Figures =
        @"(?<about>~|ca?\.|circa|approx(?:\.|imately)?|about)?\s*(?<sign><=?|>=?|max(?:imum|\.)?|min(?:imum|\.)?|between|from|up to|less "
            + @"than|more than|at most|at least|below|under|above|over)?\s*(?<low>[0-9]{1,9}(?:[.,][0-9]{1,9})?)\s*%?\s*(?:(?:-|to|and)\s*(?:<=?\s*)?(?<high>[0-9]{1,9}(?:[.,][0-9]{1,9})?)\s*)?(?:(?:wt\.?|mass|weight|w/w|m/m)[\s-]?)?(?:%|per\s?cent\b|pct\b)(?:\s*\(?(?:w/w|m/m|by weight|by mass|wt|or less)\)?)?";

    // A figure that another word follows belongs to the name: "Sorbitol 70% solution".
    [GeneratedRegex(@"(?:(?<=[\s:=.)-])|^)[\[(]?\s*" + Figures + @"\s*[\])]?\s*[.]?\s*$", RegexOptions.IgnoreCase)]
    private static partial Regex AtEnd();

    [GeneratedRegex(@"^\s*(?:[\[(]\s*" + Figures + @"\s*[\])]|" + Figures + @")(?=\s+(?!solution\b|active\b|aq\b)\S)",
        RegexOptions.IgnoreCase)]
    private static partial Regex AtStart();

    [GeneratedRegex(@"[\[(]?\s*\b(?:q\.?\s?s\.?|quantum satis|q\.?\s?s\.?\s?p\.?|c\.?\s?s\.?\s?p\.?|balance|remainder|rest|to 100\s*%?|ad "
        + @"100\s*%?|traces?)(?:\s*(?:to|ad)\s*100\s*%?)?\s*[\])]?\s*$", RegexOptions.IgnoreCase)]
    private static partial Regex Balance();
}
