namespace LabelForge.Checks.Reading;

/// <summary>A lot code as it stands on a label.</summary>
public sealed record LotRead(TextSpan Span, string Code);

/// <summary>Finds a lot or batch code: <c>Lot 26R25-01E</c>, <c>Nr partii: 26/117</c>, <c>Партида
/// № 12</c>, <c>L:0426</c>, <c>#1204</c>.</summary>
public static partial class LotReader
{
    private static readonly Lazy<Regex> Named = new(() => new Regex(
        $@"(?<![\p{{L}}])(?:{LabelWords.Alternatives(LabelWord.Lot)}|l\s?/\s?n|b\s?/\s?n|los(?=\s*(?:nr|[:#.]))|chargen?)(?![\p{{L}}])(?:[\s./-]*(?:{LabelWords.Alternatives(LabelWord.Lot)}))?[\s.-]*(?:(?:no|nr|n|num|numero|number|numer|nummer|numeris|numurs|cislo|broj|szam|szama|code|kod|id|st|c|αρ|αριθμοσ|номер)(?![\p{{L}}]))?[\s.]*[°ºª#№:.]*\s*[:#]?\s*(?<code>[a-z]{{1,3}}\s[0-9][a-z0-9./_-]{{0,20}}|[\p{{L}}0-9][\p{{L}}0-9./_#-]{{0,24}})",
        RegexOptions.CultureInvariant, TimeSpan.FromSeconds(5)));

    /// <summary>The code, or null.</summary>
    public static LotRead? Read(string text)
    {
        var folded = FoldedText.Of(text);
        foreach (var matches in new[] { Named.Value.Matches(folded), Short().Matches(text), Bare().Matches(text) })
        {
            // A code has a digit; "lot of love" and "small batch" have none.
            foreach (Match match in matches)
            {
                var at = match.Groups["code"];
                var code = text.Substring(at.Index, at.Length).TrimEnd('.', ',', ';');
                // "BN1" begins a postal code: two letters are a word for a lot only by themselves.
                var isPart = at.Index > match.Index && at.Index - match.Index <= 2 && char.IsLetter(text[at.Index - 1]);
                if (code.Any(char.IsAsciiDigit) && !isPart)
                    return new(new TextSpan(match.Index, match.Length), code);
            }
        }
        return null;
    }

    /// <summary>Words that say where the lot stands (<c>Batch: see cap</c>); null where none do.</summary>
    public static string? Elsewhere(string text) =>
        SaysWhere.Value.Match(FoldedText.Of(text)) is { Success: true } see ? text.Substring(see.Index, see.Length).Trim() : null;

    // "See" in the languages of the Union; common usage.
    private static readonly Lazy<Regex> SaysWhere = new(() => new Regex(
        $@"(?<![\p{{L}}])(?:{LabelWords.Alternatives(LabelWord.Lot)})(?![\p{{L}}])\s*(?:no\.?|nr\.?|n°|number|code)?\s*(?::\s*|(?=\s(?:see|siehe|voir|on|under|printed|stamped)\s)\s)(?:(?:(?:printed |stamped )?(?:on|under|at)(?= (?:the )?(?:base|bottom|cap|lid|crimp|can|tube|box|back|side|neck|seal|underside|tin|jar|bottle)(?![\p{{L}}]))|see|voir|siehe|vedi|vease|ver|zie|se|patrz|zob|viz|katso|ks|lasd|vezi|vt|vaata|skat|zr|βλ|вж|fech)\.?\s(?:[\p{{L}}']+ ?){{1,4}})",
        RegexOptions.CultureInvariant, TimeSpan.FromSeconds(5)));

    [GeneratedRegex(@"(?:(?<![\p{L}0-9.])[LB]\s?[:#.]\s?(?=\S*[0-9])|(?<=^|[\n|•·]\s{0,4})[Cc](?:ode|ODE)\s*[:#]?\s+(?=[A-Z]{0,3}[0-9])|(?<=^|[\n|•·]\s{0,4})(?:#|L(?=[0-9]{3}))\s?|(?<=^|[\n|•·/,;–—-]\s{0,4})[LB][\s-](?=[A-Z0-9./-]{2,25}\s*(?:$|[\n,;|•·–—])))(?<code>[A-Z0-9][A-Z0-9./_-]{1,24})(?![\p{L}0-9])")]
    private static partial Regex Short();

    // A code alone in its line or part, letters and figures in one: the law asks for no word before it. No postal code, no quantity,
    // no colour's number, no months after opening.
    [GeneratedRegex(@"(?<=^|[\n|•·]\s{0,4})(?!CI[\s-]?[0-9]{5}|[0-9]{1,2}\s?M\b|[0-9]{4}\s?[A-Z]{2}\b|[A-Z][0-9][A-Z][0-9][A-Z][0-9]\b|[A-Z]{1,2}[0-9]{1,2}[0-9][A-Z]{2}\b|(?:[A-Z]{1,2}-)?[0-9]{4,6}\b(?!-)|[0-9]+(?:[.,][0-9]+)?(?:ml|g|kg|oz|cl)\b|[0-9]{1,4}[./-][0-9]{1,2}[./-][0-9]{2,4}\b|[0-9]{1,2}[./][0-9]{4}\b)(?=[A-Z0-9./-]*[0-9][A-Z0-9./-]*[0-9])(?=[A-Z0-9./-]*[A-Z])(?<code>[A-Z0-9][A-Z0-9./-]{3,15})(?=\s*(?:$|[\n|•·]))")]
    private static partial Regex Bare();
}
