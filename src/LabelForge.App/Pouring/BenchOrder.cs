using LabelForge.Recipes;

namespace LabelForge.Pouring;

/// <summary>The order in which a product's materials are weighed at the bench: those that no step names first, then step by step.</summary>
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
    public static IEnumerable<(RecipeStep? Step, T? Line)> Of<T>(Recipe recipe, IEnumerable<T> lines, Func<T, Material?> material) where T : class
    {
        var first = lines.ToLookup(l => material(l) is { } m ? recipe.Steps.FirstOrDefault(s => s.Takes(m)) : null);
        return first[null].Select(l => ((RecipeStep?)null, (T?)l)).Concat(recipe.Steps.SelectMany(s =>
            (s.Adds is null ? new (RecipeStep?, T?)[] { (s, null) } : []).Concat(first[s].Select(l => ((RecipeStep?)s, (T?)l)))));
    }
}
