using LabelForge.Declarations;
using LabelForge.Ingredients;
using LabelForge.Print.Documents;
using LabelForge.Recipes.Saponification;

namespace LabelForge.ProductPapers;

/// <summary>Questions to a supplier about one material: what is known is shown, what is not has room for the answer.</summary>
internal static class SupplierPaper
{
    /// <summary>A part for each material.</summary>
    public static ImmutableArray<PaperSection> Of(IReadOnlyList<Material> materials, IngredientDictionary dictionary) =>
        [.. materials.Select(m => Of(m, dictionary))];

    private static PaperSection Of(Material material, IngredientDictionary dictionary)
    {
        var colour = material.Contains.Any(c => dictionary.Find(c.Name)?.IsColourant == true);
        string[] unfigured = [.. material.Contains.Where(c => c.Share.Low != c.Share.High).Select(c => c.Name)];
        List<PaperFact> facts =
        [
            material.Supplier is { } supplier
                ? PaperFact.Of("supplier", "Supplier", supplier, material.File)
                : Ask("supplier", "Your name and address"),
            material.Contains.IsEmpty ? Ask("list", "All ingredients by INCI name, in order of weight, with CAS numbers")
                : PaperFact.Of("list", "Ingredients, as we have them",
                    $"{string.Join(", ", material.Contains.Select(c => c.Name))}. Please correct or confirm.", material.File,
                    material.Contains.Select(c => c.Name)),
            unfigured.Length == 0 || material.Contains.Length == 1 ? PaperFact.Of("shares", "Their shares", "known", material.File)
                : Ask("shares",
                    $"Share of each, or the narrowest range: {string.Join(", ", unfigured)} (asked by 21 CFR 701.3(a) and Regulation (EC) "
                        + $"No 1223/2009, Article 19(1)(g), for the order on labels)"),
        ];
        if (material.Kind == MaterialKind.Fragrance || !material.Limits.IsEmpty)
            facts.AddRange(OfScent(material));
        if (colour)
            facts.Add(Ask("colour",
                "For each colour: Colour Index number, purity by the annexes of Regulation (EC) No 1223/2009, and the lot's certification "
                    + "where 21 CFR part 74 wants one"));
        if (material.Kind == MaterialKind.Oil)
            facts.Add(material.Saponification is null
                ? Ask("saponification", "Saponification value of the lot, mg KOH/g, and how it was measured")
                : PaperFact.Of("saponification", "Saponification value", "written in the material's file", material.File));
        if (material.Kind == MaterialKind.Lye)
            facts.Add(material.Purity is null
                ? Ask("purity", "Share of alkali, by the certificate of analysis")
                : PaperFact.Of("purity", "Share of alkali", Invariant($"{material.Purity.Value.Percent:0.##} %"),
                    material.File));
        facts.AddRange(
        [
            material.GramsPerMillilitre is { } density
                ? PaperFact.Of("density", "Density, g/mL", Invariant($"{density:0.####}"), material.File, density)
                : Ask("density", "Density, g/mL, where it is sold by volume"),
            Ask("sds", "Safety data sheet: revision and date"),
            Ask("hazards",
                "Substances classified as carcinogenic, mutagenic or toxic for reproduction, nanomaterials: which, or none (Regulation "
                    + "(EC) No 1223/2009, Articles 13, 15 and 16)"),
            Ask("preservatives", "Preservatives and antioxidants in it, with their shares"),
            Ask("microbes", "Microbiological specification, and the shelf life unopened and opened"),
            Ask("animals",
                "Of animal origin or not; animal testing for cosmetic purposes (Regulation (EC) No 1223/2009, Articles 11(2)(e) and 18)"),
            Ask("origin", "Country of origin; from which crops, for nuts, soy, wheat and palm"),
            Ask("change", "Will you tell us when the composition or a limit changes?"),
        ]);
        return new PaperSection(material.Id, material.Name, material.File) { Facts = [.. facts] };
    }

    private static IEnumerable<PaperFact> OfScent(Material material) =>
    [
        material.Limits.IsEmpty
            ? Ask("limits", "Highest share of the finished product by IFRA category, with the amendment it is of")
            : PaperFact.Of("limits", "Highest share by IFRA category",
                $"{string.Join(", ", material.Limits.Select(l => Invariant($"{l.Category}: {l.Highest.Percent:0.####} %")))}. Has it changed?", material.File),
        material.Allergens.IsEmpty
            ? Ask("allergens", "Fragrance allergens of Annex III to Regulation (EC) No 1223/2009, each with its share")
            : PaperFact.Of("allergens", "Fragrance allergens",
                $"{string.Join(", ", material.Allergens.Select(a => a.Name))}. Has the list changed?", material.File),
    ];

    // The answer is written by hand, or beside the question in a mail.
    private static PaperFact Ask(string key, string question) => PaperFact.Question(key, question);
}
