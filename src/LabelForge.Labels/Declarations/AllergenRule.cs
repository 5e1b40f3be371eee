using LabelForge.Ingredients;

namespace LabelForge.Declarations;

/// <summary>Which fragrance allergens a market wants named in a product on a day, and above which share.</summary>
/// <param name="List">The list that binds.</param>
/// <param name="Threshold">A listed allergen is named above this share of the finished product, by mass.</param>
/// <param name="Source">The provisions behind the two.</param>
public sealed record AllergenRule(AllergenList List, Share Threshold, string Source)
{
    /// <summary>The rule of a market; null where the market has none.</summary>
    /// <param name="market">The market.</param>
    /// <param name="kind">The product's kind: leave-on or rinse-off decides the threshold.</param>
    /// <param name="on">The day to judge by.</param>
    /// <param name="onMarketSince">The day the product came on the market; null for one that comes on it on the day judged.</param>
    /// <remarks>
    /// A product that came on the market while an earlier list bound new products may go on under the list for products
    /// on the market, until that list ends too (Regulation (EU) 2023/1545, Art. 1; SOR/2024-63).
    /// </remarks>
    public static AllergenRule? For(Market market, ProductKind kind, DateOnly on, DateOnly? onMarketSince = null)
    {
        var rules = market.On(on);
        if (!market.Figures.Has("allergens.list-new-products"))
            return null;
        var threshold = rules.Figure(kind.Use == ProductUse.LeaveOn ? "allergens.threshold-leave-on" : "allergens.threshold-rinse-off");
        var list = rules.Figure("allergens.list-new-products");
        if (onMarketSince < on && !SameVersion(list, onMarketSince.Value))
            list = rules.Figure("allergens.list-on-market");
        return new AllergenRule(Enum.Parse<AllergenList>(list.Word, ignoreCase: true), Share.FromPercent(threshold.Figure), list.Citation);
    }

    /// <summary>Whether an allergen is on the list that binds.</summary>
    public bool Lists(FragranceAllergen allergen) => allergen.List <= List;

    /// <summary>The rule that names what either of two rules names; their lists each hold the shorter one.</summary>
    public AllergenRule Stricter(AllergenRule other) => new(
        List >= other.List ? List : other.List,
        Threshold.CompareTo(other.Threshold) <= 0 ? Threshold : other.Threshold,
        List >= other.List ? Source : other.Source);

    /// <inheritdoc/>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{List} list above {Threshold}");

    private static bool SameVersion(LawEntry version, DateOnly day) => version.HoldsOn(day);
}
