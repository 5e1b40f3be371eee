namespace LabelForge.Quantities;

/// <summary>A net quantity statement ready to print.</summary>
/// <param name="Market">The market it is for.</param>
/// <param name="Statement">The whole statement, such as <c>Net Wt 4 oz (113 g)</c>.</param>
/// <param name="Customary">The customary part, such as <c>24 oz (1 lb 8 oz)</c>; null where the market does not ask for it.</param>
/// <param name="Metric">The metric part, such as <c>113 g</c>.</param>
/// <param name="LetterHeight">The least height of its letters; null where that turns on a panel and none is known.</param>
public sealed record NetQuantity(Market Market, string Statement, string? Customary, string Metric, LetterHeight? LetterHeight);

/// <summary>A least letter height.</summary>
/// <param name="Inches">In inches.</param>
/// <param name="Mm">In millimetres.</param>
/// <param name="Source">The provision that sets it.</param>
public sealed record LetterHeight(decimal Inches, decimal Mm, string Source)
{
    /// <summary>The least height of a net quantity's letters.</summary>
    /// <param name="market">The market.</param>
    /// <param name="amount">What the package holds; the EU and the UK go by it, before it is cut, so never by too little.</param>
    /// <param name="panel">The principal display panel; the US and Canada go by its area.</param>
    /// <param name="on">The day to judge by.</param>
    /// <returns>Null where the market goes by the panel and none is given.</returns>
    public static LetterHeight? Least(Market market, NetAmount amount, Panel? panel, DateOnly on)
    {
        var entry = market.On(on).Figure("net-quantity.letter-height");
        decimal? measure = entry.Table.Of switch
        {
            "sq in" => panel?.Area.SquareInches,
            "sq cm" => panel?.Area.SquareCentimetres,
            "g or mL" => amount.Metric,
            var other => throw new InvalidOperationException($"{entry.Id} goes by {other}, which is not known here."),
        };
        if (measure is not { } known)
            return null;
        var height = entry.Table.LengthAt(known);
        return new(height.Inches, height.Millimetres, entry.Citation);
    }
}
