using System.Collections.Immutable;
using System.Globalization;
using LabelForge.Checks;
using LabelForge.Composition;
using LabelForge.Ingredients;

namespace LabelForge.Declarations;

/// <summary>Names fragrance allergens besides the fragrance that brings them, where a market wants that.</summary>
internal static class AllergenNaming
{
    /// <summary>Those that may exceed the threshold: the most that the certificates allow counts.</summary>
    public static ImmutableArray<AllergenTotal> Named(ImmutableArray<AllergenTotal> totals, AllergenRule? rule) => rule is null
        ? []
        : [.. totals.Where(t => t.Entry is { } entry && rule.Lists(entry) && t.High > rule.ThresholdPercent)];

    /// <summary>Puts the named allergens into a declaration; one that stands there as an ingredient of its own stays where it is.</summary>
    /// <returns>The pairs whose order is then not settled.</returns>
    /// <remarks>
    /// They are parts of the fragrance, so they add no weight. Those that cannot exceed 1 % may follow in any order and
    /// stand after the minor ingredients, before the colours. One that can exceed it, as in a perfume, stands by its estimate.
    /// </remarks>
    public static ImmutableArray<UnsettledPair> Place(List<DeclaredIngredient> ordered, ImmutableArray<AllergenTotal> named)
    {
        var unsettled = ImmutableArray.CreateBuilder<UnsettledPair>();
        foreach (var total in named.Where(t => ordered.TrueForAll(o => o.Name != t.Name)))
        {
            var allergen = new DeclaredIngredient(total.Name, total.Low, total.High, (total.Low + total.High) / 2,
                total.High > CompositionLimits.OnePercent * 100 ? Part.Main : Part.Minor)
            { IsAllergen = true };
            var at = allergen.Part == Part.Minor
                ? ordered.FindIndex(o => o.Part == Part.Colour)
                : ordered.FindIndex(o => o.Part != Part.Main || (o.Estimate < allergen.Estimate && !o.IsActive));
            ordered.Insert(at < 0 ? ordered.Count : at, allergen);
            if (allergen.Part == Part.Main)
                unsettled.AddRange(Doubts(ordered, allergen, total));
        }
        return unsettled.ToImmutable();
    }

    /// <summary>What to tell the maker: why each stands there, and what a certificate names that nothing knows.</summary>
    public static IEnumerable<Finding> Findings(ImmutableArray<AllergenTotal> totals, ImmutableArray<AllergenTotal> named, AllergenRule? rule)
    {
        if (rule is null)
            yield break;
        foreach (var total in named)
        {
            var certain = total.Low > rule.ThresholdPercent;
            yield return RuleBook.Declaration[certain ? "allergen.named" : "allergen.named-for-its-bound"].Find(
                "ingredients", total.Name, Percent(total.High), Percent(rule.ThresholdPercent), Sources(total), rule.Source);
        }
        foreach (var total in totals.Where(t => t.Entry is null && t.High > rule.ThresholdPercent && IngredientDictionary.Shipped.Find(t.Name) is null))
            yield return RuleBook.Declaration["allergen.name-unknown"].Find("ingredients", total.Name, string.Join(", ", total.Sources.Select(s => s.Material)), rule.Source);
    }

    private static IEnumerable<UnsettledPair> Doubts(List<DeclaredIngredient> ordered, DeclaredIngredient allergen, AllergenTotal total)
    {
        var at = ordered.IndexOf(allergen);
        var ask = $"Ask the supplier of {total.Sources[0].Material} for the share of {total.Name}.";
        for (var i = 0; i < ordered.Count; i++)
        {
            var other = ordered[i];
            if (other.Part != Part.Main || other.IsActive || i == at)
                continue;
            var (first, second) = i < at ? (other, allergen) : (allergen, other);
            // Wrong only where the second can weigh more than the first and more than 1 %.
            if (second.High > first.Low && second.High > CompositionLimits.OnePercent * 100 && !IsPartOf(first, second))
                yield return new UnsettledPair(first.Name, second.Name, ask);
        }
    }

    // An allergen never weighs more than the fragrance that it is a part of.
    private static bool IsPartOf(DeclaredIngredient whole, DeclaredIngredient allergen) =>
        allergen.IsAllergen && whole.Low == whole.High && whole.Low >= allergen.High;

    private static string Sources(AllergenTotal total) => string.Join(", ", total.Sources.Select(s =>
        s.Low == s.High ? $"{s.Material} {Percent(s.High)}" : $"{s.Material} {Percent(s.Low)} to {Percent(s.High)}"));

    private static string Percent(decimal percent)
    {
        var decimals = percent >= 1 ? 2 : 4;
        return Math.Round(percent, decimals).ToString("0.####", CultureInfo.InvariantCulture) + " %";
    }
}
