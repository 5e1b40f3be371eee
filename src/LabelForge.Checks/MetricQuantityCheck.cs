using System.Globalization;
using LabelForge.Checks.Reading;
using LabelForge.Markets;
using LabelForge.Measures;
using LabelForge.Quantities;

namespace LabelForge.Checks;

/// <summary>Checks the quantity on a label where metric units are what the law asks for: the European Union, the United Kingdom, Canada.</summary>
public static class MetricQuantityCheck
{
    // As for the United States: what lies within this is the drawing program's rounding.
    private const decimal ToleranceMillimetres = 0.07m;

    /// <summary>The findings.</summary>
    public static IEnumerable<Finding> Find(LabelFacts facts, Market market)
    {
        var rules = RuleBook.For(market);
        if (facts.Reading.NetQuantity is not { } read)
        {
            yield return rules[market == RuleBook.MarketCa ? "net-quantity.missing" : "net-quantity.missing/label"].Find(facts.Where);
            yield break;
        }
        var all = facts.Reading.NetQuantities.SelectMany(q => q.Quantities).ToArray();
        var metric = read.In(MeasureSystem.Metric) ?? all.FirstOrDefault(q => q.System == MeasureSystem.Metric);
        var customary = read.In(MeasureSystem.Customary);
        if (metric is null)
        {
            yield return rules["net-quantity.one-system-only"].Find(read.Written, read.Written, Metric(read.Quantities[0]));
            yield break;
        }
        if (customary is not null && customary.IsVolume == metric.IsVolume && QuantityAgreement.Between(customary, metric) == Agreement.Disagree)
        {
            var exact = FormattableString.Invariant($"{customary.Metric / ReadMeasure.SizeOf(metric.LastUnit):0.###} {metric.LastUnit}");
            yield return rules["net-quantity.systems-disagree"].Find(read.Written, read.Written, Written(customary), exact, Written(metric));
        }
        foreach (var finding in Height(facts, read, metric, market, rules))
            yield return finding;
    }

    private static IEnumerable<Finding> Height(LabelFacts facts, NetQuantityRead read, ReadQuantity metric, Market market, RuleBook rules)
    {
        var steps = market.On(facts.On).Figure("net-quantity.letter-height").Table;
        // In Canada the display surface decides, in square centimetres; elsewhere the quantity does.
        var least = market == RuleBook.MarketCa ? steps.LengthAt(facts.Panel is { } panel ? panel.Area.SquareCentimetres : 0m) : steps.LengthAt(metric.Metric);
        var heights = facts.Reading.Text.Heights.Where(h => h.Span.Overlaps(read.Span)).Select(h => h.Upper).OfType<Length>().ToArray();
        if (heights.Length == 0)
        {
            yield return market == RuleBook.MarketCa
                ? rules["net-quantity.type-not-measured"].Find(read.Written, ": the label came as text, or its letters have no outlines", Millimetres(least))
                : rules["net-quantity.type-not-measured"].Find(read.Written, Millimetres(least));
            yield break;
        }
        var measured = heights.Min();
        if (measured.Millimetres + ToleranceMillimetres >= least.Millimetres)
            yield break;
        yield return market == RuleBook.MarketCa
            ? rules["net-quantity.type-too-small"].Find(read.Written, Millimetres(measured), Millimetres(least))
            : rules[read.Written.Contains('℮') ? "net-quantity.type-too-small/e-mark" : "net-quantity.type-too-small/label"].Find(read.Written, read.Written, Millimetres(measured), Millimetres(least));
    }

    private static string Metric(ReadQuantity quantity) => FormattableString.Invariant($"{Math.Floor(quantity.Metric)} {(quantity.IsVolume ? "mL" : "g")}");

    private static string Written(ReadQuantity quantity) => string.Join(" ", quantity.Measures.Select(m => FormattableString.Invariant($"{m.Figure:0.####} {(quantity.IsVolume && m.Unit == "oz" ? "fl oz" : m.Unit)}")));

    private static string Millimetres(Length length) => length.Millimetres.ToString("0.00", CultureInfo.InvariantCulture) + " mm";
}
