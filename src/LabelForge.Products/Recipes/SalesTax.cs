using LabelForge.Recipes.Files;

namespace LabelForge.Recipes;

/// <summary>The sales tax that the maker says applies to what is sold. No rate is known here: it
/// differs by place, product and day.</summary>
/// <param name="Percent">The rate, in percent of the price before tax.</param>
/// <param name="Inside">Whether the prices hold it already; else it is added to them.</param>
public sealed record SalesTax(decimal Percent, bool Inside)
{
    /// <summary>What a buyer pays for goods at a price, and how much of that is tax. Rounded to
    /// the cent, halves up, as is common practice.</summary>
    /// <param name="price">The price as it is shown.</param>
    public (decimal Paid, decimal Tax) On(decimal price)
    {
        var tax = Inside ? price - price / (1 + Percent / 100m) : price * Percent / 100m;
        tax = Math.Round(tax, 2, MidpointRounding.AwayFromZero);
        return (Inside ? price : price + tax, tax);
    }

    /// <summary>How much of a sum that was paid is tax.</summary>
    public decimal In(decimal paid) => Math.Round(paid - paid / (1 + Percent / 100m), 2, MidpointRounding.AwayFromZero);

    /// <summary>Reads <c>sales tax:</c> of workshop.yaml; null where there is none.</summary>
    /// <exception cref="InputException">Something in it is wrong.</exception>
    internal static SalesTax? Read(MapNode file)
    {
        if (file.OptionalMap("sales tax")?.OnlyKeys("A sales tax", "rate", "prices") is not { } map)
            return null;
        var rate = map.Required("rate", "5.5 %");
        var prices = map.Required("prices", "with tax");
        return new SalesTax(
            rate.Text.EndsWith('%')
                && PlainFigure.Read(rate.Text.TrimEnd('%', ' ')) is >= 0 and < 100 and var percent
                ? percent
                : throw rate.Refuse("business.tax-rate", ("rate", rate.Text)),
            prices.Text switch
            {
                "with tax" => true,
                "before tax" => false,
                _ => throw prices.Refuse("business.tax-prices", ("prices", prices.Text)),
            });
    }
}
