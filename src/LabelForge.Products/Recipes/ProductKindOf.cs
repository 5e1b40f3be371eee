using LabelForge.Markets;
using LabelForge.Measures;

namespace LabelForge.Recipes;

/// <summary>The kind of product a recipe makes.</summary>
public static class ProductKindOf
{
    /// <summary>Looks the recipe's product kind up.</summary>
    /// <exception cref="InputException">It is not a kind known here.</exception>
    public static ProductKind Recipe(Recipe recipe) => ProductKinds.Shipped.Find(recipe.Product).OrRefuse(recipe.File, recipe.ProductLine);
}
