namespace LabelForge.Recipes;

/// <summary>One product of an assortment: the recipe with other fragrances or colours.</summary>
/// <param name="Name">The product's own name, which takes the place of the recipe's.</param>
/// <param name="Line">The line it stands on.</param>
/// <param name="Item">Its item number under the business's GS1 company prefix; null where none is given.</param>
/// <param name="OnMarketSince">The day this product came on the market; null for the recipe's day.</param>
/// <param name="Materials">All that goes into it.</param>
public sealed record RecipeVariant(string Name, int Line, string? Item, DateOnly? OnMarketSince, ImmutableArray<MaterialUse> Materials)
{
    /// <summary>How its label is to look, as far as it differs from the recipe's.</summary>
    public LookWish Look { get; init; } = LookWish.None;

    /// <summary>What a piece is sold for; null for the recipe's price.</summary>
    public decimal? Price { get; init; }

    /// <summary>What its own look says on the front.</summary>
    public IEnumerable<string> SaidOnFront => new[] { Look.Line?.Text, Look.Words?.Text, Look.Claim?.Text }.OfType<string>();
}
