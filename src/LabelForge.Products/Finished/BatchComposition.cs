using System.Collections.Immutable;
using LabelForge.Composition;
using LabelForge.Ingredients;
using LabelForge.Measures;
using LabelForge.Recipes;
using LabelForge.Recipes.Saponification;

namespace LabelForge.Declarations;

/// <summary>What a finished batch is made of, and what of its order is proved.</summary>
/// <param name="Proof">The order; each ingredient under the name that it carries on the label.</param>
/// <param name="Accounts">Where each ingredient comes from, by that name; what is provably absent has one too.</param>
/// <param name="Keys">The dictionary's keys of the substances that go by each name.</param>
public sealed record BatchComposition(
    CompositionProof Proof, ImmutableDictionary<string, IngredientAccount> Accounts, ImmutableDictionary<string, ImmutableArray<string>> Keys)
{
    /// <summary>
    /// Merges the materials' lists, takes off what left the batch, and orders what is left. What carries one name on the label
    /// is one ingredient, so its weight counts together. Soap that the recipe declares as formed stands as what came of its
    /// oils and lye, each within what their saponification values allow.
    /// </summary>
    /// <param name="workshop">Where the materials are described.</param>
    /// <param name="batch">What went in.</param>
    /// <param name="dictionary">The names known.</param>
    /// <param name="nameOf">The name on the label of a dictionary key; null where each key is a name of its own.</param>
    /// <param name="named">Allergens that are named besides what holds them.</param>
    /// <exception cref="InputException">
    /// The suppliers' data contradict themselves, more is said to have left than there was, or soap that is to be declared as
    /// formed cannot be worked out or named.
    /// </exception>
    public static BatchComposition Of(
        Workshop workshop, BatchFormula batch, IngredientDictionary dictionary, Func<string, string>? nameOf = null, ImmutableArray<AllergenTotal> named = default)
    {
        var names = new BatchNames(new NameIdentity(dictionary), nameOf ?? (key => key));
        var formula = FlatFormula.Of(workshop, batch);
        var soap = batch.Recipe.DeclareAs == DeclareAs.Formed ? SoapPartOfBatch.Of(workshop, batch) : null;
        var rest = soap is null ? formula : [.. formula.Where(f => !SoapCharge.TakesPart(f.Material))];
        ImmutableArray<MaterialPart> others = [.. UsualShares.Given(ProductParts.Of(rest, names.Identity), batch.Recipe.Product).Select(names.Printed)];
        ImmutableArray<MaterialPart> parts = soap is null ? others : [names.Printed(soap.Part(names.Identity)), .. others];
        ImmutableArray<Adjustment> losses = [.. batch.Losses.Select(l => new Adjustment(
            names.Of(l.Ingredient), l.Mass.Grams / batch.Total.Grams, batch.Recipe.File, l.Line))];
        ImmutableArray<NamedBesides> besides = [.. (named.IsDefault ? [] : named).SelectMany(t => t.Besides(names.Of(t), batch.Left))];
        var proof = Prover.Prove(parts, losses, besides);
        return new BatchComposition(
            soap is null ? proof : soap.Known(proof, others, names.Of),
            IngredientAccount.Of(parts, losses, besides).ToImmutableDictionary(a => a.Ingredient),
            names.Keys);
    }

    /// <summary>The same, each dictionary key a name of its own.</summary>
    /// <exception cref="InputException">As for <see cref="Of"/>.</exception>
    public static CompositionProof Prove(Workshop workshop, BatchFormula batch, IngredientDictionary dictionary) => Of(workshop, batch, dictionary).Proof;

    /// <summary>The keys of the substances that are in the product, in label order.</summary>
    public IEnumerable<string> KeysPresent => Proof.Ingredients.SelectMany(i => Keys.GetValueOrDefault(i.Name, []));
}
