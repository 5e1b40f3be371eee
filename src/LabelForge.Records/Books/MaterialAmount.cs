using LabelForge.Ingredients;

namespace LabelForge.Records.Books;

/// <summary>An amount of a material as it is bought: any unit, or pieces of packaging.</summary>
public static class MaterialAmount
{
    /// <summary>Grams, or pieces for packaging.</summary>
    /// <param name="material">The material, for its density.</param>
    /// <param name="text">For example <c>5 lb</c>, <c>16 fl oz</c>, <c>100 pieces</c>.</param>
    /// <param name="dictionary">The names known, to tell a published density of it.</param>
    public static Parsed<decimal> Read(Material material, string text, IngredientDictionary dictionary)
    {
        var words = text.Trim().Split(' ', StringSplitOptions.RemoveEmptyEntries);
        if (words is [var count, "pieces" or "piece" or "pcs"])
        {
            if (material.Kind != MaterialKind.Packaging)
                return Parsed<decimal>.Refused("books.not-counted-in-pieces", ("material", material.Name));
            return PlainFigure.Whole(count) is > 0 and var pieces
                ? Parsed<decimal>.Of(pieces)
                : Parsed<decimal>.Refused("books.not-a-number-of-pieces", ("count", count));
        }
        var parsed = Amount.Parse(text);
        if (!parsed.IsValue)
            return Parsed<decimal>.Refused(parsed.Problem);
        if (parsed.Value.IsMass)
            return Parsed<decimal>.Of(parsed.Value.AsMass().Grams);
        if (!parsed.Value.IsVolume)
            return Parsed<decimal>.Refused("books.share-not-amount", ("text", text));
        return material.GramsPerMillilitre is { } density
            ? Parsed<decimal>.Of(Math.Round(parsed.Value.AsVolume(material.DropsPerMillilitre).Millilitres * density, 6))
            : Parsed<decimal>.Refused("books.no-density", ("text", text), ("material", material.Name),
                ("inner", Densities.Missing(material.File, material.Contains.Select(c => c.Name), dictionary)));
    }
}
