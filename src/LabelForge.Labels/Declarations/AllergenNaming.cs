using LabelForge.Checks;
using LabelForge.Ingredients;

namespace LabelForge.Declarations;

/// <summary>Names fragrance allergens besides the fragrance that brings them, where a market wants that.</summary>
internal static class AllergenNaming
{
    /// <summary>Those that may exceed the threshold: the most that the certificates allow counts.</summary>
    public static ImmutableArray<AllergenTotal> Named(ImmutableArray<AllergenTotal> totals, AllergenRule? rule) => rule is null
        ? []
        : [.. totals.Where(t => t.Entry is { } entry && rule.Lists(entry) && t.High > rule.Threshold.Percent)];

    /// <summary>What to tell the maker: why each stands there, and what a certificate names that nothing knows.</summary>
    public static IEnumerable<Finding> Findings(
        ImmutableArray<AllergenTotal> totals, ImmutableArray<AllergenTotal> named, AllergenRule? rule,
        IEnumerable<DeclaredIngredient> ordered, Workshop workshop)
    {
        if (rule is null)
            yield break;
        var every = workshop.Markets.Every.Rules;
        foreach (var total in named)
        {
            var certain = total.Low > rule.Threshold.Percent;
            yield return every[certain ? "allergen.named" : "allergen.named-for-its-bound"].Find(
                "ingredients", total.Name, Percent(total.High), Percent(rule.Threshold.Percent), Sources(total), rule.Source);
        }
        foreach (var both in ordered.Where(o => o.Besides is not null && !o.IsAllergen))
        {
            yield return every["allergen.counted-together"].Find(
                "ingredients", both.Name, Range(both.Itself), Range(both.Besides!), Range(new PercentRange(both.Low, both.High)));
        }
        foreach (var total in totals.Where(t =>
            t.Entry is null && t.High > rule.Threshold.Percent && workshop.Dictionary.Find(t.Name) is null))
            yield return every["allergen.name-unknown"]
                .Find("ingredients", total.Name, string.Join(", ", total.Sources.Select(s => s.Material)), rule.Source);
    }

    private static string Sources(AllergenTotal total) =>
        string.Join(", ", total.Sources.Select(s => $"{s.Material} {Range(new PercentRange(s.Low, s.High))}"));

    private static string Range(PercentRange range) =>
        range.Low == range.High ? Percent(range.High) : $"{Percent(range.Low)} to {Percent(range.High)}";

    private static string Percent(decimal percent)
    {
        var decimals = percent >= 1 ? 2 : 4;
        return Math.Round(percent, decimals).ToString("0.####", CultureInfo.InvariantCulture) + " %";
    }
}
