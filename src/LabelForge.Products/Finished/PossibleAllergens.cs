using LabelForge.Composition;
using LabelForge.Ingredients;
using LabelForge.Recipes;

namespace LabelForge.Declarations;

/// <summary>An essential oil in a product, of a material whose papers say nothing of fragrance allergens.</summary>
/// <param name="Material">The material that holds it.</param>
/// <param name="Oil">The oil.</param>
/// <param name="Low">The least it makes up of the product.</param>
/// <param name="High">The most it makes up of the product.</param>
/// <param name="Holds">What oils of the kind are known to hold; empty where nothing is known of them.</param>
public sealed record UnanalysedOil(Material Material, Ingredient Oil, FinishedShare Low, FinishedShare High,
    ImmutableArray<OilAllergen> Holds)
{
    /// <summary>The most of an allergen that it may bring, mass percent of the product.</summary>
    public decimal Most(OilAllergen allergen) => High.Percent * allergen.Most;
}

/// <summary>
/// What essential oils without an analysis may bring, whatever kind of material they are bought as. A certificate settles
/// what its material holds; a list that names an allergen itself is counted by <see cref="AllergenSum"/>.
/// </summary>
public static class PossibleAllergens
{
    /// <summary>The oils whose allergens nobody has told, those that make up most first.</summary>
    /// <param name="materials">The bought materials and their shares of the finished product.</param>
    /// <param name="workshop">The workshop, with the names and the law known.</param>
    public static ImmutableArray<UnanalysedOil> Of(ImmutableArray<FinishedMaterial> materials, Workshop workshop) =>
        [.. materials.Where(f => f.Share.Fraction > 0).SelectMany(f => InMaterial(f, workshop)).OrderByDescending(o => o.High)];

    /// <summary>The oils of one material whose allergens nobody has told, as fractions of it.</summary>
    public static IEnumerable<(Ingredient Oil, decimal Low, decimal High, ImmutableArray<OilAllergen> Holds)> In(Material material,
        Workshop workshop)
    {
        var dictionary = workshop.Dictionary;
        var lines = material.Contains;
        if (!material.Allergens.IsEmpty || ProductParts.Scent(material, dictionary) is not null
            || !lines.Any(l => IsOil(dictionary.Find(l.Name), dictionary)))
            yield break;
        var model = new MaterialModel(ProductParts.Of([new ExplodedShare(material, ChargeShare.Whole, Fraction.Of(1))], dictionary)[0],
            FreeOrder.OfLists(workshop.Markets));
        // What the list names besides the oil is told, and so is what it then leaves out of it.
        var told = lines.Where(l => !IsOil(dictionary.Find(l.Name), dictionary)).Select(l => dictionary.Allergens.Find(l.Name))
            .OfType<FragranceAllergen>().ToHashSet();
        for (var i = 0; i < model.Names.Length; i++)
        {
            if (dictionary.Find(model.Names[i]) is { } oil && IsOil(oil, dictionary))
                yield return (oil, model.Low[i], model.High[i],
                    [.. dictionary.OilAllergens.Of(oil).Where(a => !told.Contains(a.Allergen))]);
        }
    }

    private static IEnumerable<UnanalysedOil> InMaterial(FinishedMaterial finished, Workshop workshop) =>
        In(finished.Material, workshop).Select(o => new UnanalysedOil(finished.Material, o.Oil,
            new FinishedShare(finished.Share.Fraction * o.Low), new FinishedShare(finished.Share.Fraction * o.High), o.Holds));

    private static bool IsOil(Ingredient? ingredient, IngredientDictionary dictionary) =>
        ingredient is not null && dictionary.OilAllergens.IsScentOil(ingredient);
}
