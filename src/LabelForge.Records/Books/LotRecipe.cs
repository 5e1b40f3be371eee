using LabelForge.Lots;
using LabelForge.Markets;
using LabelForge.Recipes;

namespace LabelForge.Records.Books;

/// <summary>A recipe as one lot was really weighed.</summary>
/// <param name="Workshop">With the materials as they stood when the lot was begun, where the books know the lot; else as it is.</param>
/// <param name="Recipe">With the lot's own amounts, where the books know the lot; else as it is.</param>
/// <param name="Changes">What that changes on the label, one sentence each; empty where the label holds.</param>
public sealed record LotRecipe(Workshop Workshop, Recipe Recipe, IReadOnlyList<string> Changes)
{
    /// <summary>Binds what is printed for a lot to what the books say was weighed into it.</summary>
    /// <exception cref="LabelForge.Measures.InputException">The lot is of another recipe or variant.</exception>
    public static LotRecipe Of(Workshop workshop, Recipe recipe, LotCode lot, Market market, DateOnly on)
    {
        if (!RecordBook.Exists(workshop.Folder))
            return new LotRecipe(workshop, recipe, []);
        var ledger = RecordBook.Open(workshop.Folder).Read();
        if (ledger.Batches.FirstOrDefault(b => b.Lot == lot.ToString()) is not { } batch)
            return new LotRecipe(workshop, recipe, []);
        var label = WeighedLabel.Of(workshop, recipe, ledger, batch, market, on);
        return new LotRecipe(label.Workshop, label.Formula.Recipe, label.Changes);
    }
}
