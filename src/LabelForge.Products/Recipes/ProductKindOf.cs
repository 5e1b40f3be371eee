namespace LabelForge.Recipes;

/// <summary>The kind of product a recipe makes.</summary>
public static class ProductKindOf
{
    /// <summary>Looks the recipe's product kind up, as the recipe's facts settle it; what its words only hint at stays open.</summary>
    /// <exception cref="InputException">It is not a kind known here.</exception>
    public static ProductKind Recipe(Recipe recipe) =>
        recipe.Facts
            .Of(ProductKinds.Find(recipe.Product).OrRefuse(recipe.File, recipe.ProductLine), string.Join('\n', Words(recipe)));

    private static IEnumerable<string?> Words(Recipe recipe) =>
        [recipe.Name, recipe.Identity, recipe.Directions, .. recipe.Claims, .. recipe.Warnings];
}
