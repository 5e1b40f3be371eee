namespace LabelForge.Web.Workbench;

/// <summary>Reads amounts, sums and counts as people write them, and gives them as the files and the books have them.</summary>
/// <remarks>
/// What is read strictly already stays to the letter. What could mean two things is not guessed at: "1,000 g" may be one gram or
/// a thousand, and "2 %" does not say of what. It is left as it is, so that its reader asks.
/// </remarks>
public static partial class Loose
{
    private static readonly Dictionary<string, string> Fractions = new()
    {
        ["½"] = "1/2",
        ["¼"] = "1/4",
        ["¾"] = "3/4",
        ["⅓"] = "1/3",
        ["⅔"] = "2/3",
        ["⅛"] = "1/8",
        ["⅜"] = "3/8",
        ["⅝"] = "5/8",
        ["⅞"] = "7/8",
    };

    private static readonly (string Written, string Unit)[] Units =
    [
        ("milligrams?|mgs", "mg"), ("kilograms?|kilos?|kgs", "kg"), ("grams?|grammes?|gr|gms?", "g"),
        ("fluid ounces?|fl\\.? ?ozs?\\.?|floz", "fl oz"), ("ounces?|ozs\\.?|oz\\.", "oz"), ("pounds?|lbs\\.?|lb\\.", "lb"),
        ("millilit(?:er|re)s?|mls?|ML", "mL"), ("lit(?:er|re)s?|l", "L"), ("teaspoons?|tsps?\\.?", "tsp"),
        ("tablespoons?|tbsps?\\.?|Tbs?\\.?", "tbsp"), ("drop|drps?", "drops"),
    ];

    /// <summary>An amount: "½ tsp" is 0.5 tsp, "0,5 g" 0.5 g, "1 lb 11 oz" 27 oz, a cup sixteen tablespoons.</summary>
    public static string Amount(string typed)
    {
        if (Measures.Amount.Parse(typed).IsValue)
            return typed;
        var text = Fraction(Point(typed.Trim()));
        if (PoundsAndOunces().Match(text) is { Success: true } both)
            text = Number(Read(both, "lb") * 16 + Read(both, "oz")) + " oz";
        // As the kitchen measure: 1 cup is 16 tablespoons (NIST Handbook 44, appendix C: 8 fluid ounces).
        else if (Cups().Match(text) is { Success: true } cups)
            text = Number(Read(cups, "n") * 16) + " tbsp";
        else if (WithUnit().Match(text) is { Success: true } one)
            text = $"{one.Groups["n"].Value} {Unit(one.Groups["unit"].Value)}{one.Groups["rest"].Value}";
        return Measures.Amount.Parse(text).IsValue ? text : typed;
    }

    /// <summary>A sum of money: "$11.99" and "11,99 €" are 11.99.</summary>
    public static string Money(string typed)
    {
        var text = Point(Currency().Replace(typed, "").Trim());
        return PlainFigure.Read(text) is not null ? text : typed;
    }

    /// <summary>A count: "8 bars" is 8.</summary>
    public static string Count(string typed) =>
        CountOfThings().Match(typed.Trim()) is { Success: true } count ? count.Groups["n"].Value : typed;

    /// <summary>A figure with whatever stands behind it: "0,96 g/mL" is 0.96 g/mL. What has
    /// another sense is left alone: "1,000".</summary>
    public static string Decimals(string typed) => Point(typed);

    // A comma with one or two figures behind it parts decimals, as in most of Europe; with three it may part thousands.
    private static string Point(string text) => DecimalComma().Replace(text, ".");

    private static string Fraction(string text)
    {
        foreach (var (sign, written) in Fractions)
            text = text.Replace(sign, $" {written}", StringComparison.Ordinal);
        return MixedFraction().Replace(text.Trim(), m =>
        {
            var below = decimal.Parse(m.Groups["below"].Value, CultureInfo.InvariantCulture);
            if (below == 0)
                return m.Value;
            var whole = m.Groups["whole"].Success ? decimal.Parse(m.Groups["whole"].Value, CultureInfo.InvariantCulture) : 0;
            return Number(whole + decimal.Parse(m.Groups["above"].Value, CultureInfo.InvariantCulture) / below);
        });
    }

    private static string Unit(string written)
    {
        var unit = written.Trim();
        foreach (var (pattern, known) in Units)
        {
            if (Regex.IsMatch(unit, $"^(?:{pattern})\\z", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant))
                return known;
        }
        return unit;
    }

    private static decimal Read(Match match, string group) => decimal.Parse(match.Groups[group].Value, CultureInfo.InvariantCulture);

    private static string Number(decimal value) => value.ToString("0.####", CultureInfo.InvariantCulture);

    [GeneratedRegex(@"(?<=[0-9]),(?=[0-9]{1,2}(?![0-9]))")]
    private static partial Regex DecimalComma();

    [GeneratedRegex(@"^(?:(?<whole>[0-9]{1,6}) +)?(?<above>[0-9]{1,4}) ?/ ?(?<below>[0-9]{1,4})(?![0-9])")]
    private static partial Regex MixedFraction();

    [GeneratedRegex(@"^(?<lb>[0-9]{1,6}) ?(?:lbs?\.?|pounds?),? +(?:and +)?(?<oz>[0-9]{1,6}(?:\.[0-9]{1,6})?) ?(?:ozs?\.?|ounces?)\z",
        RegexOptions.IgnoreCase)]
    private static partial Regex PoundsAndOunces();

    [GeneratedRegex(@"^(?<n>[0-9]{1,6}(?:\.[0-9]{1,6})?) ?(?:US )?cups?\z", RegexOptions.IgnoreCase)]
    private static partial Regex Cups();

    [GeneratedRegex(@"^(?<n>[0-9]{1,9}(?:\.[0-9]{1,9})?) ?(?<unit>[A-Za-z%][A-Za-z. ]{0,20}?)(?<rest>(?: of .{1,80})?)\z")]
    private static partial Regex WithUnit();

    [GeneratedRegex(@"^\s*(?:[$€£]|USD|EUR|GBP|CAD|C\$|US\$)\s*|\s*(?:[$€£]|USD|EUR|GBP|CAD)\s*\z", RegexOptions.IgnoreCase)]
    private static partial Regex Currency();

    [GeneratedRegex(@"^(?<n>[0-9]{1,7}) ?(?:pieces?|pcs?\.?|bars?|sheets?|labels?|jars?|bottles?|x)\z", RegexOptions.IgnoreCase)]
    private static partial Regex CountOfThings();
}
