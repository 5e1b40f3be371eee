using LabelForge.Declarations;
using LabelForge.Ingredients;
using LabelForge.Markets;
using LabelForge.Recipes;

namespace LabelForge.Checks;

/// <summary>
/// Checks each colour against the US listings: may it colour a cosmetic for that part of the body (21 CFR parts 73, 74 and
/// 82; what is not listed may not be used at all, 21 U.S.C. 379e)?
/// </summary>
/// <remarks>True soap is no cosmetic (21 CFR 701.20), so the listings do not bind it.</remarks>
public static class ColourCheck
{
    /// <summary>The findings.</summary>
    public static IEnumerable<Finding> Find(RecipeFacts facts) => Find(facts.Finished, facts.Kind);

    /// <summary>The findings on the colours of a batch.</summary>
    public static IEnumerable<Finding> Find(FinishedProduct product, ProductKind kind)
    {
        var batch = product.Batch;
        if (batch.Recipe.SoldAs == SoldAs.Soap)
            yield break;
        var dictionary = IngredientDictionary.Shipped;
        var materials = product.Materials.Select(f => f.Material).ToArray();
        var colours = materials
            .SelectMany(m => m.Contains.Select(c => (Material: m, Entry: dictionary.Find(c.Name))))
            .Concat(batch.Recipe.MayContain.Select(c => (Material: materials[0], Entry: dictionary.Find(c.Name))))
            .Where(c => c.Entry is { IsColourant: true })
            .DistinctBy(c => c.Entry!.Key);
        foreach (var (material, entry) in colours)
        {
            var listing = ColourAdditives.Shipped.Find(entry!);
            if (listing is null)
                yield return RuleBook.Us["colour.not-permitted"].Find(material.File, entry!.Key, Where(null, kind), NotListed);
            else if (listing.Permits(kind) != Applies.Yes)
                yield return RuleBook.Us["colour.not-permitted"].Find(material.File, entry!.Key, Where(listing, kind), listing.Citation).By(listing.Basis);
            else if (listing.Limit.Length > 0 && (kind.Area != AreaOfUse.External || !listing.Only.IsEmpty || listing.Most is not null))
                yield return RuleBook.Us["colour.condition"].Find(material.File, entry!.Key, listing.Limit, listing.Citation).By(listing.Basis);
        }
        foreach (var material in materials.Where(m => m.Kind == MaterialKind.Colourant && !m.Contains.Any(c => dictionary.Find(c.Name) is { IsColourant: true })))
            yield return RuleBook.Us["colour.not-listed"].Find(material.File, material.Name, string.Join(", ", material.Contains.Select(c => c.Name)), NotListed);
    }

    private const string NotListed = "FD&C Act section 721(a) (21 U.S.C. 379e(a)); 21 CFR parts 73, 74 and 82 do not list it";

    private static string Where(ColourAdditive? listing, ProductKind kind) =>
        listing is { Only.IsEmpty: false } ? $"{Place(kind.Area)}; only in {string.Join(", ", listing.Only.Select(ProductGroup.Phrase))}" : Place(kind.Area);

    private static string Place(AreaOfUse area) => area switch
    {
        AreaOfUse.Lips => "on the lips",
        AreaOfUse.Eye => "in the area of the eye",
        _ => "on the outside of the body",
    };
}
