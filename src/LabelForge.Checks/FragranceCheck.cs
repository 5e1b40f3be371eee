using LabelForge.Fragrances;

namespace LabelForge.Checks;

/// <summary>
/// Checks each fragrance's share of the product against its certificate's limit for the product's IFRA category, and says
/// where several together use up more than one whole limit.
/// </summary>
public static class FragranceCheck
{
    /// <summary>The findings.</summary>
    public static IEnumerable<Finding> Find(RecipeFacts facts) =>
        Find(FragranceLimits.Of(facts.Finished, facts.Kind), facts.Batch.Recipe, facts.Workshop.Markets.Every);

    /// <summary>The findings on the fragrance of a recipe's batch.</summary>
    public static IEnumerable<Finding> Find(FragranceBudget budget, Recipe recipe, EveryMarket every)
    {
        var category = budget.Kind.IfraCategory;
        foreach (var oil in budget.Oils)
        {
            if (oil.Limit is not { } limit)
                yield return every.Rules["fragrance.limit-unknown"]
                    .Find(oil.Material.File, oil.Material.Name, category, oil.Material.Id);
            else if (oil.IsOver)
                yield return every.Rules["fragrance.over-limit"]
                    .Find(recipe.File, oil.Material.Name, Percent(oil.Share.Fraction), limit, category, Most(budget, oil));
        }
        if (budget.IsOverTogether)
        {
            yield return every.Rules["fragrance.over-together"]
                .Find(recipe.File, string.Join(", ", budget.Oils.Select(o => $"{o.Material.Name} {Percent(o.PartOfLimit!.Value)}")),
                Percent(budget.Together!.Value), budget.MostTogether!);
        }
    }

    // The line that brings the oil and that its limit binds says how much; an oil inside a blend is told by the blend.
    private static string Most(FragranceBudget budget, FragranceOil oil)
    {
        var line = budget.Lines.FirstOrDefault(l => l.Binds?.Id == oil.Material.Id);
        if (line?.Most is not { } most)
            return $"no more than {oil.Limit} of the batch";
        return line.Material.Id == oil.Material.Id ? $"at most {most} of it" : $"at most {most} of {line.Material.Name}";
    }

    private static string Percent(decimal fraction) => (fraction * 100).ToString("0.##", CultureInfo.InvariantCulture) + " %";
}
