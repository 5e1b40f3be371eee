using System.Collections.Immutable;
using LabelForge.Measures;

namespace LabelForge.Composition;

/// <summary>A material and a place in its list.</summary>
internal readonly record struct Source(int Material, int Constituent);

/// <summary>An ingredient of the product: where it comes from and what of it was lost (a fraction of the charged batch).</summary>
internal sealed record ProductIngredient(string Name, bool IsColour, ImmutableArray<Source> Sources, decimal Lost);

/// <summary>The materials of a product and the ingredients that they have in common.</summary>
/// <remarks>
/// No more can have left than was there, so a loss says something of the materials too: each must have brought at least
/// what the others together cannot have. Its list is read again with that as the least share of what was lost. Where only
/// one material leaves open how much it brought, that cuts out exactly the compositions with too little; where several do,
/// some of those are left in, which can only widen bounds and leave a pair unproven, never prove too much.
/// </remarks>
internal sealed class ProductModel
{
    /// <summary>Reads a product.</summary>
    /// <exception cref="InputException">The data contradicts itself.</exception>
    public ProductModel(IReadOnlyList<MaterialPart> parts, IReadOnlyList<Adjustment> losses)
    {
        if (parts.Any(p => p.ShareOfProduct < 0) || Math.Abs(parts.Sum(p => p.ShareOfProduct) - 1) > 1e-9m)
            throw new ArgumentException("The materials' shares of a product are not negative and sum to 1.", nameof(parts));
        foreach (var part in parts)
            Refuse(part);
        Materials = [.. parts.Where(p => p.ShareOfProduct > 0).Select(p => new MaterialModel(p))];
        Left = 1 - losses.Sum(l => l.ShareRemoved);
        var sources = Materials
            .SelectMany((material, m) => material.Part.Constituents.Select((constituent, c) => (constituent, source: new Source(m, c))))
            .GroupBy(s => s.constituent.Name);
        Ingredients = [.. sources.Select(g => new ProductIngredient(
            g.Key, g.Any(s => s.constituent.IsColourant), [.. g.Select(s => s.source)], losses.Where(l => l.Ingredient == g.Key).Sum(l => l.ShareRemoved)))];
        foreach (var loss in losses)
            Refuse(loss);
        Materials = [.. Materials.Select((material, at) => HoldingWhatWasLost(material, at))];
    }

    /// <summary>The materials that are in the product at all.</summary>
    public ImmutableArray<MaterialModel> Materials { get; }

    /// <summary>The ingredients, in order of first mention.</summary>
    public ImmutableArray<ProductIngredient> Ingredients { get; }

    /// <summary>What is left of the charged batch, a fraction above 0 up to 1.</summary>
    public decimal Left { get; }

    /// <summary>Least share of the finished product.</summary>
    public decimal Low(ProductIngredient of) => Finished(of, s => Materials[s.Material].Low[s.Constituent]);

    /// <summary>Greatest share of the finished product.</summary>
    public decimal High(ProductIngredient of) => Finished(of, s => Materials[s.Material].High[s.Constituent]);

    /// <summary>Estimated share of the finished product.</summary>
    public decimal Estimate(ProductIngredient of) => Finished(of, s => Materials[s.Material].Estimate[s.Constituent]);

    private decimal Finished(ProductIngredient of, Func<Source, decimal> share) =>
        Math.Clamp((Charged(of, share) - of.Lost) / Left, 0, 1);

    private decimal Charged(ProductIngredient of, Func<Source, decimal> share) =>
        of.Sources.Sum(s => Materials[s.Material].Part.ShareOfProduct * share(s));

    private MaterialModel HoldingWhatWasLost(MaterialModel material, int at)
    {
        var part = material.Part;
        var constituents = part.Constituents.ToBuilder();
        foreach (var ingredient in Ingredients.Where(i => i.Lost > 0))
        {
            if (ingredient.Sources.FirstOrDefault(s => s.Material == at, new Source(-1, -1)) is not { Material: >= 0 } source)
                continue;
            var others = ingredient.Sources.Where(s => s != source).Sum(s => Materials[s.Material].Part.ShareOfProduct * Materials[s.Material].High[s.Constituent]);
            var least = Math.Min((ingredient.Lost - others) / part.ShareOfProduct, material.High[source.Constituent]);
            var old = constituents[source.Constituent];
            if (least > old.Share.Low.Fraction)
                constituents[source.Constituent] = old with { Share = new ShareRange(Share.FromFraction(least), old.Share.High) };
        }
        return constituents.SequenceEqual(part.Constituents) ? material : new MaterialModel(part with { Constituents = constituents.ToImmutable() });
    }

    private static void Refuse(MaterialPart part)
    {
        if (part.Constituents.IsDefaultOrEmpty)
            throw new InputException(new Problem(null, 0, $"{part.Material} does not say what it contains.", "Write its supplier's list under contains."));
        if (part.Constituents.GroupBy(c => c.Name).FirstOrDefault(g => g.Count() > 1) is { } twice)
            throw new InputException(new Problem(null, 0, $"{part.Material} lists {twice.Key} twice.", "Write each constituent once, with the sum of its figures."));
    }

    private void Refuse(Adjustment loss)
    {
        if (loss.ShareRemoved < 0 || Left <= 0)
            throw new InputException(new Problem(loss.File, loss.Line, $"A loss of {loss.ShareRemoved * 100:0.######} % {loss.Ingredient} leaves no batch, or adds to it.", "Write what left the batch, from 0 % to less than all of it."));
        if (Ingredients.FirstOrDefault(i => i.Name == loss.Ingredient) is not { } ingredient)
            throw new InputException(new Problem(loss.File, loss.Line, $"{loss.Ingredient} is said to be lost, but no material contains it.", "Name an ingredient of the batch."));
        var most = Charged(ingredient, s => Materials[s.Material].High[s.Constituent]);
        if (most < ingredient.Lost - CompositionLimits.Tolerance)
        {
            var from = string.Join(", ", ingredient.Sources.Select(s => Materials[s.Material].Part.Material));
            throw new InputException(new Problem(loss.File, loss.Line,
                $"{ingredient.Lost * 100:0.######} % of the batch is said to be {loss.Ingredient} that was lost, but {from} cannot hold more than {most * 100:0.######} % of it.",
                "Weigh the batch again, or correct the figures of that constituent."));
        }
    }
}
