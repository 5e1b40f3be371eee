using System.Collections.Immutable;
using LabelForge.Composition;
using LabelForge.Ingredients;
using LabelForge.Measures;
using LabelForge.Recipes;

namespace LabelForge.Declarations;

/// <summary>What a finished batch is made of, and what of its order is proved.</summary>
public static class BatchComposition
{
    /// <summary>Merges the materials' lists, takes off what left the batch, and orders what is left.</summary>
    /// <exception cref="InputException">The suppliers' data contradict themselves, or more is said to have left than there was.</exception>
    public static CompositionProof Prove(Workshop workshop, BatchFormula batch, IngredientDictionary dictionary) =>
        Prover.Prove(ProductParts.Of(FlatFormula.Of(workshop, batch), dictionary), Losses(batch, dictionary));

    /// <summary>Where each ingredient of the batch comes from: material by material.</summary>
    /// <exception cref="InputException">As for <see cref="Prove"/>.</exception>
    public static ImmutableArray<IngredientAccount> Accounts(Workshop workshop, BatchFormula batch, IngredientDictionary dictionary) =>
        IngredientAccount.Of(ProductParts.Of(FlatFormula.Of(workshop, batch), dictionary), Losses(batch, dictionary));

    private static ImmutableArray<Adjustment> Losses(BatchFormula batch, IngredientDictionary dictionary) =>
        [.. batch.Losses.Select(l => new Adjustment(
            dictionary.Find(l.Ingredient)?.Key ?? l.Ingredient, l.Mass.Grams / batch.Total.Grams, batch.Recipe.File, l.Line))];
}
