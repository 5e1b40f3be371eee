namespace LabelForge.Recipes;

/// <summary>One material of a batch with its mass.</summary>
public sealed record BatchLine(Material Material, Mass Mass, Amount Written);

/// <summary>What left a batch while it was made.</summary>
/// <param name="Ingredient">What left, as the recipe names it.</param>
/// <param name="Mass">How much of it.</param>
/// <param name="Line">The recipe's line that says so.</param>
public sealed record BatchLoss(string Ingredient, Mass Mass, int Line);

/// <summary>A recipe's batch in exact masses: what the amounts come to, whatever units they were written in.</summary>
/// <param name="Recipe">The recipe.</param>
/// <param name="Lines">What is weighed in.</param>
/// <param name="Total">What is weighed in, all together; the losses are not taken off.</param>
public sealed record BatchFormula(Recipe Recipe, ImmutableArray<BatchLine> Lines, Mass Total)
{
    /// <summary>What left the batch while it was made.</summary>
    public ImmutableArray<BatchLoss> Losses { get; init; } = [];

    /// <summary>What is left of the batch when it is finished.</summary>
    public Mass Yield => Mass.FromGrams(Total.Grams - Losses.Sum(l => l.Mass.Grams));

    /// <summary>What is left, as a fraction of what was weighed in; above 0 and not above 1.</summary>
    public decimal Left => Yield.Grams / Total.Grams;

    /// <summary>What one piece weighs if what came out of the batch, or else what is left of it, is shared out evenly.</summary>
    public Mass PerPiece => Mass.FromGrams((Recipe.CameOut ?? Yield).Grams / Recipe.Pieces);

    /// <summary>Weighs out a recipe.</summary>
    /// <remarks>
    /// A share of the batch is a share of all that is weighed in, so the total solves
    /// total = everything else / (1 - shares of batch). Losses come off afterwards.
    /// </remarks>
    /// <exception cref="InputException">
    /// A material is unknown, packaging, or measured by volume without a density; shares refer in a circle; or more is said to
    /// have left the batch than went in, or to be left of it.
    /// </exception>
    public static BatchFormula Of(Workshop workshop, Recipe recipe)
    {
        var (lines, total) = AmountResolution.Resolve(workshop, recipe.Materials, recipe.File, recipe.Superfat);
        return new BatchFormula(recipe, lines, total) { Losses = LossesOf(recipe, total) };
    }

    private static ImmutableArray<BatchLoss> LossesOf(Recipe recipe, Mass total)
    {
        if (recipe.Yield is { } yield)
        {
            return yield.Mass <= total
                ? yield.Mass == total
                    ? []
                    : [new BatchLoss(LossText.UsualLoss, Mass.FromGrams(total.Grams - yield.Mass.Grams), yield.Line)]
                : throw new InputException(recipe.File, yield.Line, "recipe.yield-above-batch", ("mass", yield.Mass), ("total", total));
        }
        var losses = recipe.Losses
            .Select(l => new BatchLoss(l.Ingredient, l.Amount.IsMass ? l.Amount.AsMass() : total * (l.Amount.Figure / 100), l.Line))
            .ToImmutableArray();
        return losses.Sum(l => l.Mass.Grams) < total.Grams
            ? losses
            : throw new InputException(recipe.File, losses[^1].Line, "recipe.losses-leave-nothing", ("total", total));
    }
}
