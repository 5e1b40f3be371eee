using System.Collections.Immutable;
using LabelForge.Recipes;

namespace LabelForge.Declarations;

/// <summary>An allergen's share of the finished product, added over every material that brings it.</summary>
/// <param name="Name">The allergen.</param>
/// <param name="Low">The least, mass percent of the product.</param>
/// <param name="High">The most, mass percent of the product.</param>
/// <param name="Materials">The materials that bring it.</param>
public sealed record AllergenTotal(string Name, decimal Low, decimal High, ImmutableArray<string> Materials);

/// <summary>Adds up the allergens that certificates name.</summary>
public static class AllergenSum
{
    /// <summary>The totals, greatest first.</summary>
    public static ImmutableArray<AllergenTotal> Of(ImmutableArray<FlatShare> formula) =>
        [.. formula
            .SelectMany(f => f.Material.Allergens.Select(a => (f.Material, f.Share, Allergen: a)))
            .GroupBy(x => x.Allergen.Name, StringComparer.OrdinalIgnoreCase)
            .Select(g => new AllergenTotal(
                g.Key,
                g.Sum(x => x.Share * x.Allergen.Share.Low.Percent),
                g.Sum(x => x.Share * x.Allergen.Share.High.Percent),
                [.. g.Select(x => x.Material.Name)]))
            .OrderByDescending(t => t.High)
            .ThenBy(t => t.Name, StringComparer.Ordinal)];
}
