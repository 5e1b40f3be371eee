namespace LabelForge.Quantities;

/// <summary>What one piece of a batch declares as its net quantity.</summary>
public static class PieceQuantity
{
    /// <summary>The recipe's own figure, or the batch divided by its pieces and rounded down to what the measurement bears.</summary>
    /// <remarks>
    /// A computed figure is rounded down to a whole gram, or below 20 g to a tenth: a kitchen scale shows no more (common practice).
    /// </remarks>
    /// <exception cref="InputException">The kind is sold by volume and the recipe gives no volume.</exception>
    public static NetAmount Of(BatchFormula batch, ProductKind kind)
    {
        if (batch.Recipe.Net is { } written)
            return written;
        if (kind.QuantityBy == QuantityBy.Volume)
        {
            throw new InputException(batch.Recipe.File, 0, "quantity.sold-volume", ("kind", kind.Name.ToLowerInvariant()));
        }
        var grams = batch.PerPiece.Grams;
        var step = grams < 20 ? 0.1m : 1m;
        var down = Math.Floor(grams / step) * step;
        return down > 0
            ? NetAmount.Of(Mass.FromGrams(down))
            : throw new InputException(batch.Recipe.File, 0, "quantity.too-light");
    }
}
