namespace LabelForge.Composition;

/// <summary>What one material brings of an ingredient.</summary>
/// <param name="Material">The material.</param>
/// <param name="ShareOfBatch">The material's share of the charged batch, a fraction.</param>
/// <param name="Low">The ingredient's least share of the material that the whole list allows, a fraction.</param>
/// <param name="High">Its greatest.</param>
/// <param name="Said">What the supplier's paper says of its share.</param>
/// <param name="Listed">How far the order of the list is trusted.</param>
/// <param name="Place">Its place in the list, from 1; the first where several substances of the list go by its name.</param>
/// <param name="Length">How many the list names.</param>
public sealed record IngredientSource(
    string Material, decimal ShareOfBatch, decimal Low, decimal High, ShareRange Said, ListedOrder Listed, int Place, int Length)
{
    /// <summary>The substances of the list that go by the ingredient's name, in its order; one in most lists.</summary>
    public required ImmutableArray<string> Substances { get; init; }

    /// <summary>How much of it is usual there; null where nothing is known, or where several substances go by its name.</summary>
    public UsualShare? Usual { get; init; }
}

/// <summary>
/// How an ingredient's bounds come about: over the materials, share of the batch times bound in the material, summed; less
/// what was lost; over what is left of the batch. The sum is exact, for what one list says binds no other material.
/// </summary>
/// <param name="Ingredient">Its canonical name.</param>
/// <param name="IsColour">Whether it takes no part in a <see cref="ListedOrder.Label"/> list.</param>
/// <param name="Sources">The materials that bring it, in the order weighed.</param>
/// <param name="Lost">What of it left the batch, a fraction of the charged batch.</param>
/// <param name="Left">What is left of the charged batch, a fraction.</param>
public sealed record IngredientAccount(string Ingredient, bool IsColour, ImmutableArray<IngredientSource> Sources, decimal Lost,
    decimal Left)
{
    /// <summary>What fragrances and oils hold of it, where it is named besides them: it counts for its place and adds no weight.</summary>
    public ImmutableArray<NamedBesides> Besides { get; init; } = [];

    /// <summary>The account of every ingredient of a product.</summary>
    /// <param name="parts">The materials; their shares of the charged batch sum to 1.</param>
    /// <param name="lines">Where the order by weight ends.</param>
    /// <param name="losses">What left the batch; none if null.</param>
    /// <param name="besides">What is named besides the material that holds it; none if null.</param>
    /// <exception cref="InputException">No composition meets the data.</exception>
    public static ImmutableArray<IngredientAccount> Of(
        IReadOnlyList<MaterialPart> parts, OnePercentLines lines, IReadOnlyList<Adjustment>? losses = null,
        IReadOnlyList<NamedBesides>? besides = null)
    {
        var product = new ProductModel(parts, lines, losses ?? [], besides ?? []);
        return [.. product.Ingredients.Select(i =>
            new IngredientAccount(i.Name, i.IsColour, [.. i.Sources.Select(s => Of(product, s))], i.Lost, product.Left)
            {
                Besides = i.Besides,
            })];
    }

    private static IngredientSource Of(ProductModel product, Source source)
    {
        var material = product.Materials[source.Material];
        var list = material.Part.Constituents;
        var places = material.Groups[source.Constituent];
        return new IngredientSource(
            material.Part.Material, material.Part.ShareOfProduct, material.Low[source.Constituent], material.High[source.Constituent],
            places.Length == 1 ? list[places[0]].Share : ShareRange.Unknown, material.Part.Listed, places[0] + 1, list.Length)
        {
            Substances = [.. places.Select(p => list[p].Substance)],
            Usual = places.Length == 1 ? list[places[0]].Usual : null,
        };
    }
}
