using LabelForge.Ingredients;

namespace LabelForge.Recipes.Saponification;

/// <summary>Reads a material of kind lye.</summary>
internal static class LyeReading
{
    /// <summary>So many grams of a lye.</summary>
    /// <exception cref="InputException">It names no alkali, or two, or a solution does not say how strong it is.</exception>
    public static Lye Of(Material material, decimal grams, IngredientDictionary dictionary)
    {
        var alkalis = material.Contains.Where(c => Alkali.Of(dictionary.Find(c.Name)) is not null).ToArray();
        if (alkalis.Length != 1)
            throw Refuse(material, alkalis.Length == 0 ? "soap.no-alkali" : "soap.two-alkalis");
        if (material.Contains.FirstOrDefault(c => c != alkalis[0] && dictionary.Find(c.Name)?.Us != "Water") is { } other)
            throw Refuse(material, "soap.lye-holds-more", ("other", other.Name));
        var alkali = Alkali.Of(dictionary.Find(alkalis[0].Name))!;
        if (material.Purity is { } purity)
            return new Lye(material, alkali, grams, purity, IsPurityKnown: true);
        // A figure beside the alkali says the same; a range is taken at its most, the side on which there is more alkali.
        if (alkalis[0].Share != ShareRange.Unknown)
            return new Lye(material, alkali, grams, alkalis[0].Share.High, IsPurityKnown: true);
        return material.Contains.Length == 1
            ? new Lye(material, alkali, grams, Share.Whole, IsPurityKnown: false)
            : throw Refuse(material, "soap.solution-strength", ("alkali", alkalis[0].Name));
    }

    private static InputException Refuse(Material material, string code, params ReadOnlySpan<(string Name, object? Value)> arguments) =>
        new(material.File, material.Contains.IsEmpty ? 0 : material.Contains[0].Line, "soap.lye", ("material", material.Id),
            ("inner", new Problem(code, arguments)));
}
