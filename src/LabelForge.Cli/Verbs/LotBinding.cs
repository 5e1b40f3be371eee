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
        if (!RecordBook.Exists(workshop.Folder))
            return recipe;
        var ledger = RecordBook.Open(workshop.Folder).Read();
        if (ledger.Batches.FirstOrDefault(b => b.Lot == lot.ToString() && b.Recipe == recipe.Id) is not { } batch)
            return recipe;
        foreach (var change in WeighedLabel.Of(workshop, recipe, ledger, batch, market, on).Changes)
            Console.Error.WriteLine($"Lot {lot} was weighed otherwise than the recipe says. {change} This is printed by what was weighed.");
        var lines = Bench.Compare(ledger, batch);
        return BatchSize.Of(workshop, recipe, lines.Select(l => (l.Line.Material, l.Weighed > 0 ? l.Weighed : l.Line.Grams)), batch.PiecesPlanned).Recipe;
    }
}
