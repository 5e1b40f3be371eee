using LabelForge.Papers;

namespace LabelForge.Recipes.Saponification;

/// <summary>The usual cautions of a bench where lye is used: common practice. The supplier's
/// safety data sheet says more, and goes before these.</summary>
public static class LyeCautions
{
    /// <summary>One caution each, in English.</summary>
    public static ImmutableArray<string> All { get; } = In(PaperWords.English);

    /// <summary>One caution each.</summary>
    public static ImmutableArray<string> In(PaperWords words) =>
        [words["caution-lye-burns"], words["caution-lye-into-water"], words["caution-lye-aluminium"], words["caution-lye-rinse"]];

    /// <summary>Whether a batch uses lye, by itself or in something that the shop mixed.</summary>
    public static bool Apply(Workshop workshop, BatchFormula batch) =>
        ExplodedFormula.Of(workshop, batch).Any(f => f.Material.Kind == MaterialKind.Lye);
}
