using LabelForge.Lots;
using LabelForge.Markets;
using LabelForge.Recipes;
using LabelForge.Records.Books;

namespace LabelForge.Cli.Verbs;

/// <summary>Binds what is printed for a lot to what the books say was weighed into it.</summary>
internal static class LotBinding
{
    /// <summary>The recipe with the lot's own amounts, where the books know the lot; else the recipe as it is.</summary>
    /// <remarks>What changes on the label is told on standard error before anything is printed.</remarks>
    public static Recipe Bind(Workshop workshop, Recipe recipe, LotCode lot, Market market, DateOnly on)
    {
        var bound = LotRecipe.Of(workshop, recipe, lot, market, on);
        foreach (var change in bound.Changes)
            Console.Error.WriteLine($"Lot {lot} was weighed otherwise than the recipe says. {change} This is printed by what was weighed.");
        return bound.Recipe;
    }
}
