using System.Text.RegularExpressions;
using LabelForge.Checks.Reading;
using LabelForge.Markets;
using LabelForge.Measures;
using LabelForge.Quantities;

namespace LabelForge.Checks;

/// <summary>Checks the net quantity statement read on a label.</summary>
public static partial class LabelQuantityCheck
{
    private static readonly RuleBook Rules = RuleBook.Us;

    /// <summary>The findings.</summary>
    public static IEnumerable<Finding> Find(LabelFacts facts)
    {
        if (facts.Reading.NetQuantity is not { } read)
            return [Rules["net-quantity.missing/label"].Find(facts.Where)];
        return Systems(read, facts).Concat(Words(read, facts));
    }

    private static IEnumerable<Finding> Systems(NetQuantityRead read, LabelFacts facts)
    {
        var all = facts.Reading.NetQuantities.Where(q => q.SaysNet || ReferenceEquals(q, read)).SelectMany(q => q.Quantities).ToArray();
        var customary = read.In(MeasureSystem.Customary) ?? all.FirstOrDefault(q => q.System == MeasureSystem.Customary);
        var metric = read.In(MeasureSystem.Metric) ?? all.FirstOrDefault(q => q.System == MeasureSystem.Metric);
        if (customary is null || metric is null)
        {
            var one = read.Quantities[0];
            yield return Rules["net-quantity.one-system-only"].Find(read.Written, read.Written, customary is null ? "metric" : "US customary", Both(one, facts));
            yield break;
        }
        if (customary.IsVolume != metric.IsVolume)
        {
            yield return Rules["net-quantity.systems-disagree/dimension"].Find(read.Written, read.Written);
            yield break;
        }
        foreach (var finding in read.Quantities.Where(q => q.System == MeasureSystem.Customary).DefaultIfEmpty(customary).SelectMany(c => Compared(read, c, metric, facts)).Take(1))
            yield return finding;
        if (read.OuncesAreFluid)
            yield return Rules["net-quantity.unit"].Find(read.Written, read.Written, Both(metric, facts));
        if (facts.Kind is { } kind && kind.QuantityBy == QuantityBy.Mass && kind.IsSolid && metric.IsVolume)
        {
            yield return Rules["net-quantity.unit/kind"].Find(read.Written, read.Written, "a volume", kind.Name.ToLowerInvariant(), "weight",
                "Weigh what is in the package and write it, for example: Net Wt 4 oz (113 g)");
        }
    }

    private static IEnumerable<Finding> Compared(NetQuantityRead read, ReadQuantity customary, ReadQuantity metric, LabelFacts facts)
    {
        switch (QuantityAgreement.Between(customary, metric))
        {
            case Agreement.Disagree:
                yield return Rules["net-quantity.systems-disagree"].Find(read.Written, read.Written, Written(customary), Exact(customary, metric), Written(metric), Both(Smaller(customary, metric), facts));
                break;
            case Agreement.RoundedUp:
                yield return Rules["net-quantity.rounded-up"].Find(read.Written, Written(customary), Exact(customary, metric), Written(metric), Both(customary, facts));
                break;
        }
    }

    private static IEnumerable<Finding> Words(NetQuantityRead read, LabelFacts facts)
    {
        var around = facts.Reading.Text.Text[Math.Max(0, read.Span.Start - 14)..Math.Min(facts.Reading.Text.Text.Length, read.Span.End + 14)];
        if (Qualifier().Match(around) is { Success: true } word)
            yield return Rules["net-quantity.overstated/words"].Find(read.Written, read.Written, word.Value.ToLowerInvariant());
        if (!read.Quantities[0].IsVolume && !(read.SaysNet && read.SaysWeight))
            yield return Rules["net-quantity.form"].Find(read.Written, read.Written, "a weight is told as net weight", "Begin it with Net Wt", "(j)(2)");
        if (read.Quantities[0].IsVolume && read.SaysWeight && !read.OuncesAreFluid)
            yield return Rules["net-quantity.form"].Find(read.Written, read.Written, "a volume is no weight", "Leave out Wt: a volume stands by itself, or after Net or Net contents", "(b), (j)(2)");
        if (read.Quantities.SelectMany(q => q.Measures).FirstOrDefault(m => m.System == MeasureSystem.Customary && m.Places > 2 && !IsFraction(m, facts)) is not null)
            yield return Rules["net-quantity.form"].Find(read.Written, read.Written, "a decimal fraction has more than two places", "Cut it to two places", "(d)");
    }

    private static bool IsFraction(ReadMeasure measure, LabelFacts facts) => facts.Reading.Text.Text.Substring(measure.Span.Start, measure.Span.Length).Contains('/');

    private static ReadQuantity Smaller(ReadQuantity a, ReadQuantity b) => a.Metric <= b.Metric ? a : b;

    /// <summary>The whole statement that this quantity would make.</summary>
    private static string Both(ReadQuantity quantity, LabelFacts facts)
    {
        try
        {
            var digits = quantity.Measures.Length > 1 ? (int?)null : Math.Max(1, quantity.Measures[0].Digits);
            return NetQuantityStatement.For(RuleBook.MarketUs, quantity.IsVolume
                ? NetAmount.Of(Volume.FromMillilitres(quantity.Metric), quantity.System, digits)
                : NetAmount.Of(Mass.FromGrams(quantity.Metric), quantity.System, digits), facts.On).Statement;
        }
        catch (InputException)
        {
            return "for example: Net Wt 4 oz (113 g)";
        }
    }

    private static string Written(ReadQuantity quantity) => string.Join(" ", quantity.Measures.Select(m => FormattableString.Invariant($"{m.Figure:0.####} {(quantity.IsVolume && m.Unit == "oz" ? "fl oz" : m.Unit)}")));

    private static string Exact(ReadQuantity customary, ReadQuantity metric) =>
        FormattableString.Invariant($"{customary.Metric / ReadMeasure.SizeOf(metric.LastUnit):0.###} {metric.LastUnit}");

    [GeneratedRegex(@"\b(?:approx(?:imately)?|about|minimum|at least|not less than|up to|jumbo|giant|full|when packed|generous|est(?:imated)?)(?=[\s.:]|$)", RegexOptions.IgnoreCase)]
    private static partial Regex Qualifier();
}
