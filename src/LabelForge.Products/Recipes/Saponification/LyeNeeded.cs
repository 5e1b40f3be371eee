namespace LabelForge.Recipes.Saponification;

/// <summary>What a gram of a material does to the balance of alkali; what the shop mixed itself is opened up.</summary>
/// <param name="Takes">Moles of alkali that the fat in a gram takes up, at the middle of its saponification value.</param>
/// <param name="TakesFirst">Moles that acids in it take up which are no fats; no superfat is counted on it.</param>
/// <param name="Gives">Moles of alkali that a gram brings.</param>
internal readonly record struct AlkaliPerGram(decimal Takes, decimal TakesFirst, decimal Gives)
{
    /// <summary>Whether it has no part in the balance.</summary>
    public bool IsNone => Takes == 0 && TakesFirst == 0 && Gives == 0;

    /// <summary>The balance of a material.</summary>
    /// <exception cref="InputException">A lye or an oil does not say what is needed to count it.</exception>
    public static AlkaliPerGram Of(Workshop workshop, Material material)
    {
        var charge = SoapCharge.Of(ExplodedFormula.Of(workshop, material).Select(f => (f.Material, f.Share.Fraction)),
            workshop.Dictionary);
        var first = charge.PlainAcidDemand(v => v.Middle);
        return new AlkaliPerGram(charge.Demand(v => v.Middle) - first, first, charge.AlkaliMoles);
    }
}
