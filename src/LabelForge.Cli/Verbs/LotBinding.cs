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
        if (!RecordBook.Exists(workshop.Folder))
            return (workshop, recipe);
        var ledger = RecordBook.Open(workshop.Folder).Read();
        if (ledger.Batches.FirstOrDefault(b => b.Lot == lot.ToString()) is not { } batch)
            return (workshop, recipe);
        var label = WeighedLabel.Of(workshop, recipe, ledger, batch, market, on);
        foreach (var change in label.Changes)
            Console.Error.WriteLine($"Lot {lot}, by what was really weighed: {change} This is printed by what was weighed.");
        return (label.Workshop, label.Formula.Recipe);
    }
}
