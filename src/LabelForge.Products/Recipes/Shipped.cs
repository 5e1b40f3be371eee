using LabelForge.Ingredients;

namespace LabelForge.Recipes;

/// <summary>
/// The dictionary and the markets that ship with the program, each read once, when first asked for. The doors take them up here and
/// hand them on; nothing below reads them by itself.
/// </summary>
public static class Shipped
{
    private static readonly Lazy<IngredientDictionary> LazyDictionary = new(IngredientDictionary.Read);
    private static readonly Lazy<MarketBook> LazyMarkets = new(MarketBook.Read);

    /// <summary>The names known.</summary>
    public static IngredientDictionary Dictionary => LazyDictionary.Value;

    /// <summary>The markets known.</summary>
    public static MarketBook Markets => LazyMarkets.Value;

    /// <summary>Opens a workshop with them.</summary>
    /// <param name="folder">The workshop's folder.</param>
    /// <exception cref="InputException">workshop.yaml is missing or wrong.</exception>
    public static Workshop Open(string folder) => Workshop.Open(folder, Dictionary, Markets);
}
