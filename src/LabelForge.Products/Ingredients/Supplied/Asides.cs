namespace LabelForge.Ingredients.Supplied;

/// <summary>
/// What stands beside a name and is no part of it: what it is for, where it comes from, a number of a register; in brackets,
/// or behind a dash. It is taken out of the name and kept as a remark.
/// </summary>
internal sealed partial record Asides(string Name, CasNumber? Cas, string? Share, ImmutableArray<string> Notes)
{
    private const int MostParts = 6;

    /// <summary>Takes them out of a piece of a list.</summary>
    public static Asides Of(string piece)
    {
        var notes = ImmutableArray.CreateBuilder<string>();
        CasNumber? cas = null;
        string? share = null;
        var left = Bracket().Replace(piece, m =>
        {
            string[] parts = [.. m.Groups["in"].Value
                .Split([',', ';'], StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries)];
            if (parts.Length is 0 or > MostParts || !parts.All(p => IsAside(p) || IsNumbers(p)))
                return m.Value;
            foreach (var part in parts)
            {
                if (Cas_().Match(part) is { Success: true } number
                    && CasNumber.Parse(number.Groups["cas"].Value) is { IsValue: true, Value: var read })
                    cas ??= read;
                else if (IsNumbers(part))
                    share ??= part;
                else
                    notes.Add($"says: {part}");
            }
            return " ";
        });
        if (Dashed().Match(left) is { Success: true } dash && IsPurpose(dash.Groups["note"].Value))
        {
            notes.Add($"says: {dash.Groups["note"].Value.Trim()}");
            left = left[..dash.Index] + left[(dash.Index + dash.Length)..];
        }
        return new Asides(left.Trim(), cas, share, notes.ToImmutable());
    }

    private static bool IsAside(string part) => Cas_().IsMatch(part) || Ec().IsMatch(part) || IsPurpose(part);

    private static bool IsPurpose(string part) => Purpose().IsMatch(part.Trim());

    // "(25-30)": a range without its percent sign. One whole figure alone may be a footnote's.
    private static bool IsNumbers(string part) => BareRange().IsMatch(part);

    /// <summary>A bare range made into a share.</summary>
    public static ShareRange Range(string numbers)
    {
        var match = BareRange().Match(numbers);
        var parsed = ShareText.Parse($"{match.Groups["low"].Value.Replace(',', '.')}-{match.Groups["high"].Value.Replace(',', '.')} %");
        return parsed.IsValue
            ? parsed.Value
            : throw new InputException("supplied.share-in-aside", ("numbers", numbers), ("inner", parsed.Problem));
    }

    [GeneratedRegex(@"[(\[](?<in>[^()\[\]]*)[)\]]")]
    private static partial Regex Bracket();

    [GeneratedRegex(@"^(?:CAS(?:[\s-]*(?:no|number|nr|#))?\.?\s*[:#]?\s*)?(?<cas>[0-9]{2,7}-[0-9][0-9]-[0-9])$", RegexOptions.IgnoreCase)]
    private static partial Regex Cas_();

    [GeneratedRegex(@"^(?:(?:EC|EINECS|EG|CE|WE)(?:[\s-]*(?:no|number|nr))?\.?\s*[:#]?\s*)?[0-9]{3}-[0-9]{3}-[0-9]$", RegexOptions.IgnoreCase)]
    private static partial Regex Ec();

    [GeneratedRegex(@"^(?<low>[0-9]{1,2}(?:[.,][0-9]+)?)\s*(?:-|to)\s*(?<high>[0-9]{1,3}(?:[.,][0-9]+)?)$", RegexOptions.IgnoreCase)]
    private static partial Regex BareRange();

    [GeneratedRegex(@"\s+-\s*(?<note>[\p{L}][\p{L} /-]{2,40})(?=\s*(?:[(\[]|[<>=~]|[0-9]|$))", RegexOptions.IgnoreCase)]
    private static partial Regex Dashed();

    [GeneratedRegex(@"^(?:(?:as\s+)?(?:an?\s+)?(?:natural\s+|mild\s+|skin\s+|plant\s+)?(?:ph\s*(?:adjuster|regulator|control|balancer)|preservative|emulsifier|emulsifying agent|co-?emulsifier|thickener|chelat(?:or|ing agent)|chelant|antioxidant|humectant|emollient|surfactant|co-?surfactant|cleanser|cleansing agent|foam(?:ing agent|er| booster)?|solvent|solubili[sz]er|opacifier|colou?r(?:ant|ing)?|pigment|fragrance component|perfume|moisturi[sz](?:er|ing)|stabili[sz]er|viscosity (?:modifier|agent|control)|conditioner|conditioning agent|soap base|base|filler|exfoliant|hardener|saponification agent|neutrali[sz]er|lye|active)(?:\s+agent)?|(?:derived\s+)?from\s+[\p{L} ,&/-]{3,40}|[\p{L}]+[- ]derived|vegetable(?:[- ](?:based|derived|origin|source))?|plant[- ](?:based|derived|origin)|natural(?: origin)?|naturally derived|vegan|kosher|(?:usp|bp|ph\.? ?eur\.?|ep|fcc|nf|usp/ep|food|cosmetic|technical|pharma)(?:\s*grade)?|non[- ]gmo|gmo[- ]free|rspo(?: (?:mb|sg|certified))?|palm[- ]free|sustainable(?: palm)?|nano[- ]?free|saponified|deioni[sz]ed|demineralised|distilled|purified|refined|unrefined|virgin|cold[- ]pressed|conservateur|émulsifiant|konservierungsmittel|emulgator|conservante|emulsionante|conservante natural|conservatore|emulsionante|conserveermiddel|konserwant|emulgator|régulateur de ph|säureregulator|together at most [0-9.]+ percent)$", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant, 20_000)]
    private static partial Regex Purpose();
}
