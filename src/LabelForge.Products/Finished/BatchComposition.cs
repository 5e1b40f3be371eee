using LabelForge.Composition;
using LabelForge.Ingredients;
using LabelForge.Recipes;
using LabelForge.Recipes.Saponification;

namespace LabelForge.Declarations;

/// <summary>What a finished batch is made of, and what of its order is proved.</summary>
/// <param name="Proof">The order; each ingredient under the name that it carries on the label.</param>
/// <param name="Accounts">Where each ingredient comes from, by that name; what is provably absent has one too.</param>
/// <param name="Keys">The dictionary's keys of the substances that go by each name.</param>
public sealed record BatchComposition(
    CompositionProof Proof, ImmutableDictionary<string, IngredientAccount> Accounts,
    ImmutableDictionary<string, ImmutableArray<string>> Keys)
{
    /// <summary>
    /// Merges the materials' lists, takes off what left the batch, and orders what is left. What carries one name on the label
    /// is one ingredient, so its weight counts together. Soap that the recipe declares as formed stands as what came of its
    /// oils and lye, each within what their saponification values allow.
    /// </summary>
    /// <param name="product">The mass balance.</param>
    /// <param name="dictionary">The names known.</param>
    /// <param name="rules">The law of the label, which says where the order by weight ends.</param>
    /// <param name="nameOf">The name on the label of a dictionary key; null where each key is a name of its own.</param>
    /// <param name="named">Allergens that are named besides what holds them.</param>
    /// <exception cref="InputException">
    /// The suppliers' data contradict themselves, more is said to have left than there was, or soap that is to be declared as
    /// formed cannot be worked out or named.
    /// </exception>
    internal static BatchComposition Of(
        FinishedProduct product, IngredientDictionary dictionary, RulesOf rules, Func<string, string>? nameOf = null,
        ImmutableArray<AllergenTotal> named = default)
    {
        var names = new BatchNames(new NameIdentity(dictionary), nameOf ?? (key => key));
        var (soap, others, parts, losses) = Parts(product, names);
        ImmutableArray<NamedBesides> besides = [.. (named.IsDefault ? [] : named).SelectMany(t => t.Besides(names.Of(t), product))];
        var lines = FreeOrder.Of(rules);
        var proof = Prover.Prove(parts, lines, losses, besides);
        return new BatchComposition(
            soap is null ? proof : soap.Known(proof, others, names.Of),
            IngredientAccount.Of(parts, lines, losses, besides).ToImmutableDictionary(a => a.Ingredient),
            names.Keys);
    }

    /// <summary>The same, each dictionary key a name of its own.</summary>
    /// <exception cref="InputException">As for <see cref="FinishedProduct.Composition"/>.</exception>
    public static CompositionProof Prove(Workshop workshop, BatchFormula batch, IngredientDictionary dictionary, RulesOf rules) =>
        Of(FinishedProduct.Of(workshop, batch), dictionary, rules).Proof;

    /// <summary>Where each dictionary key comes from, and its bounds; nothing is said of the order.</summary>
    internal static ImmutableArray<IngredientAccount> AccountsByKey(FinishedProduct product, IngredientDictionary dictionary)
    {
        var (_, _, parts, losses) = Parts(product, new BatchNames(new NameIdentity(dictionary), key => key));
        return IngredientAccount.Of(parts, FreeOrder.OfListsAlone(product.Workshop.Markets), losses);
    }

    // What was weighed in, the soap that came of oils and lye in one part where it is declared as formed; and what left.
    private static (SoapPartOfBatch? Soap, ImmutableArray<MaterialPart> Others, ImmutableArray<MaterialPart> Parts,
        ImmutableArray<Adjustment> Losses) Parts(
        FinishedProduct product, BatchNames names)
    {
        var recipe = product.Batch.Recipe;
        var soap = recipe.DeclareAs == DeclareAs.Formed ? SoapPartOfBatch.Of(product) : null;
        var rest = soap is null ? product.Charged : [.. product.Charged.Where(f => !SoapCharge.TakesPart(f.Material))];
        var usual = UsualShares.Given(ProductParts.Of(rest, names.Identity), recipe.Product, product.Workshop.Dictionary.Levels);
        ImmutableArray<MaterialPart> others = [.. usual.Select(names.Printed)];
        ImmutableArray<MaterialPart> parts = soap is null ? others : [names.Printed(soap.Part(names.Identity)), .. others];
        return (soap, others, parts, [
            .. product.Lost.Select(l => new Adjustment(names.Of(l.Loss.Ingredient), l.Share.Fraction, recipe.File, l.Loss.Line)
            {
                ExactShare = Fraction.Of(l.Loss.Mass.Grams, product.Batch.Total.Grams),
            }),
        ]);
    }

    /// <summary>The keys of the substances that are in the product, in label order.</summary>
    public IEnumerable<string> KeysPresent => Proof.Ingredients.SelectMany(i => Keys.GetValueOrDefault(i.Name, []));
}
