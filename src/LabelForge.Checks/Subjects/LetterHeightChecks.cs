using LabelForge.Checks.Reading;

namespace LabelForge.Checks.Subjects;

/// <summary>Heights of letters, drawn or measured; what was not measured is said to be so, never passed.</summary>
/// <remarks>Where lower-case letters are used, the lower-case o counts, else the capitals (21 CFR 701.13(h)(2)).</remarks>
internal static class LetterHeightChecks
{
    // Flat letters stand a hair below the o by which the law measures, and drawing programs round coordinates: what lies
    // within this is no finding. Common practice: type is cut with round letters about 2 percent higher.
    private static readonly Length Tolerance = Length.FromMillimetres(0.07m);

    public static void Check(CheckCase label)
    {
        if (label.Product is { } product)
        {
            foreach (var h in product.Heights.Where(h => h.MeasuredMillimetres < h.LeastMillimetres))
                label.Tell(h.Rule, h.Element, Millimetres(h.MeasuredMillimetres), Millimetres(h.LeastMillimetres));
            return;
        }
        NetQuantity(label);
        Ingredients(label);
    }

    private static void NetQuantity(CheckCase label)
    {
        if (label.Label.NetQuantity is not { } read
            || label.Rules.FigureIfAny("net-quantity.letter-height") is not { Value: LawSteps steps })
            return;
        var byPanel = steps.Of.StartsWith("sq", StringComparison.Ordinal);
        var metric = read.Quantities.FirstOrDefault(q => q.System == LabelForge.Quantities.MeasureSystem.Metric) ?? read.Quantities[0];
        var least = steps.LengthAt(!byPanel
            ? metric.Metric
            : label.Panel is not { } panel
            ? 0m
            : steps.Of == "sq in"
            ? panel.Area.SquareInches
            : panel.Area.SquareCentimetres);
        // Where the figures alone are measured, capitals and digits tell; else the smallest letters do.
        var height = label.Market.Ways.MeasuresSmallLetters ? Height(label.Label.Text, read.Span) : Capitals(label.Label.Text, read.Span);
        if (height is null || (byPanel && label.Panel is null))
        {
            var why = height is null
                ? "the label came as text, or its letters have no outlines"
                : "the size of the panel is not known; give its width and height";
            label.Tell("net-quantity.type-not-measured", read.Written, why,
                byPanel && label.Panel is null ? $"{Millimetres(steps.LengthAt(0m))}, and more on a larger panel" : Millimetres(least));
        }
        if (height is not { } measured || !IsBelow(measured, least))
            return;
        var on = !byPanel
            ? "this quantity"
            : label.Panel is { } p
            ? string.Create(CultureInfo.InvariantCulture, $"a panel of {p.Area.SquareInches:0.##} square inches")
            : "a panel of any size";
        // A page may hold several panels: only a panel that was given, or the least of any size, makes it certain.
        var isCertain = !byPanel || label.PanelGiven || IsBelow(measured, steps.LengthAt(0m));
        label.Tell(read.Written.Contains('℮')
            ? "net-quantity.type-too-small/e-mark"
            : isCertain
            ? "net-quantity.type-too-small"
            : "net-quantity.type-too-small/page",
            read.Written, read.Written, Millimetres(measured), on, Millimetres(least));
    }

    private static void Ingredients(CheckCase label)
    {
        if (label.Label.Ingredients is not { } list
            || label.Binding("ingredients.type-too-small") is null
            || Height(label.Label.Text, list.Span) is not { } height
            || (label.Rules.FigureIfAny("ingredients.letter-height")
                ?? label.Rules.FigureIfAny("print.letter-height"))?.Length is not { } least)
            return;
        var small = (label.Rules.FigureIfAny("ingredients.letter-height-small")
            ?? label.Rules.FigureIfAny("print.letter-height-small"))?.Length ?? least;
        // The lesser height is for a very small panel alone; one that was given and is larger has no claim to it.
        if (label.PanelGiven
            && label.Panel is { } panel
            && label.Rules.FigureIfAny("print.small-package-up-to")?.Figure < panel.Area.SquareCentimetres)
            small = least;
        if (IsBelow(height, small))
            label.Tell("ingredients.type-too-small", "ingredients", Millimetres(height), Millimetres(small), Millimetres(least));
        else if (IsBelow(height, least))
            label.Tell("ingredients.type-too-small/small-package", "ingredients", Millimetres(height), Millimetres(least));
    }

    private static bool IsBelow(Length height, Length least) => height.Millimetres + Tolerance.Millimetres < least.Millimetres;

    /// <summary>The height of the smallest word in a place, by its lower-case letters where it
    /// has any; null where none is measured.</summary>
    private static Length? Height(LabelText text, TextSpan span)
    {
        var words = text.Heights.Where(w => w.Span.Overlaps(span)).ToArray();
        var lower = words.Select(w => w.Lower).OfType<Length>().ToArray();
        return lower.Length > 0 ? lower.Min() : Capitals(text, span);
    }

    private static Length? Capitals(LabelText text, TextSpan span) =>
        text.Heights.Where(w => w.Span.Overlaps(span)).Select(w => w.Upper).OfType<Length>().ToArray() is { Length: > 0 } heights
            ? heights.Min()
            : null;

    private static string Millimetres(Length length) => Millimetres(length.Millimetres);

    private static string Millimetres(decimal length) => length.ToString("0.00", CultureInfo.InvariantCulture) + " mm";
}
