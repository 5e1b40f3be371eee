using LabelForge.Quantities;

namespace LabelForge.Checks.Reading;

/// <summary>One figure with its unit as it stands on a label.</summary>
/// <param name="Span">Its place.</param>
/// <param name="Figure">The figure.</param>
/// <param name="Unit">The unit, in one spelling: oz, fl oz, lb, pt, qt, gal, g, kg, mg, mL, cL, L.</param>
/// <param name="Places">Decimal places written.</param>
/// <param name="Digits">Significant digits written.</param>
public sealed record ReadMeasure(TextSpan Span, decimal Figure, string Unit, int Places, int Digits)
{
    /// <summary>The system the unit belongs to.</summary>
    public MeasureSystem System => Unit is "g" or "kg" or "mg" or "mL" or "cL" or "L" ? MeasureSystem.Metric : MeasureSystem.Customary;

    /// <summary>Whether the unit measures volume.</summary>
    public bool IsVolume => Unit is "fl oz" or "pt" or "qt" or "gal" or "mL" or "cL" or "L";

    /// <summary>How many grams or millilitres one unit is, exact (NIST Handbook 44, Appendix C).</summary>
    public decimal Size => SizeOf(Unit);

    /// <summary>How many grams or millilitres one of a unit is, exact (NIST Handbook 44, Appendix C).</summary>
    public static decimal SizeOf(string unit) => unit switch
    {
        "oz" => Mass.GramsPerOunce,
        "lb" => Mass.GramsPerPound,
        "fl oz" => Volume.MillilitresPerFluidOunce,
        "pt" => Volume.MillilitresPerFluidOunce * 16m,
        "qt" => Volume.MillilitresPerFluidOunce * 32m,
        "gal" => Volume.MillilitresPerFluidOunce * 128m,
        "kg" or "L" => 1000m,
        "cL" => 10m,
        "mg" => 0.001m,
        _ => 1m,
    };
}

/// <summary>Finds figures with units of mass or volume in text, in the many ways people write them.</summary>
public static partial class MeasureReader
{
    /// <summary>The measures in the text, in order.</summary>
    public static ImmutableArray<ReadMeasure> Read(string text) =>
        [.. Measure().Matches(text).Concat(UnitFirst().Matches(text)).OrderBy(m => m.Index).Select(Of).OfType<ReadMeasure>()];

    private static ReadMeasure? Of(Match match)
    {
        var written = match.Groups["figure"].Value.Trim();
        if (FigureOf(written) is not { } read || read.Figure <= 0 || read.Figure > 1_000_000m)
            return null;
        return new(new TextSpan(match.Index, match.Length), read.Figure, UnitOf(match.Groups["unit"].Value), read.Places, read.Digits);
    }

    private static string UnitOf(string written)
    {
        var unit = Spaces().Replace(written.ToLowerInvariant().Replace(".", ""), "");
        return unit switch
        {
            "мл" or "милилитър" or "милилитра" or "милилитри" => "mL",
            "кг" or "χλγ" => "kg",
            "л" => "L",
            "cl" or "сл" => "cL",
            _ when unit.StartsWith('г') || unit.StartsWith('γ') => "g",
            _ when unit.StartsWith("fl", StringComparison.Ordinal) || unit == "ozfl" => "fl oz",
            _ when unit.StartsWith('o') => "oz",
            _ when unit.StartsWith("lb", StringComparison.Ordinal) || unit.StartsWith("po", StringComparison.Ordinal) => "lb",
            _ when unit.StartsWith('k') => "kg",
            _ when unit.StartsWith("mg", StringComparison.Ordinal) || unit.StartsWith("millig", StringComparison.Ordinal) => "mg",
            _ when unit.StartsWith('m') || unit == "cc" => "mL",
            _ when unit.StartsWith("ga", StringComparison.Ordinal) => "gal",
            _ when unit.StartsWith('g') => "g",
            _ when unit.StartsWith('l') => "L",
            _ when unit.StartsWith('p') => "pt",
            _ => "qt",
        };
    }

    /// <summary>A figure as people write it: <c>4</c>, <c>4.25</c>, <c>4,25</c>, <c>1,000</c>, <c>1 1/2</c>, <c>1½</c>.</summary>
    private static (decimal Figure, int Places, int Digits)? FigureOf(string written)
    {
        if (Common().Match(written) is { Success: true } common)
        {
            var below = decimal.Parse(common.Groups["below"].Value, CultureInfo.InvariantCulture);
            var whole = common.Groups["whole"].Success ? decimal.Parse(common.Groups["whole"].Value, CultureInfo.InvariantCulture) : 0m;
            // A common fraction is exact: it counts as written to the two places that 21 CFR 701.13(d) allows a decimal.
            return below == 0 ? null : (whole + (decimal.Parse(common.Groups["above"].Value, CultureInfo.InvariantCulture) / below), 2, 3);
        }
        if (written.Length > 0 && char.GetNumericValue(written[^1]) is > 0 and < 1 and var part)
        {
            var whole = written[..^1].Trim();
            return (decimal.TryParse(whole, NumberStyles.None, CultureInfo.InvariantCulture, out var w)
                ? w + (decimal)part
                : (decimal)part, 2, 3);
        }
        var plain = Thousands().IsMatch(written) ? written.Replace(",", "") : written.Replace(',', '.');
        if (PlainFigure.Read(plain) is not { } figure)
            return null;
        var point = plain.IndexOf('.');
        return (figure, point < 0 ? 0 : plain.Length - point - 1, plain.Replace(".", "").TrimStart('0').Length);
    }

    [GeneratedRegex(@"(?<![\w.,#]|[0-9][/-])(?<figure>[0-9]{1,4}\s+[0-9]{1,2}/[0-9]{1,2}|[0-9]{1,2}/[0-9]{1,2}|[0-9]{0,4}\s?[½¼¾⅓⅔⅛⅜⅝⅞]|[0-9]{1,3}(?:,[0-9]{3})+(?:\.[0-9]{1,4})?|[0-9]{0,6}[.,][0-9]{1,4}|[0-9]{1,6})\s*-?\s?(?:(?:U\.?\s?S\.?A?\.?|imp(?:erial)?\.?)\s)?(?<unit>милилит(?:ър|ра|ри)|грама?|кг|мл|гр|г|л|γραμμάρια|γρ|χλγ|fl(?:uid)?\.?\s*o(?:z|unces?)|oz\.?\s?fl|ounces?|ozs?|lbs?|pounds?|kilogram(?:me)?s?|kgs?|gramm?(?:e[nsr]?|[oa]s?|ů|ů|ov|ai|um|ja|[iunsy])?|gms?|grs?|g|milligrams?|mgs?|mil+ilitr\p{L}{0,4}|millilit(?:er|re)s?|mls?|cls?|cc|lit(?:er|re)s?|l|pints?|pt|quarts?|qt|gallons?|gal)(?![\p{L}0-9%]|\.\w|-\p{L})\.?", RegexOptions.IgnoreCase)]
    private static partial Regex Measure();

    // "ml 75", as in Italy: the unit before the figure, alone in its line or part.
    [GeneratedRegex(@"(?<=^|[\n|•·–—]\s{0,4}|(?:netto|contenuto|contenido|inhalt|inhoud)\s*:?\s{1,4})(?<unit>ml|cl|gr|g|kg)\.?\s?(?<figure>[0-9]{1,4}(?:[.,][0-9]{1,2})?)(?=\s*(?:$|[\n|•·℮;–—]|e\b))", RegexOptions.IgnoreCase)]
    private static partial Regex UnitFirst();

    [GeneratedRegex(@"^(?:(?<whole>[0-9]+)\s+)?(?<above>[0-9]+)/(?<below>[0-9]+)$")]
    private static partial Regex Common();

    [GeneratedRegex(@"^[0-9]{1,3}(,[0-9]{3})+(\.[0-9]+)?$")]
    private static partial Regex Thousands();

    [GeneratedRegex(@"\s+")]
    private static partial Regex Spaces();
}
