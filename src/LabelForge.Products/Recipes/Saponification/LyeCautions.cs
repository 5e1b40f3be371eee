using System.Collections.Immutable;

namespace LabelForge.Recipes.Saponification;

/// <summary>The usual cautions of a bench where lye is used: common practice. The supplier's safety data sheet says more, and goes before these.</summary>
public static class LyeCautions
{
    /// <summary>One caution each.</summary>
    public static ImmutableArray<string> All { get; } =
    [
        "Lye burns skin and eyes at once. Goggles, gloves and long sleeves on before the jar is opened, and until all is washed up; children and animals out of the room.",
        "Always lye into water, a little at a time, never water into lye: it boils up. The mix grows very hot and gives off fumes; stir it under a hood, at an open window or outdoors.",
        "Never in aluminium, which lye dissolves, giving off gas that burns. Use stainless steel, or plastic that bears the heat; mark every vessel that holds lye.",
        "Weigh the lye twice. On skin: rinse with running water for a long time. In eyes: rinse at once and go on rinsing, and call for help.",
    ];

    /// <summary>Whether a batch uses lye, by itself or in something that the shop mixed.</summary>
    public static bool Apply(Workshop workshop, BatchFormula batch) => ExplodedFormula.Of(workshop, batch).Any(f => f.Material.Kind == MaterialKind.Lye);
}
