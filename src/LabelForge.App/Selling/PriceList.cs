using LabelForge.Records.Books;

namespace LabelForge.Selling;

/// <summary>A product on the table.</summary>
/// <param name="Product">As it is named where a recipe is asked for.</param>
/// <param name="Recipe">The recipe, the variant's name and price in place.</param>
/// <param name="Left">Pieces in the house, over all lots.</param>
public sealed record ProductOnTable(string Product, Recipe Recipe, int Left)
{
    /// <summary>What a piece is sold for; null where the maker has set no price.</summary>
    public decimal? Price => Recipe.Price;
}

/// <summary>What can be sold, and for what.</summary>
public static class PriceList
{
    /// <summary>Every product of the workshop that can be read, in the order of recipes and variants.</summary>
    /// <param name="book">The books; null where there are none.</param>
    public static ImmutableArray<ProductOnTable> Of(Workshop workshop, OpenBooks? book) =>
        book is null ? In(workshop, null) : book.Ask(books => In(workshop, books));

    /// <summary>The same out of books that are open already; null where there are none.</summary>
    public static ImmutableArray<ProductOnTable> In(Workshop workshop, IBooks? books) =>
        [.. workshop.RecipeIds.SelectMany(id => workshop.RecipeOrNone(id)?.Each ?? [])
            .Select(r => new ProductOnTable(NameOf(r), r, books is null ? 0 : TableSales.Left(books, r.Id, r.VariantName)))];

    /// <summary>The product that a person names: as <c>meadow-bar/Moss Lane</c>, by the scent
    /// alone, or by its name on the label.</summary>
    /// <exception cref="InputException">Nothing, or more than one, is named so.</exception>
    public static ProductOnTable Find(IReadOnlyList<ProductOnTable> products, string named)
    {
        bool Same(string? text) => string.Equals(text, named.Trim(), StringComparison.OrdinalIgnoreCase);
        ProductOnTable[] found = [.. products.Where(p => Same(p.Product))];
        if (found.Length == 0)
            found = [
                .. products.Where(p => Same(p.Recipe.Name)
                    || Same(p.Recipe.VariantName)
                    || (p.Recipe.VariantName is null && Same(p.Recipe.Id)))];
        return found is [var only]
            ? only
            : throw (found.Length == 0
                ? new InputException("product.unknown", ("named", named.Trim()),
                    ("list", string.Join(", ", products.Select(p => p.Product).Take(12))))
                : new InputException("product.several", ("named", named.Trim()), ("count", found.Length),
                    ("list", string.Join(", ", found.Select(p => $"\"{p.Product}\"")))));
    }

    /// <summary>The name by which a recipe or a variant of one is asked for.</summary>
    public static string NameOf(Recipe recipe) => recipe.VariantName is { } variant ? $"{recipe.Id}/{variant}" : recipe.Id;
}
