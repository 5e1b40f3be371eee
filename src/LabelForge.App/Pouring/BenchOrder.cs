namespace LabelForge.Pouring;

/// <summary>The order in which a product's materials are weighed at the bench: those that no step
/// names first, then step by step.</summary>
public static class BenchOrder
{
    /// <summary>
    /// The steps with what goes in at each. A material goes in at the first step that takes it; a step that is only done stands there
    /// without a material, and one that several materials go in at stands there with each.
    /// </summary>
    /// <typeparam name="T">A line of a formula.</typeparam>
    /// <param name="recipe">The recipe with its steps.</param>
    /// <param name="lines">The lines in the recipe's order.</param>
    /// <param name="material">The material of a line; null where the workshop has it no longer, which no step takes.</param>
    public static IEnumerable<(RecipeStep? Step, T? Line)> Of<T>(Recipe recipe, IEnumerable<T> lines, Func<T, Material?> material)
        where T : class
    {
        var first = lines.ToLookup(l => material(l) is { } m ? recipe.Steps.FirstOrDefault(s => s.Takes(m)) : null);
        return first[null].Select(l => ((RecipeStep?)null, (T?)l)).Concat(recipe.Steps.SelectMany(s =>
            (s.Adds is null ? new (RecipeStep?, T?)[] { (s, null) } : []).Concat(first[s].Select(l => ((RecipeStep?)s, (T?)l)))));
    }

    /// <summary>How many of the first steps are the pot's, and not each product's: they are the
    /// same in all recipes, and nothing of a product's own is in yet.</summary>
    /// <param name="formulas">The products that are poured out of the pot.</param>
    /// <param name="shared">What goes into the pot.</param>
    public static int StepsOfPot(IReadOnlyList<BatchFormula> formulas, IReadOnlyCollection<Material> shared)
    {
        var first = formulas[0].Recipe.Steps;
        var same =
            first.TakeWhile((step, i) => (step.Adds is null || shared.Any(step.Takes))
                && formulas.All(f => f.Recipe.Steps.Length > i
                    && f.Recipe.Steps[i].Text == step.Text
                    && f.Recipe.Steps[i].Adds == step.Adds)).Count();
        // What no step names is weighed first: then only what comes before the base is done without it.
        var isOwnFirst = formulas.Any(f => f.Lines
            .Any(l => shared.All(m => m.Id != l.Material.Id) && !f.Recipe.Steps.Any(s => s.Takes(l.Material))));
        return isOwnFirst ? first.Take(same).ToList().FindLastIndex(s => s.Adds is not null) + 1 : same;
    }
}
