using System.Collections.Immutable;
using LabelForge.Measures;

namespace LabelForge.Recipes;

/// <summary>One material of a batch with its mass.</summary>
public sealed record BatchLine(Material Material, Mass Mass, Amount Written);

/// <summary>A recipe's batch in exact masses: what the amounts come to, whatever units they were written in.</summary>
public sealed record BatchFormula(Recipe Recipe, ImmutableArray<BatchLine> Lines, Mass Total)
{
    /// <summary>Weighs out a recipe.</summary>
    /// <remarks>
    /// A share of the batch is a share of the finished total, so the total solves
    /// total = everything else / (1 - shares of batch).
    /// </remarks>
    /// <exception cref="InputException">A material is unknown, packaging, or measured by volume without a density; or shares refer in a circle.</exception>
    public static BatchFormula Of(Workshop workshop, Recipe recipe)
    {
        var (lines, total) = AmountResolution.Resolve(workshop, recipe.Materials, recipe.File);
        return new BatchFormula(recipe, lines, total);
    }

    /// <summary>What one piece weighs if the batch is shared out evenly.</summary>
    public Mass PerPiece => Mass.FromGrams(Total.Grams / Recipe.Pieces);
}
