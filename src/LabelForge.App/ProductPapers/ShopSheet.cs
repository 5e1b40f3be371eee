using LabelForge.Checks.Words;
using LabelForge.Declarations;
using LabelForge.Ingredients;
using LabelForge.Print.Documents;

namespace LabelForge.ProductPapers;

/// <summary>Ingredients and allergens of products, for shops that are asked about them.</summary>
internal static class ShopSheet
{
    // What people ask shops after; each a family of the word lists.
    private static readonly string[] Families = ["nuts", "peanut", "gluten", "soy", "coconut", "vegan", "palm"];

    /// <summary>A part for each product.</summary>
    public static ImmutableArray<PaperSection> Of(IReadOnlyList<PaperCase> products) => [.. products.Select(Of)];

    private static PaperSection Of(PaperCase of)
    {
        var declaration = of.Declaration;
        var product = FinishedProduct.Of(of.Product);
        var named = declaration.Ingredients.Select(i => i.Name).ToHashSet(StringComparer.OrdinalIgnoreCase);
        string[] open = [.. of.Product.Batch.Lines.Select(l => l.Material).DistinctBy(m => m.Id)
            .Where(m => m.Allergens.IsEmpty
                && (m.Kind == MaterialKind.Fragrance || PossibleAllergens.In(m, of.Product.Workshop).Any()))
            .Select(m => m.Name)];
        return new PaperSection(of.Product.Name, of.Name, null)
        {
            Facts =
            [
                PaperFact.Of("identity", "What it is", $"{of.Job.Content.Identity}, {of.Job.Content.NetQuantity}"),
                PaperFact.Of("ingredients", "Ingredients", declaration.Statement,
                    $"the declaration, market {of.Market.Id}, {of.On.ToIso()}", declaration.Names),
                .. Families.Select(f => Family(f, declaration, of.Product.Workshop.Dictionary)).OfType<PaperFact>(),
                .. open.Length == 0
                    ? []
                    : (PaperFact[])[PaperFact.Lacking("certificates", "Fragrance allergens",
                        $"No certificate is written for {string.Join(", ", open)}: ask for one.")],
                .. product.Allergens.IsEmpty && open.Length == 0
                    ? [PaperFact.Of("no-allergens", "Fragrance allergens", "None is named by the suppliers' lists and certificates.")]
                    : (PaperFact[])[],
                .. of.Job.Content.Warnings.IsEmpty
                    ? []
                    : (PaperFact[])[PaperFact.Of("warnings", "Warnings", string.Join(' ', of.Job.Content.Warnings), null,
                        of.Job.Content.Warnings)],
            ],
            Table = product.Allergens.IsEmpty
                ? null
                : new PaperTable([new("allergen", "Fragrance allergen", 3), new("low", "at least %", 1.2, true),
                    new("high", "at most %", 1.2, true), new("named", "on the label", 1), new("sources", "from", 3)],
                [.. product.Allergens
                    .Select(a => (ImmutableArray<PaperValue>)[new(a.Name),
                        .. CompositionParts.Bound(new DeclaredIngredient(a.Name, a.Low, a.High, a.Low, Composition.Part.Minor)),
                        new(named.Contains(a.Name) ? "yes" : "no", named.Contains(a.Name)),
                        new(string.Join(", ", a.Sources.Select(s => s.Material).Distinct()))])]),
        };
    }

    // Named where something of it is declared, or may come from it; the silence of a list is no promise, so that "none" is not written.
    private static PaperFact? Family(string id, Declaration declaration, IngredientDictionary dictionary)
    {
        if (WordLists.Denials.FirstOrDefault(d => d.Id == id) is not { } family)
            return null;
        var entries = declaration.Ingredients
            .Select(i => (i.Name, Known: CompositionParts.EntriesOf(declaration, i, dictionary).FirstOrDefault())).ToArray();
        string[] there = [.. entries.Where(e => family.IsContradictedBy(e.Name, e.Known)).Select(e => e.Name)];
        string[] perhaps = [.. entries.Where(e => !there.Contains(e.Name) && family.IsDoubtfulWith(e.Name, e.Known)).Select(e => e.Name)];
        if (there.Length + perhaps.Length == 0)
            return null;
        var what = id switch
        {
            "nuts" => "Tree nuts",
            "peanut" => "Peanut",
            "gluten" => "Wheat, barley, rye",
            "soy" => "Soy",
            "coconut" => "Coconut",
            "vegan" => "Of animals",
            _ => "Palm",
        };
        return PaperFact.Of(id, what,
            string.Join("; ",
                new[] { there.Length > 0 ? string.Join(", ", there) : null,
                    perhaps.Length > 0 ? $"may come from it: {string.Join(", ", perhaps)}" : null }.OfType<string>()), null, there);
    }
}
