using LabelForge.Lots;

namespace LabelForge.Records.Books;

/// <summary>What a paper belongs to, as the books write it.</summary>
public static class AttachedTo
{
    /// <summary>The business itself.</summary>
    public const string Business = "business";

    /// <summary>A product.</summary>
    public static string Product(string recipe, string? variant) => variant is null ? $"product {recipe}" : $"product {recipe}/{variant}";

    /// <summary>A material.</summary>
    public static string Material(string id) => $"material {id}";

    /// <summary>A lot.</summary>
    public static string Lot(string lot) => $"lot {lot}";

    /// <summary>What a person names: a bottle (M3), a lot, a material, a product, or the business.</summary>
    /// <param name="named">As it was written or scanned.</param>
    /// <exception cref="InputException">There is no such thing.</exception>
    public static string Find(Workshop workshop, IBooks books, string named)
    {
        var text = named.Trim();
        if (text.Equals(Business, StringComparison.OrdinalIgnoreCase))
            return Business;
        if (text.Length > 1
            && text[0] is 'M' or 'm'
            && PlainFigure.Whole(text[1..]) is { } bottle)
            return books.Bottle(books.ReceiptOf(bottle).Id);
        if (LotCode.Parse(text) is { IsValue: true } lot && books.FindBatch(lot.Value.ToString()) is { } batch)
            return Lot(batch.Lot);
        if (workshop.Materials.ContainsKey(text))
            return Material(text);
        if (text.Split('/') is [var recipe, ..]
            && workshop.RecipeIds.Contains(recipe)
            && workshop.ProductsOf(text) is { Length: > 0 } products)
            return products is [var one] ? Product(one.Recipe.Id, one.Recipe.VariantName) : $"product {recipe}";
        throw new InputException("attachment.of-nothing", ("text", text));
    }
}
