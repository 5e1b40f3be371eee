using LabelForge.Composition;
using LabelForge.Ingredients;
using LabelForge.Recipes;

namespace LabelForge.Declarations;

/// <summary>What one material brings of an allergen.</summary>
/// <param name="Material">The material.</param>
/// <param name="Low">The least it brings, mass percent of the product.</param>
/// <param name="High">The most it brings, mass percent of the product.</param>
/// <param name="Share">The material's share of the finished product.</param>
/// <param name="IsIngredient">Whether it stands in the material's list by weight; else it is a
/// part of what does, such as a fragrance.</param>
public sealed record AllergenSource(string Material, decimal Low, decimal High, FinishedShare Share, bool IsIngredient);

/// <summary>An allergen's share of the finished product, added over every material that brings it.</summary>
/// <param name="Name">The name Annex III sets for labels, or what the certificate writes where Annex III has no such entry.</param>
/// <param name="Entry">The entry of Annex III, or null where there is none.</param>
/// <param name="Low">The least, mass percent of the product.</param>
/// <param name="High">The most, mass percent of the product.</param>
/// <param name="Sources">The materials that bring it, the one that can bring most first.</param>
public sealed record AllergenTotal(string Name, FragranceAllergen? Entry, decimal Low, decimal High,
    ImmutableArray<AllergenSource> Sources)
{
    /// <summary>What of it is named besides the materials that hold it.</summary>
    /// <param name="name">Its name on the label.</param>
    /// <param name="product">The product that it is in.</param>
    internal IEnumerable<NamedBesides> Besides(string name, FinishedProduct product) =>
        Sources.Where(s => !s.IsIngredient && s.Share.Fraction > 0)
            .Select(s => new NamedBesides(name, s.Material, product.Charge(s.Share).Fraction, s.Low / s.Share.Percent,
                s.High / s.Share.Percent));
}

/// <summary>
/// Adds up allergens over every source: what certificates name in fragrance and essential oils, and constituents of any
/// material that are allergens themselves. Names that mean one entry of Annex III add up.
/// </summary>
public static class AllergenSum
{
    /// <summary>The totals, greatest first.</summary>
    /// <param name="materials">The bought materials and their shares of the finished product.</param>
    /// <param name="workshop">The workshop, with the names and the law known.</param>
    public static ImmutableArray<AllergenTotal> Of(ImmutableArray<FinishedMaterial> materials, Workshop workshop) =>
        [.. materials
            .SelectMany(f => InMaterial(f.Material, workshop).Select(a => (f.Material, f.Share, Allergen: a)))
            .GroupBy(x => x.Allergen.Name, NameIdentity.Same)
            .Select(Total)
            .Where(t => t.High > 0)
            .OrderByDescending(t => t.High)
            .ThenBy(t => t.Name, StringComparer.Ordinal)];

    private static AllergenTotal Total(IGrouping<string, (Material Material, FinishedShare Share, InOne Allergen)> same)
    {
        var sources = same
            .Select(x => new AllergenSource(x.Material.Name, x.Share.Percent * x.Allergen.Low, x.Share.Percent * x.Allergen.High, x.Share,
                x.Allergen.IsIngredient))
            .OrderByDescending(s => s.High)
            .ToImmutableArray();
        return new AllergenTotal(same.First().Allergen.Name, same.First().Allergen.Entry,
            Math.Min(100, sources.Sum(s => s.Low)), Math.Min(100, sources.Sum(s => s.High)), sources);
    }

    private static IEnumerable<InOne> InMaterial(Material material, Workshop workshop)
    {
        var dictionary = workshop.Dictionary;
        var certified = material.Allergens
            .Select(a => InOne.Named(dictionary, a.Name, a.Share.Low.Fraction, a.Share.High.Fraction))
            .GroupBy(a => a.Name, NameIdentity.Same)
            .ToDictionary(g => g.Key, Together, NameIdentity.Same);
        var contained = Constituents(material, workshop)
            .GroupBy(a => a.Name, NameIdentity.Same)
            .ToDictionary(g => g.Key, Together, NameIdentity.Same);
        foreach (var (name, constituent) in contained)
        {
            // The certificate speaks of the same substance: it is counted once, as narrowly as the two agree.
            certified[name] = certified.TryGetValue(name, out var figure) ? Agreed(constituent, figure) : constituent;
        }
        return certified.Values;
    }

    private static IEnumerable<InOne> Constituents(Material material, Workshop workshop)
    {
        var dictionary = workshop.Dictionary;
        var lines = material.Contains;
        if (!lines.Any(c => dictionary.Allergens.Find(c.Name) is not null))
            return [];
        // A fragrance oil's list names allergens beside the fragrance and not by weight: only the supplier's own figures count.
        if (ProductParts.Scent(material, dictionary) is not null)
            return Listed(dictionary, lines, false, i => lines[i].Share.Low.Fraction, i => lines[i].Share.High.Fraction);
        var part = ProductParts.Of([new ExplodedShare(material, ChargeShare.Whole, Fraction.Of(1))], dictionary)[0];
        var model = new MaterialModel(part, FreeOrder.OfLists(workshop.Markets));
        return Listed(dictionary, lines, true, i => model.Low[i], i => model.High[i]);
    }

    private static IEnumerable<InOne> Listed(IngredientDictionary dictionary, ImmutableArray<DeclaredConstituent> lines,
        bool areIngredients, Func<int, decimal> low, Func<int, decimal> high) =>
        Enumerable.Range(0, lines.Length)
            .Where(i => dictionary.Allergens.Find(lines[i].Name) is not null)
            .Select(i => InOne.Named(dictionary, lines[i].Name, low(i), high(i)) with { IsIngredient = areIngredients });

    private static InOne Together(IEnumerable<InOne> same) => same.First() with
    {
        Low = Math.Min(1, same.Sum(a => a.Low)),
        High = Math.Min(1, same.Sum(a => a.High)),
    };

    private static InOne Agreed(InOne one, InOne other) => Math.Max(one.Low, other.Low) <= Math.Min(one.High, other.High)
        ? one with { Low = Math.Max(one.Low, other.Low), High = Math.Min(one.High, other.High) }
        : one with { Low = Math.Min(one.Low, other.Low), High = Math.Max(one.High, other.High) };

    // An allergen's share of one material, as fractions.
    private sealed record InOne(string Name, FragranceAllergen? Entry, decimal Low, decimal High, bool IsIngredient = false)
    {
        public static InOne Named(IngredientDictionary dictionary, string written, decimal low, decimal high) =>
            dictionary.Allergens.Find(written) is { } entry
                ? new(entry.Name, entry, low, high)
                : new(dictionary.Find(written)?.Eu ?? written, null, low, high);
    }
}
