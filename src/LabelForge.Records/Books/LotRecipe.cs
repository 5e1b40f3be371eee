using LabelForge.Lots;
using LabelForge.Markets;
using LabelForge.Recipes;

namespace LabelForge.Records.Books;

/// <summary>A recipe as one lot was really weighed.</summary>
/// <param name="Recipe">With the lot's own amounts, where the books know the lot; else as it is.</param>
/// <param name="Changes">What that changes on the label, one sentence each; empty where the label holds.</param>
public sealed record LotRecipe(Recipe Recipe, IReadOnlyList<string> Changes)
{
    /// <summary>Binds what is printed for a lot to what the books say was weighed into it.</summary>
    public static LotRecipe Of(Workshop workshop, Recipe recipe, LotCode lot, Market market, DateOnly on)
    {
        if (!RecordBook.Exists(workshop.Folder))
            return new LotRecipe(recipe, []);
        var ledger = RecordBook.Open(workshop.Folder).Read();
        if (ledger.Batches.FirstOrDefault(b => b.Lot == lot.ToString() && b.Recipe == recipe.Id) is not { } batch)
            return new LotRecipe(recipe, []);
        var changes = WeighedLabel.Of(workshop, recipe, ledger, batch, market, on).Changes;
        var lines = Bench.Compare(ledger, batch);
        return new LotRecipe(BatchSize.Of(workshop, recipe, lines.Select(l => (l.Line.Material, l.Weighed > 0 ? l.Weighed : l.Line.Grams)), batch.PiecesPlanned).Recipe, changes);
    }
}
