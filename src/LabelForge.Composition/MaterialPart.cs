namespace LabelForge.Composition;

/// <summary>A bought material in a product, with its supplier's list.</summary>
/// <param name="Material">The material's name, as the maker would say it to the supplier.</param>
/// <param name="ShareOfProduct">Its share of the charged batch by mass, a fraction from 0 to 1; the parts of a product sum to 1.</param>
/// <param name="Listed">How far the order of <paramref name="Constituents"/> can be trusted.</param>
/// <param name="Constituents">The supplier's list in the supplier's order; each name once.</param>
public sealed record MaterialPart(string Material, decimal ShareOfProduct, ListedOrder Listed, ImmutableArray<Constituent> Constituents)
{
    /// <summary>The same share without rounding, where the constituents' figures are none that
    /// were divided; null where it is not known.</summary>
    public Fraction? ExactShare { get; init; }
}

/// <summary>What left the batch after it was weighed in, such as water boiled off.</summary>
/// <param name="Ingredient">The canonical name of what left.</param>
/// <param name="ShareRemoved">How much of it left, as a fraction of the charged batch's mass, from 0 to below 1.</param>
/// <param name="File">The file that says so, for messages; null where none does.</param>
/// <param name="Line">Its line, or 0.</param>
public sealed record Adjustment(string Ingredient, decimal ShareRemoved, string? File = null, int Line = 0)
{
    /// <summary>The same share without rounding; null where it is not known.</summary>
    public Fraction? ExactShare { get; init; }
}
