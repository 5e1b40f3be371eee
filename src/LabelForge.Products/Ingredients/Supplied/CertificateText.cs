namespace LabelForge.Ingredients.Supplied;

/// <summary>What a fragrance house's certificate says: highest shares by IFRA category, and allergens in the oil.</summary>
/// <param name="Limits">The category, as <c>5A</c>, and the highest percentage of the oil in the
/// finished product. Where a paper says two, the lower.</param>
/// <param name="Allergens">The name of Annex III to Regulation (EC) No 1223/2009, and its share of the oil.</param>
/// <param name="Unread">Lines that name a category or an allergen but whose figure could not be told; for a person to read.</param>
public sealed record Certificate(ImmutableArray<(string Category, decimal Percent)> Limits,
    ImmutableArray<(string Name, string Share)> Allergens, ImmutableArray<string> Unread);

/// <summary>Reads a certificate row by row, as it is copied from a paper or a PDF.</summary>
/// <remarks>
/// Houses lay these papers out as they like; what is common to them is a row for each category of the IFRA Standards, and a row
/// for each allergen with its name, often its CAS number, and a percentage or parts per million. Nothing else is read.
/// A maker compares what was read with the paper before using it.
/// </remarks>
public static partial class CertificateText
{
    /// <summary>The most characters that are taken for a certificate.</summary>
    public const int MostCharacters = 400_000;

    private const int LongestRow = 400;

    /// <summary>Reads a certificate.</summary>
    /// <param name="text">Its words.</param>
    /// <param name="known">The allergens that are named one by one.</param>
    /// <exception cref="InputException">The text is longer than any certificate.</exception>
    public static Certificate Read(string text, FragranceAllergens known)
    {
        if (text.Length > MostCharacters)
            throw new InputException("supplied.certificate-too-long");
        var limits = new Dictionary<string, decimal>(StringComparer.Ordinal);
        var allergens = new Dictionary<string, string>(StringComparer.Ordinal);
        var unread = ImmutableArray.CreateBuilder<string>();
        // A column headed with the percent sign gives bare figures below.
        var percentColumn = text.Contains('%') || text.Contains("percent", StringComparison.OrdinalIgnoreCase);
        foreach (var row in text.Split('\n').Select(r => Spaces().Replace(r, " ").Trim()).Where(r => r.Length is > 0 and <= LongestRow))
        {
            if (CategoryRow().Match(row) is { Success: true } category)
            {
                var rest = row[(category.Index + category.Length)..];
                if (Limit(rest, percentColumn) is not { } percent)
                {
                    if (rest.Any(char.IsAsciiDigit))
                        unread.Add(row);
                    continue;
                }
                var key = category.Groups["number"].Value + category.Groups["letter"].Value.ToUpperInvariant();
                limits[key] = limits.TryGetValue(key, out var earlier) ? Math.Min(earlier, percent) : percent;
            }
            else if (Allergen(row, known) is { } allergen)
            {
                if (Shares(row).LastOrDefault() is { } share)
                    allergens[allergen.Name] = share;
                else if (CasNumbers().Replace(row, "").Any(char.IsAsciiDigit))
                    unread.Add(row);
            }
        }
        return new Certificate([.. limits.OrderBy(l => Order(l.Key)).Select(l => (l.Key, l.Value))],
            [.. allergens.OrderBy(a => a.Key, StringComparer.Ordinal).Select(a => (a.Key, a.Value))], unread.ToImmutable());
    }

    private static decimal? Limit(string rest, bool percentColumn)
    {
        if (NotRestricted().IsMatch(rest))
            return 100m;
        if (NotPermitted().IsMatch(rest))
            return 0m;
        var match = Percent().Matches(rest).LastOrDefault() ?? (percentColumn ? LastFigure().Match(rest) : null);
        return match is { Success: true } && Figure(match.Groups["figure"].Value) is { } figure and <= 100 ? figure : null;
    }

    private static FragranceAllergen? Allergen(string row, FragranceAllergens known)
    {
        foreach (Match cas in CasNumbers().Matches(row))
        {
            if (known.All.FirstOrDefault(a => a.Cas.Any(c => c.ToString() == cas.Value)) is { } byNumber)
                return byNumber;
        }
        var name = NameRow().Match(row).Groups["name"].Value.Trim(' ', '-', '*', '.', ':', ',', '|', '\t');
        return name.Length is > 2 and <= 120 ? known.Find(name) : null;
    }

    private static IEnumerable<string> Shares(string row)
    {
        foreach (Match match in ShareOf().Matches(CasNumbers().Replace(row, " ")))
        {
            var (sign, low, high) = (match.Groups["sign"].Value, Figure(match.Groups["low"].Value),
                match.Groups["high"].Success ? Figure(match.Groups["high"].Value) : null);
            var per = match.Groups["unit"].Value == "%" ? 1m : 10_000m;
            if (low is { } from && from / per <= 100 && (high ?? 0) / per <= 100 && (from > 0 || high > 0))
                yield return high is { } to
                    ? $"{Written(from / per)}-{Written(to / per)} %"
                    : $"{(sign.Length > 0 ? sign.Replace("≤", "<=", StringComparison.Ordinal) + " " : "")}{Written(from / per)} %";
        }
    }

    private static decimal? Figure(string text) =>
        PlainFigure.Read(text.Replace(',', '.')) is { } figure
            ? figure
            : null;

    private static string Written(decimal figure) => figure.ToString("0.##########", CultureInfo.InvariantCulture);

    private static (int, string) Order(string category) =>
        (int.Parse(category.TrimEnd('A', 'B', 'C', 'D'), CultureInfo.InvariantCulture), category);

    [GeneratedRegex(@"\s+")]
    private static partial Regex Spaces();

    // IFRA Standards since the 49th Amendment: categories 1 to 12, some with a letter. Older
    // papers' "class" has other categories, and is not read.
    [GeneratedRegex(@"^\W{0,3}(?:IFRA\s+)?cat(?:egory|\.)?\s*(?<number>1[0-2]|[1-9])\s?\.?\s?\(?(?<letter>[A-D](?![A-Za-z]))?\)?(?![0-9.,]*[0-9]\s*%)", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant, 20_000)]
    private static partial Regex CategoryRow();

    [GeneratedRegex(@"(?<figure>[0-9]{1,3}(?:[.,][0-9]{1,8})?)\s*%", RegexOptions.CultureInvariant, 20_000)]
    private static partial Regex Percent();

    [GeneratedRegex(@"(?:^|\s)(?<figure>[0-9]{1,3}(?:[.,][0-9]{1,8})?)$", RegexOptions.CultureInvariant, 20_000)]
    private static partial Regex LastFigure();

    [GeneratedRegex(@"\b(?:not restricted|no restriction|unrestricted|no limit)", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant,
        1000)]
    private static partial Regex NotRestricted();

    [GeneratedRegex(@"\b(?:not permitted|not allowed|not approved|not recommended|not supported|prohibited|do not use)\b",
        RegexOptions.IgnoreCase | RegexOptions.CultureInvariant, 20_000)]
    private static partial Regex NotPermitted();

    [GeneratedRegex(@"\b[0-9]{2,7}-[0-9]{2}-[0-9]\b", RegexOptions.CultureInvariant, 20_000)]
    private static partial Regex CasNumbers();

    // The name ends where a figure, a sign or a bracketed number begins.
    [GeneratedRegex(@"^(?<name>[A-Za-z0-9α-ωΑ-Ω,'’\-()/ ]*?[A-Za-z)])\W*(?=\s[<>≤≥(]?\s?[0-9]|$)", RegexOptions.CultureInvariant, 20_000)]
    private static partial Regex NameRow();

    [GeneratedRegex(@"(?<sign><=|<|≤)?\s*(?<low>[0-9]{1,7}(?:[.,][0-9]{1,8})?)\s*%?\s*(?:(?:-|–|to)\s*(?<high>[0-9]{1,7}(?:[.,][0-9]{1,8})?)\s*)?(?<unit>%|ppm\b)", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant, 20_000)]
    private static partial Regex ShareOf();
}
