namespace LabelForge.Checks.Subjects;

/// <summary>
/// Several pieces in one package: the number, what each holds, and the total (16 CFR 500.27); of similar pieces that are not identical
/// the number and the figure by product, and the total last (16 CFR 500.28). What each holds is looked for with the word each, in
/// grams or millilitres; the total with the word total.
/// </summary>
internal static partial class TotalChecks
{
    // A total is a sum of rounded figures: half of the last figure of each piece, and half of its own.
    private const decimal Rounding = 0.5m;

    public static void Check(CheckCase label)
    {
        var text = label.Label.Text.Text;
        if (Times().Match(text) is { Success: true } times)
        {
            Multiplied(label, times);
            return;
        }
        if (Each().Match(text) is not { Success: true } each
            || Count().Matches(text).Concat(Before().Matches(text[(text.LastIndexOf('\n', each.Index) + 1)..each.Index])).Select(Number)
                .FirstOrDefault(n => n > 1) is not (> 1 and var pieces))
            return;
        var one = Figure(each);
        if (Total().Match(text) is not { Success: true } total)
        {
            label.Tell(label.SoldAs == Recipes.SoldAs.Soap ? "net-quantity.missing/total" : "net-quantity.missing/total-cosmetic",
                each.Value.Trim(), pieces, each.Value.Trim());
            return;
        }
        if (Kinds(text, each, total) is { Length: > 1 } kinds)
        {
            Several(label, kinds, total);
            return;
        }
        var (sum, most) = (pieces * one, pieces * Step(each) * Rounding + Step(total) * Rounding);
        if (Math.Abs(Figure(total) - sum) > most)
            label.Tell("net-quantity.overstated/total", total.Value.Trim(), total.Value.Trim(), pieces, Shown(one, each), Shown(sum, each),
                Shown(Figure(total), total));
    }

    // "6 x 15 g = 90 g", "3 × 100 g (300 g)".
    private static void Multiplied(CheckCase label, Match times)
    {
        var (pieces, one, total) = (Number(times), Single().Match(times.Groups["one"].Value), Single().Match(times.Groups["all"].Value));
        var sum = pieces * Figure(one);
        if (Math.Abs(Figure(total) - sum) > pieces * Step(one) * Rounding + Step(total) * Rounding)
            label.Tell("net-quantity.overstated/total", times.Value.Trim(), times.Value.Trim(), pieces, Shown(Figure(one), one),
                Shown(sum, one), Shown(Figure(total), total));
    }

    // What differs stands by name, parted by semicolons, and the total is of all of them.
    private static (decimal Sum, decimal Most)[] Kinds(string text, Match each, Match total)
    {
        var begin = text.LastIndexOf('\n', each.Index) + 1;
        // The total stands last, in the same line or in the next.
        return total.Index < begin || text[begin..total.Index].TrimEnd().Contains('\n') ? [] :
        [
            .. text[begin..total.Index].Split(';').Where(part => !string.IsNullOrWhiteSpace(part)).Select(part =>
                Each().Match(part) is { Success: true } several && Number(part[..several.Index]) is > 0 and var number
                    ? (number * Figure(several), number * Step(several) * Rounding)
                    : Single().Match(part) is { Success: true } one ? (Figure(one), Step(one) * Rounding) : (0m, 0m)),
        ];
    }

    // "2 soap bars" by the noun, else "1 Moss Wall, 2 Sea Lavender" by the numbers that stand before names.
    private static int Number(string before) =>
        Count().Match(before) is { Success: true } count ? Number(count) : Named().Matches(before).Sum(Number);

    private static int Number(Match match) => int.Parse(match.Groups["n"].Value, CultureInfo.InvariantCulture);

    private static void Several(CheckCase label, (decimal Sum, decimal Most)[] kinds, Match total)
    {
        var sum = kinds.Sum(k => k.Sum);
        // Where a part has no figure that is read here, nothing is known of the sum.
        if (kinds.All(k => k.Sum > 0) && Math.Abs(Figure(total) - sum) > kinds.Sum(k => k.Most) + Step(total) * Rounding)
            label.Tell("net-quantity.overstated/total", total.Value.Trim(), total.Value.Trim(), kinds.Length, "what is in it",
                Shown(sum, total), Shown(Figure(total), total));
    }

    private static decimal Figure(Match match) =>
        decimal.Parse(match.Groups["figure"].Value.Replace(',', '.'),
            CultureInfo.InvariantCulture) * (match.Groups["unit"].Value.ToUpperInvariant() is "KG" or "L" ? 1000m : 1m);

    private static decimal Step(Match match) =>
        (match.Groups["figure"].Value.IndexOfAny(['.', ',']) is >= 0 and var point
            ? (decimal)Math.Pow(10, point + 1 - match.Groups["figure"].Value.Length)
            : 1m) * (match.Groups["unit"].Value.ToUpperInvariant() is "KG" or "L" ? 1000m : 1m);

    private static string Shown(decimal figure, Match match) =>
        figure.ToString("0.###",
            CultureInfo.InvariantCulture) + (match.Groups["unit"].Value.EndsWith("g", StringComparison.OrdinalIgnoreCase) ? " g" : " mL");

    [GeneratedRegex(@"(?<![0-9.,])(?<n>[0-9]{1,3})\s*[x×*]\s*(?<one>[0-9]{1,5}(?:[.,][0-9]{1,2})?\s*(?:kg|g|ml|l))\s*[=(℮e,:]+\s*(?:total:?\s*)?"
        + @"(?<all>[0-9]{1,5}(?:[.,][0-9]{1,2})?\s*(?:kg|g|ml|l)\b)", RegexOptions.IgnoreCase)]
    private static partial Regex Times();

    [GeneratedRegex(@"\(?\s*(?<figure>[0-9]{1,5}(?:[.,][0-9]{1,2})?)\s*(?<unit>kg|g|ml|l)\s*\)?\s*each\b", RegexOptions.IgnoreCase)]
    private static partial Regex Each();

    [GeneratedRegex(@"\(?\s*(?<figure>[0-9]{1,5}(?:[.,][0-9]{1,2})?)\s*(?<unit>kg|g|ml|l)\b", RegexOptions.IgnoreCase)]
    private static partial Regex Single();

    [GeneratedRegex(@"(?:^|[,:])\s*(?<n>[0-9]{1,3})\s+(?!(?:oz|fl|lbs?|k?g|m?l)\b)\p{L}", RegexOptions.IgnoreCase)]
    private static partial Regex Named();

    [GeneratedRegex(@"\btotal\b[^\n]{0,60}?(?<figure>[0-9]{1,5}(?:[.,][0-9]{1,2})?)\s*(?<unit>kg|g|ml|l)\b", RegexOptions.IgnoreCase)]
    private static partial Regex Total();

    // "6 fizzies, net wt 1 oz": what the pieces are called, on the line of what each holds.
    [GeneratedRegex(@"(?<![0-9.,/])(?<n>[0-9]{1,3})\s+(?!(?:fl|oz|ounces?|lbs?|pounds?|k?g|m?l|grams?)\b)\p{L}{3,}", RegexOptions.IgnoreCase)]
    private static partial Regex Before();

    [GeneratedRegex(@"(?<![0-9.,/])(?<n>[0-9]{1,3})\s*(?:x\s*)?(?:[\p{L}-]+\s+){0,3}(?:bars?|soaps?|pieces?|tins?|tubes?|jars?|bottles?|balms?|bombs?|count)\b", RegexOptions.IgnoreCase)]
    private static partial Regex Count();
}
