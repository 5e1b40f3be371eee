namespace LabelForge.Recipes.Saponification;

/// <summary>Molar masses, g/mol, from the abridged standard atomic weights.</summary>
/// <remarks>
/// IUPAC, Standard atomic weights of the elements 2021 (Prohaska et al., Pure and Applied Chemistry 94, 2022, 573-600),
/// abridged to five figures: H 1.008, C 12.011, O 15.999, Na 22.990, K 39.098.
/// </remarks>
public static class MolarMass
{
    private const decimal Hydrogen = 1.008m;
    private const decimal Carbon = 12.011m;
    private const decimal Oxygen = 15.999m;
    private const decimal Sodium = 22.990m;
    private const decimal Potassium = 39.098m;

    /// <summary>NaOH.</summary>
    public const decimal SodiumHydroxide = Sodium + Oxygen + Hydrogen;

    /// <summary>KOH.</summary>
    public const decimal PotassiumHydroxide = Potassium + Oxygen + Hydrogen;

    /// <summary>Water, H2O.</summary>
    public const decimal Water = 2 * Hydrogen + Oxygen;

    /// <summary>Glycerin, C3H8O3.</summary>
    public const decimal Glycerin = 3 * Carbon + 8 * Hydrogen + 3 * Oxygen;
}
