using System.Collections.Immutable;
using LabelForge.Composition;
using LabelForge.Ingredients;
using LabelForge.Measures;
using LabelForge.Recipes;
using LabelForge.Recipes.Saponification;

namespace LabelForge.Declarations;

/// <summary>What a finished batch is made of, and what of its order is proved.</summary>
public static class BatchComposition
{
    /// <summary>
    /// Merges the materials' lists, takes off what left the batch, and orders what is left. Soap that the recipe declares as
    /// formed stands as what came of its oils and lye, each within what their saponification values allow.
    /// </summary>
    /// <exception cref="InputException">
    /// The suppliers' data contradict themselves, more is said to have left than there was, or soap that is to be declared as
    /// formed cannot be worked out or named.
    /// </exception>
    public static CompositionProof Prove(Workshop workshop, BatchFormula batch, IngredientDictionary dictionary)
    {
        var formula = FlatFormula.Of(workshop, batch);
        var losses = Losses(batch, dictionary);
        if (batch.Recipe.DeclareAs == DeclareAs.Charged)
            return Prover.Prove(ProductParts.Of(formula, dictionary), losses);
        var rest = formula.Where(f => !SoapCharge.TakesPart(f.Material)).ToImmutableArray();
        return SoapPartOfBatch.Prove(workshop, batch, ProductParts.Of(rest, dictionary), losses);
    }

    /// <summary>Where each ingredient of the batch comes from: material by material.</summary>
    /// <exception cref="InputException">As for <see cref="Prove"/>.</exception>
    public static ImmutableArray<IngredientAccount> Accounts(Workshop workshop, BatchFormula batch, IngredientDictionary dictionary) =>
        IngredientAccount.Of(ProductParts.Of(FlatFormula.Of(workshop, batch), dictionary), Losses(batch, dictionary));

    private static ImmutableArray<Adjustment> Losses(BatchFormula batch, IngredientDictionary dictionary) =>
        [.. batch.Losses.Select(l => new Adjustment(
            dictionary.Find(l.Ingredient)?.Key ?? l.Ingredient, l.Mass.Grams / batch.Total.Grams, batch.Recipe.File, l.Line))];
}
