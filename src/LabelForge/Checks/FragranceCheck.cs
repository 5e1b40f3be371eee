using System.Globalization;
using LabelForge.Measures;
using LabelForge.Recipes;

namespace LabelForge.Checks;

/// <summary>Checks each fragrance's share of the product against its certificate's limit for the product's IFRA category.</summary>
public static class FragranceCheck
{
    /// <summary>The findings.</summary>
    public static IEnumerable<Finding> Find(RecipeFacts facts)
    {
        var category = facts.Kind.IfraCategory;
        foreach (var (material, share) in FlatFormula.OfFinished(facts.Workshop, facts.Batch).Where(f => f.Material.Kind == MaterialKind.Fragrance))
        {
            var limit = material.Limits.FirstOrDefault(l => l.Category == category);
            if (limit is null)
                yield return RuleBook.Us["fragrance.limit-unknown"].Find(material.File, material.Name, category, material.Id);
            else if (share > limit.Highest.Fraction)
                yield return OverLimit(facts, material, share, limit, category);
        }
    }

    private static Finding OverLimit(RecipeFacts facts, Material material, decimal share, FragranceLimit limit, string category)
    {
        // With everything else as it is, m / (rest + m) = limit gives the most of it that the batch can take.
        var rest = facts.Batch.Yield.Grams * (1 - share);
        var most = limit.Highest.Fraction >= 1 ? rest : rest * limit.Highest.Fraction / (1 - limit.Highest.Fraction);
        var floor = Math.Floor(most * 100) / 100;
        return RuleBook.Us["fragrance.over-limit"].Find(facts.Batch.Recipe.File, material.Name, Percent(share), limit.Highest, category,
            Mass.FromGrams(floor).ToString());
    }

    private static string Percent(decimal share) => (share * 100).ToString("0.##", CultureInfo.InvariantCulture) + " %";
}
