using LabelForge.Recipes.Files;

namespace LabelForge.Recipes;

/// <summary>A blend written in shares of itself: half this, half that. No mass is needed, since only its proportions count.</summary>
internal static class BlendParts
{
    /// <summary>The uses with each share as so many grams of a hundred, where all are shares of the blend; else as they are.</summary>
    /// <exception cref="InputException">All are shares of the blend, and they do not come to 100 %.</exception>
    public static ImmutableArray<MaterialUse> AsMasses(MapNode file, ImmutableArray<MaterialUse> uses)
    {
        if (uses.IsEmpty || !uses.All(u => u.Amount is { Unit: AmountUnit.PercentOf, Of: "batch" or "blend" }))
            return uses;
        var sum = uses.Sum(u => u.Amount.Figure);
        return sum == 100
            ? [.. uses.Select(u => u with { Amount = new Amount(u.Amount.Figure, AmountUnit.Gram, null) })]
            : throw new InputException(file.File, uses[0].Line, "material.blend-sum",
                ("sum", sum.ToString("0.######", CultureInfo.InvariantCulture)),
                ("abs", Math.Abs(100 - sum).ToString("0.######", CultureInfo.InvariantCulture)));
    }
}
