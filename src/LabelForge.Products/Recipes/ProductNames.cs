namespace LabelForge.Recipes;

/// <summary>Finds products by name: <c>bramble-bar</c> for all that the recipe makes, <c>bramble-bar/Moss Wall</c> for one.</summary>
public static class ProductNames
{
    private const string Ending = ".yaml";

    /// <summary>The products that a name stands for.</summary>
    /// <param name="named">A recipe's id or file, with the variant behind a solidus for one product alone.</param>
    /// <exception cref="InputException">There is no such recipe or variant, or something in it is wrong.</exception>
    public static ImmutableArray<Product> ProductsOf(this Workshop workshop, string named)
    {
        var (recipe, variant) = Split(workshop, named);
        return Product.AllOf(workshop, variant is null ? workshop.Recipe(recipe) : workshop.Recipe(recipe).Variant(variant));
    }

    /// <summary>The one product that a name stands for.</summary>
    /// <exception cref="InputException">As for <see cref="ProductsOf"/>; or the recipe makes several and none is named.</exception>
    public static Product ProductOf(this Workshop workshop, string named) => One(workshop.ProductsOf(named), named);

    /// <summary>The product, where there is one alone.</summary>
    /// <exception cref="InputException">There are several.</exception>
    public static Product One(ImmutableArray<Product> products, string named) => products is [var only] ? only
        : throw new InputException(products[0].Recipe.File, 0, "recipe.makes-products", ("named", named), ("count", products.Length),
            ("list", string.Join(", ", products.Select(p => $"\"{p.Name}\""))));

    /// <summary>The file of a recipe where the name begins with one; null where it is an id.</summary>
    public static string? FileIn(string named) =>
        File.Exists(named)
            ? named
            : Parts(named).Select(p => p.Recipe)
                .FirstOrDefault(r => r.EndsWith(Ending, StringComparison.OrdinalIgnoreCase) && File.Exists(r));

    private static (string Recipe, string? Variant) Split(Workshop workshop, string named)
    {
        if (File.Exists(named) || workshop.RecipeIds.Contains(named))
            return (named, null);
        foreach (var (recipe, variant) in Parts(named))
        {
            if (workshop.RecipeIds.Contains(recipe)
                || (recipe.EndsWith(Ending, StringComparison.OrdinalIgnoreCase) && File.Exists(recipe)))
                return (recipe, variant);
        }
        // An id mistyped before a variant is the recipe that is missing; any other path names a recipe by its last part.
        var known = workshop.RecipeIds.Contains(Path.GetFileNameWithoutExtension(named))
            || named.EndsWith(Ending, StringComparison.OrdinalIgnoreCase);
        return !known && named.IndexOf('/') is > 0 and var at ? (named[..at], named[(at + 1)..]) : (named, null);
    }

    // Every place where the name could fall into a recipe and a variant: a variant's own name may have a solidus.
    private static IEnumerable<(string Recipe, string Variant)> Parts(string named)
    {
        for (var at = named.IndexOf('/'); at >= 0; at = named.IndexOf('/', at + 1))
        {
            if (at > 0)
                yield return (named[..at], named[(at + 1)..]);
        }
    }
}
