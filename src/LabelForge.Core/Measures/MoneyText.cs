namespace LabelForge.Measures;

/// <summary>Reads sums of money and shares of a price as people type them.</summary>
public static class MoneyText
{
    private const decimal Most = 1_000_000_000m;

    /// <summary>A sum: a plain figure, not below nothing, with at most two decimals.</summary>
    public static Parsed<decimal> Parse(string text) =>
        PlainFigure.Read(text.Trim()) is { } money
            && money == Math.Round(money, 2) && money < Most
            ? Parsed<decimal>.Of(money)
            : (text.Trim().Length == 0
                ? Parsed<decimal>.Refused("money.missing")
                : Parsed<decimal>.Refused("money.not-a-sum", ("text", text.Trim())));

    /// <summary>A share of a price, with a percent sign or without: <c>40 %</c> is 0.4.</summary>
    public static Parsed<decimal> Margin(string text) =>
        PlainFigure.Read(text.Trim().TrimEnd('%', ' ')) is < 100 and var figure
            ? Parsed<decimal>.Of(figure / 100m)
            : Parsed<decimal>.Refused("money.not-a-margin", ("text", text.Trim()));
}
