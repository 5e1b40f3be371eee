namespace LabelForge.Quantities;

/// <summary>Builds the net quantity statement that a market asks for.</summary>
/// <remarks>
/// <para>Every figure is cut, never rounded up, so that neither system states more than the package holds: 113 g is
/// 3.98 oz and not 4 oz, of which there would be 113.398 g.</para>
/// <para>The figure of the system in which the maker measured is kept as far as the statement has room for it
/// (US customary: two decimal places, 21 CFR 701.13(d); metric: whole units from 100 on and three figures below).
/// The other is converted, exactly, and then cut to the digits that the measurement has and to three at most.
/// A converted figure keeps two digits even where the measurement has one (5 g is 0.17 oz): one digit, cut,
/// could give away half of what is in the package. Whole grams and millilitres are kept too (4 oz is 113 g).</para>
/// </remarks>
public static class NetQuantityStatement
{
    private const int LeastDigits = 2;
    private const int MetricPlaces = 2;

    /// <summary>States a mass measured in grams.</summary>
    /// <param name="market">The market.</param>
    /// <param name="amount">What the package holds.</param>
    /// <param name="digits">Significant digits of the measurement; null where the figure is exact.</param>
    /// <param name="on">The day to judge by.</param>
    public static NetQuantity For(Market market, Mass amount, int? digits, DateOnly on) =>
        For(market, NetAmount.Of(amount, digits: digits), on);

    /// <summary>States an amount.</summary>
    /// <param name="market">The market.</param>
    /// <param name="amount">What the package holds, and how it was measured.</param>
    /// <param name="on">The day to judge by.</param>
    /// <param name="panel">The principal display panel, where it is known.</param>
    /// <exception cref="InputException">So little that the statement would say nothing, or a day before the law known here.</exception>
    public static NetQuantity For(Market market, NetAmount amount, DateOnly on, Panel? panel = null)
    {
        var metric = Metric(market, amount, on);
        var height = LetterHeight.Least(market, amount, panel, on);
        if (market.Ways.NetQuantity == "metric")
            return new(market, metric, null, metric, height);
        var customary = Customary(market, amount, on);
        var lead = amount.Mass is null ? "" : "Net Wt ";
        var beside = customary.HasParentheses ? metric : $"({metric})";
        return new(market, $"{lead}{customary.Text} {beside}", customary.Text, metric, height);
    }

    private static CustomaryQuantity Customary(Market market, NetAmount amount, DateOnly on)
    {
        var rules = market.On(on);
        var places = (int)rules.Figure("net-quantity.decimals").Figure;
        var ounces = amount.System == MeasureSystem.Customary
            ? RoundedDown.ToPlaces(amount.Ounces, places)
            : RoundedDown.To(amount.Ounces, Digits(market, amount, on), places);
        if (ounces == 0)
            throw TooLittle(amount);
        return amount.Mass is null ? CustomaryQuantity.Fluid(ounces, rules) : CustomaryQuantity.Weight(ounces, rules);
    }

    private static string Metric(Market market, NetAmount amount, DateOnly on)
    {
        var (small, large) = amount.Mass is not null ? ("g", "kg") : (market.Ways.Millilitre, "L");
        var kept = amount.System == MeasureSystem.Metric;
        var figures = Figures(market, on);
        var cut = RoundedDown.To(amount.Metric, kept ? figures : Digits(market, amount, on), MetricPlaces);
        if (cut == 0)
            throw TooLittle(amount);
        if (cut < 1000m)
            return $"{RoundedDown.Text(cut)} {small}";
        // The maker's own figure is kept to the gram, except where the figures of a thousand and more are law and not custom.
        var thousand = kept && market.On(on).FigureIfAny("net-quantity.thousand") is null
            ? RoundedDown.ToPlaces(amount.Metric / 1000m, 3)
            : RoundedDown.To(amount.Metric / 1000m, figures, 3);
        return $"{RoundedDown.Text(thousand)} {large}";
    }

    private static int Digits(Market market, NetAmount amount, DateOnly on) =>
        Math.Min(Math.Max(amount.Digits ?? int.MaxValue, LeastDigits), Figures(market, on));

    private static int Figures(Market market, DateOnly on) => (int)market.On(on).Figure("net-quantity.figures").Figure;

    private static InputException TooLittle(NetAmount amount) =>
        new(null, 0, "quantity.too-little", ("mass", amount.Mass?.ToString() ?? amount.Volume.ToString()));
}
