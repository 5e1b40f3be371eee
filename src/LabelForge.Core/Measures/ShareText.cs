namespace LabelForge.Measures;

/// <summary>Reads a supplier's figure for a share: <c>5 %</c>, <c>10-30 %</c>, <c>&lt;= 1 %</c>,
/// <c>at least 2 %</c> or <c>&gt;= 2 %</c>.</summary>
public static partial class ShareText
{
    /// <summary>Reads a share or a range of shares.</summary>
    public static Parsed<ShareRange> Parse(string text)
    {
        var match = Shape().Match(text.Trim());
        if (!match.Success)
            return Parsed<ShareRange>.Refused("share.not-a-share", ("text", text.Trim()));
        var low = Number(match.Groups["low"].Value);
        var high = match.Groups["high"].Success ? Number(match.Groups["high"].Value) : low;
        var sign = match.Groups["sign"].Value.ToLowerInvariant();
        if (low is null or > 100 || high is null or > 100)
            return Parsed<ShareRange>.Refused("share.more-than-whole", ("text", text.Trim()));
        if (sign.Length > 0 && match.Groups["high"].Success)
            return Parsed<ShareRange>.Refused("share.sign-and-range", ("text", text.Trim()));
        if (low > high)
            return Parsed<ShareRange>.Refused("share.falls", ("text", text.Trim()), ("high", high), ("low", low));
        var (from, to) = sign switch
        {
            "<" or "<=" or "≤" or "at most" or "up to" or "less than" => (0m, low.Value),
            ">" or ">=" or "≥" or "at least" or "more than" => (low.Value, 100m),
            _ => (low.Value, high.Value),
        };
        return Parsed<ShareRange>.Of(new ShareRange(Share.FromPercent(from), Share.FromPercent(to)));
    }

    private static decimal? Number(string text) =>
        PlainFigure.Read(text);

    [GeneratedRegex(@"^(?<sign><=|>=|<|>|≤|≥|at most|up to|less than|at least|more "
        + @"than)?\s*(?<low>[0-9]*\.?[0-9]+)\s*%?\s*(?:(?:-|–|to)\s*(?<high>[0-9]*\.?[0-9]+)\s*)?%$", RegexOptions.IgnoreCase)]
    private static partial Regex Shape();
}
