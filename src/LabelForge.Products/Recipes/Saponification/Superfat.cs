using LabelForge.Ingredients;

namespace LabelForge.Recipes.Saponification;

/// <summary>
/// How much of the fats finds no alkali, as a fraction of all that they could take up; below 0 where there is more alkali
/// than that. Acids that are no fats have their whole measure first and do not count. It is a
/// range, since an oil's saponification value is.
/// </summary>
/// <param name="Least">Where every fat takes up as little as its range allows: the side on which alkali is left over.</param>
/// <param name="Middle">Where every fat has the middle of its range.</param>
/// <param name="Most">Where every fat takes up as much as its range allows.</param>
public sealed record Superfat(decimal Least, decimal Middle, decimal Most)
{
    /// <summary>The superfat of what a batch brings.</summary>
    public static Superfat Of(SoapCharge charge) => new(At(charge, v => v.Low), At(charge, v => v.Middle), At(charge, v => v.High));

    private static decimal At(SoapCharge charge, Func<SaponificationValue, decimal> value) =>
        1 - (charge.AlkaliMoles - charge.PlainAcidDemand(value)) / (charge.Demand(value) - charge.PlainAcidDemand(value));
}
