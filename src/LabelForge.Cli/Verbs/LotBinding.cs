using LabelForge.Lots;
using LabelForge.Markets;
using LabelForge.Recipes;
using LabelForge.Records.Books;

namespace LabelForge.Cli.Verbs;

/// <summary>Binds what is printed for a lot to what the books say was weighed into it.</summary>
internal static class LotBinding
{
    /// <summary>The recipe with the lot's own amounts, and the materials as they stood, where the books know the lot; else both as they are.</summary>
    /// <remarks>What changes on the label is told on standard error before anything is printed.</remarks>
    public static (Workshop Workshop, Recipe Recipe) Bind(Workshop workshop, Recipe recipe, LotCode lot, Market market, DateOnly on)
    {
        var bound = LotRecipe.Of(workshop, recipe, lot, market, on);
        foreach (var change in bound.Changes)
            Console.Error.WriteLine($"Lot {lot}, by what was really weighed: {change} This is printed by what was weighed.");
        return (bound.Workshop, bound.Recipe);
    }
}
