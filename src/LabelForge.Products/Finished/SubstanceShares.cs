using LabelForge.Composition;
using LabelForge.Ingredients;
using LabelForge.Recipes;

namespace LabelForge.Declarations;

/// <summary>A substance in a product, declared by name or inside its fragrance.</summary>
/// <param name="Name">As the dictionary's US name, or as the supplier writes it where the dictionary does not know it.</param>
/// <param name="Entry">The dictionary's entry, or null.</param>
/// <param name="Low">The least it can be of the product.</param>
/// <param name="High">The most it can be of the product.</param>
/// <param name="Sources">The materials that bring it.</param>
public sealed record SubstanceShare(string Name, Ingredient? Entry, FinishedShare Low, FinishedShare High,
    ImmutableArray<SubstanceSource> Sources)
{
    /// <summary>Whether it is surely there, however little.</summary>
    public bool IsThere => Low.Fraction > 0 || Sources.Any(s => s.IsListed);

    /// <summary>The materials that bring it, as a sentence names them.</summary>
    public string From => Sources.IsEmpty ? "the recipe" : string.Join(", ", Sources.Select(s => s.Material).Distinct());
}

/// <summary>A material that brings a substance.</summary>
/// <param name="Material">The material's name.</param>
/// <param name="Share">The material's share of the finished product.</param>
/// <param name="IsKnown">Whether the supplier gives one figure for the substance, not a range and not nothing.</param>
/// <param name="IsListed">Whether the supplier lists it as a constituent, so that it is there;
/// false where only a certificate names it.</param>
public sealed record SubstanceSource(string Material, FinishedShare Share, bool IsKnown, bool IsListed);

/// <summary>Everything that can be told of a finished product's substances and their shares: the bounds of what its materials list, and
/// what suppliers say is in a fragrance.</summary>
internal static class SubstanceShares
{
    /// <summary>The substances that can be there at all.</summary>
    public static ImmutableArray<SubstanceShare> Of(FinishedProduct product)
    {
        var dictionary = product.Workshop.Dictionary;
        var sources = product.Materials.SelectMany(f => Constituents(f, dictionary))
            .ToLookup(c => c.Key, StringComparer.OrdinalIgnoreCase);
        var shares = new Dictionary<string, SubstanceShare>(StringComparer.OrdinalIgnoreCase);
        void Enter(string written, decimal low, decimal high)
        {
            var entry = dictionary.Find(written);
            var key = entry?.Key ?? written;
            shares[key] = new SubstanceShare(entry?.Us ?? written, entry, new FinishedShare(low / 100), new FinishedShare(high / 100),
                [.. sources[key].Select(s => s.Source).OrderByDescending(s => s.Share).ThenBy(s => s.Material, StringComparer.Ordinal)]);
        }

        // The shares of what stands inside a fragrance come last, so that a substance that stands both there and by
        // itself is counted over all its sources.
        foreach (var account in BatchComposition.AccountsByKey(product, dictionary))
            Enter(account.Ingredient, Finished(account, s => s.Low), Finished(account, s => s.High));
        foreach (var group in sources.Where(g => !shares.ContainsKey(g.Key) && g.All(c => c.InFragrance)))
            Enter(group.Key, group.Sum(c => c.Low), Math.Min(100, group.Sum(c => c.High)));
        foreach (var allergen in product.Allergens)
            Enter(allergen.Name, allergen.Low, allergen.High);
        // By amount, so that what is said does not depend on which material was weighed first.
        return [.. shares.Values.Where(s => s.High.Percent > 0).OrderByDescending(s => s.High.Percent)
            .ThenBy(s => s.Name, StringComparer.Ordinal)];
    }

    // In percent of the finished product: over the materials, share of the batch times bound in the material, less what left.
    private static decimal Finished(IngredientAccount account, Func<IngredientSource, decimal> bound) =>
        Math.Clamp((account.Sources.Sum(s => s.ShareOfBatch * bound(s)) - account.Lost) / account.Left, 0, 1) * 100;

    private static IEnumerable<Part> Constituents(FinishedMaterial flat, IngredientDictionary dictionary)
    {
        var material = flat.Material;
        var isFragrance = material.Kind == MaterialKind.Fragrance
            && material.Contains.Any(c => dictionary.Find(c.Name)?.Us == ProductParts.Fragrance);
        return material.Contains.Select(c => (c.Name, c.Share, Hidden: isFragrance, Listed: true))
            .Concat(material.Allergens.Select(a => (a.Name, a.Share, Hidden: true, Listed: false)))
            .DistinctBy(c => dictionary.Find(c.Name)?.Key ?? c.Name, StringComparer.OrdinalIgnoreCase)
            .Select(c => new Part(
                dictionary.Find(c.Name)?.Key ?? c.Name,
                flat.Share.Percent * c.Share.Low.Fraction,
                flat.Share.Percent * c.Share.High.Fraction,
                c.Hidden,
                new SubstanceSource(material.Name, flat.Share, c.Share.Low == c.Share.High || material.Contains.Length == 1,
                    c.Listed && c.Share.High.Fraction > 0)));
    }

    // One constituent of one material, in percent of the product.
    private sealed record Part(string Key, decimal Low, decimal High, bool InFragrance, SubstanceSource Source);
}
