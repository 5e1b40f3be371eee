namespace LabelForge.Recipes.Saponification;

/// <summary>How soap made from oils is declared.</summary>
public enum DeclareAs
{
    /// <summary>As what went in: oils, lye, water.</summary>
    Charged,

    /// <summary>As what came out: soaps, glycerin, water, what oil is left.</summary>
    Formed,
}

/// <summary>How much of the oils is to be left without alkali, as the recipe says.</summary>
/// <param name="Share">The part of what the oils could take up that finds none.</param>
/// <param name="Line">The line it stands on.</param>
public sealed record WrittenSuperfat(Share Share, int Line);
