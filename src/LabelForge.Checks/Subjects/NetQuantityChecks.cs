using LabelForge.Checks.Reading;
using LabelForge.Quantities;

namespace LabelForge.Checks.Subjects;

/// <summary>The net quantity: whether it is there, in the systems that the market asks for,
/// agreeing, unqualified, and no more than a piece holds.</summary>
internal static partial class NetQuantityChecks
{
    public static void Check(CheckCase label)
    {
        // In tenths of a gram, rounded apart: no figure of seven places, and never the same one twice.
        if (label.Product is { } product && product.Batch.Recipe.Net?.Mass is { } net && net > product.Batch.PerPiece)
            label.Tell("net-quantity.overstated", product.Batch.Recipe.File, Mass.FromGrams(Math.Ceiling(net.Grams * 10) / 10),
                Mass.FromGrams(Math.Floor(product.Batch.PerPiece.Grams * 10) / 10));
        if (label.Label.NetQuantity is not { } read)
        {
            label.Tell("net-quantity.missing", label.Where);
            return;
        }
        Systems(read, label);
        Words(read, label);
    }

    private static void Systems(NetQuantityRead read, CheckCase label)
    {
        // In another statement that says net, or in any where one system is enough.
        var both = label.Market.Ways.NetQuantity != "metric";
        var all = label.Label.NetQuantities.Where(q => !both || q.SaysNet || ReferenceEquals(q, read)).SelectMany(q => q.Quantities)
            .ToArray();
        var customary = read.In(MeasureSystem.Customary) ?? (both ? all.FirstOrDefault(q => q.System == MeasureSystem.Customary) : null);
        var metric = read.In(MeasureSystem.Metric) ?? all.FirstOrDefault(q => q.System == MeasureSystem.Metric);
        if (metric is null || (both && customary is null))
        {
            label.Tell("net-quantity.one-system-only", read.Written, read.Written, metric is not null ? "metric" : "US customary",
                Whole(read.Quantities[0], label));
            return;
        }
        if (customary is not null && customary.IsVolume != metric.IsVolume)
        {
            label.Tell("net-quantity.systems-disagree/dimension", read.Written, read.Written);
            return;
        }
        if (customary is not null)
            Compare(read, both ? read.Quantities.Where(q => q.System == MeasureSystem.Customary).DefaultIfEmpty(customary) : [customary],
                metric, label);
        if (read.OuncesAreFluid)
            label.Tell("net-quantity.unit", read.Written, read.Written, Whole(metric, label));
        // Liquids and viscous products go by volume in Canada (C.R.C., c. 417, s. 21); where no rule says so they go by weight.
        if (label.Kind is { } viscous && !metric.IsVolume
            && (IsLiquid(label, viscous) || ProductGroup.Covers(viscous, ["viscous"]) == Applies.Yes))
            label.Tell("net-quantity.unit/viscous", read.Written, read.Written, "a weight", viscous.Name.ToLowerInvariant(), "volume");
        if (label.Kind is { QuantityBy: QuantityBy.Mass, IsSolid: true } kind && metric.IsVolume)
        {
            label.Tell("net-quantity.unit/kind", read.Written, read.Written, "a volume", kind.Name.ToLowerInvariant(), "weight",
                "Weigh what is in the package and write it, for example: Net Wt 4 oz (113 g)");
        }
    }

    // What is sprayed under pressure goes by weight, and so does a balm of a kind that is mostly oil.
    private static bool IsLiquid(CheckCase label, ProductKind kind) =>
        kind.QuantityBy == QuantityBy.Volume && ProductGroup.Covers(kind, ["spray"]) != Applies.Yes
            && !(ProductFact.All.TryGetValue("aerosol", out var aerosol) && label.IsSo(aerosol) == true)
            && !Solid().IsMatch(label.Label.Identity?.Written ?? "");

    [GeneratedRegex(@"\b(?:balm|baume|butter|beurre|wax|cire|bar|pain|stick|bâton|solide?|paste|pâte|pomade|powder|poudre)\b", RegexOptions.IgnoreCase)]
    private static partial Regex Solid();

    // The first that differs is told; the rest of a statement that is wrong follows from it.
    private static void Compare(NetQuantityRead read, IEnumerable<ReadQuantity> customary, ReadQuantity metric, CheckCase label)
    {
        foreach (var one in customary)
        {
            // Where the metric figure alone binds, ounces beside it may be those of the Commonwealth.
            var found = QuantityAgreement.Between(one, metric);
            if (label.Market.Ways.NetQuantity == "metric"
                && (found == Agreement.CutShort || QuantityAgreement.BetweenImperial(one, metric) != Agreement.Disagree))
                found = Agreement.Agree;
            var told = found switch
            {
                Agreement.CutShort =>
                    label.Tell("net-quantity.systems-disagree/cut", read.Written, read.Written, Written(one), Exact(one, metric),
                        Written(metric), Whole(metric, label)),
                Agreement.Disagree =>
                    label.Tell("net-quantity.systems-disagree", read.Written, read.Written, Written(one), Exact(one, metric),
                        Written(metric), Whole(one.Metric <= metric.Metric ? one : metric, label)),
                Agreement.RoundedUp =>
                    label.Tell("net-quantity.rounded-up", read.Written, Written(one), Exact(one, metric), Written(metric),
                        Whole(one, label)),
                _ => false,
            };
            if (told)
                return;
        }
    }

    private static void Words(NetQuantityRead read, CheckCase label)
    {
        var text = label.Label.Text.Text;
        var around = text[Math.Max(0, read.Span.Start - 14)..Math.Min(text.Length, read.Span.End + 14)];
        if (label.Label.Own is null && Qualifier().Match(around) is { Success: true } word && !SaysMore(text, read, word))
            label.Tell("net-quantity.overstated/words", read.Written, read.Written, word.Value.ToLowerInvariant());
        if (!read.Quantities[0].IsVolume && !(read.SaysNet && read.SaysWeight))
            label.Tell("net-quantity.form", read.Written, read.Written, "a weight is told as net weight", "Begin it with Net Wt",
                "(j)(2)");
        if (read.Quantities[0].IsVolume && read.SaysWeight && !read.OuncesAreFluid)
            label.Tell("net-quantity.form", read.Written, read.Written, "a volume is no weight",
                "Leave out Wt: a volume stands by itself, or after Net or Net contents", "(b), (j)(2)");
        // Of soap that is no cosmetic the symbols are those of the consumer commodities.
        if (label.SoldAs != Recipes.SoldAs.Cosmetic && OddSymbol().Match(read.Written) is { Success: true } symbol)
            label.Tell("net-quantity.form/symbol", read.Written, read.Written, symbol.Value,
                symbol.Value.StartsWith("m", StringComparison.OrdinalIgnoreCase) ? "mL" : "g");
        var soap = label.SoldAs == Recipes.SoldAs.Soap;
        var most = label.Rules.FigureIfAny(soap ? "net-quantity.decimals-soap" : "net-quantity.decimals")?.Figure;
        if (read.Quantities.SelectMany(q => q.Measures)
            .Any(m => m.System == MeasureSystem.Customary && m.Places > most && !IsFraction(m, read)))
            label.Tell(soap ? "net-quantity.form/soap" : "net-quantity.form", read.Written, read.Written,
                $"a decimal fraction has more than {most:0} places", $"Cut it to {most:0} places", "(d)");
    }

    [GeneratedRegex(@"(?<=[0-9]\s?)(?:grs?|gms?|gs|mls)\b\.?", RegexOptions.IgnoreCase)]
    private static partial Regex OddSymbol();

    // "3 oz (85 g), about 60 washes": behind the quantity, and of a figure of its own.
    private static bool SaysMore(string text, NetQuantityRead read, Match word)
    {
        var after = Math.Max(0, read.Span.Start - 14) + word.Index + word.Length;
        return after > read.Span.End && OwnFigure().IsMatch(text[after..Math.Min(text.Length, after + 4)]);
    }

    private static bool IsFraction(ReadMeasure measure, NetQuantityRead read) => read.Written.Contains('/') && measure.Places == 2;

    /// <summary>The whole statement that this quantity would make in the market.</summary>
    private static string Whole(ReadQuantity quantity, CheckCase label)
    {
        try
        {
            var digits = quantity.Measures.Length > 1 ? (int?)null : Math.Max(1, quantity.Measures[0].Digits);
            return NetQuantityStatement.For(label.Market, quantity.IsVolume
                ? NetAmount.Of(Volume.FromMillilitres(quantity.Metric), quantity.System, digits)
                : NetAmount.Of(Mass.FromGrams(quantity.Metric), quantity.System, digits), label.Rules.Day).Statement;
        }
        catch (InputException)
        {
            return "for example: Net Wt 4 oz (113 g)";
        }
    }

    private static string Written(ReadQuantity quantity) =>
        string.Join(" ",
            quantity.Measures
                .Select(
                    m => FormattableString.Invariant($"{m.Figure:0.####} {(quantity.IsVolume && m.Unit == "oz" ? "fl oz" : m.Unit)}")));

    private static string Exact(ReadQuantity customary, ReadQuantity metric) =>
        FormattableString.Invariant($"{customary.Metric / ReadMeasure.SizeOf(metric.LastUnit):0.###} {metric.LastUnit}");

    [GeneratedRegex(@"\b(?:approx(?:imately)?|about|minimum|at least|not less than|up to|jumbo|giant|full|when "
        + @"packed|generous|est(?:imated)?(?!\.?\s+(?:[0-9]{4}|[MDCLXVI]{3,})\b))(?=[\s.:]|$)", RegexOptions.IgnoreCase)]
    private static partial Regex Qualifier();

    [GeneratedRegex(@"^\s+[0-9]")]
    private static partial Regex OwnFigure();
}
