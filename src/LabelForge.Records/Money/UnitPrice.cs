using LabelForge.Ingredients;
using LabelForge.Records.Books;

namespace LabelForge.Records.Money;

/// <summary>What a gram (or a piece of packaging) costs, and how that is known.</summary>
public sealed record UnitPrice(decimal Each, string Source)
{
    /// <summary>The packs a material can be bought in: size in grams or pieces, and price.</summary>
    /// <param name="dictionary">The names known.</param>
    /// <exception cref="InputException">A size is a volume and the density is not known.</exception>
    public static IReadOnlyList<(MaterialPack Pack, decimal Amount)> Packs(Material material, IngredientDictionary dictionary) =>
        [.. material.Packs.Select(p => (p, MaterialAmount.Read(material, p.Size, dictionary).OrRefuse(material.File, p.Line)))];

    /// <summary>What was paid for the stock in the house; else the dearest pack's price, so that the figure is not too low.</summary>
    /// <exception cref="InputException">Nothing says what it costs.</exception>
    public static UnitPrice Of(Material material, IBooks? books, IngredientDictionary dictionary)
    {
        var stock = books?.InStock(material.Id).ToArray() ?? [];
        if (stock.Length > 0)
            return new UnitPrice(stock.Sum(s => s.Left * s.Receipt.Price / s.Receipt.Amount) / stock.Sum(s => s.Left),
                "paid for the stock in the house");
        var packs = Packs(material, dictionary);
        if (packs.Count > 0)
            return packs.Select(p => new UnitPrice(p.Pack.Price / p.Amount, $"pack of {p.Pack.Size}")).MaxBy(p => p.Each)!;
        return material.Kind == MaterialKind.Water
            ? new UnitPrice(0, "water, taken as free")
            : throw new InputException(material.File, 0, "price.unknown", ("material", material.Name));
    }
}
