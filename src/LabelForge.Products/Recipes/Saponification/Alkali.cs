using LabelForge.Ingredients;

namespace LabelForge.Recipes.Saponification;

/// <summary>An alkali that makes soap.</summary>
/// <param name="Name">Its name in the dictionary.</param>
/// <param name="MolarMass">g/mol.</param>
public sealed record Alkali(string Name, decimal MolarMass)
{
    /// <summary>Sodium hydroxide, for bars.</summary>
    public static Alkali Sodium { get; } = new("Sodium Hydroxide", Saponification.MolarMass.SodiumHydroxide);

    /// <summary>Potassium hydroxide, for soft and liquid soap.</summary>
    public static Alkali Potassium { get; } = new("Potassium Hydroxide", Saponification.MolarMass.PotassiumHydroxide);

    /// <summary>The alkali that a dictionary entry is, or null.</summary>
    public static Alkali? Of(Ingredient? entry) =>
        entry?.Us == Sodium.Name ? Sodium : entry?.Us == Potassium.Name ? Potassium : null;
}
