using LabelForge.Lots;
using LabelForge.Print.Fitting;
using LabelForge.Print.Jobs;
using LabelForge.Print.Sheets;
using LabelForge.Records.Books;

namespace LabelForge.UseCases;

/// <summary>A full sheet of labels of each scent of a recipe, in one go, each with a lot of its own.</summary>
public static class SheetOfEach
{
    /// <summary>The labels: of each scent the latest lot that was begun of it, else the next that is free.</summary>
    /// <param name="recipe">The recipe with its variants.</param>
    /// <param name="design">The design's id; null for the usual one.</param>
    /// <param name="stock">The label sheets.</param>
    /// <param name="books">The books; null where there are none yet.</param>
    /// <exception cref="InputException">A scent cannot be made, or its label does not fit; the message names it.</exception>
    public static ImmutableArray<LabelsToPrint> Of(Workshop workshop, Recipe recipe, Market market, string? design, LabelStock stock,
        IBooks? books, DateOnly on)
    {
        var given = new HashSet<string>(StringComparer.Ordinal);
        var labels = ImmutableArray.CreateBuilder<LabelsToPrint>();
        foreach (var scent in recipe.Variants.Select(v => recipe.Variant(v.Name)))
        {
            var lot = Begun(books, scent) is { } begun ? begun : books is null ? Fresh(on, given) : NextLot.Of(books, on, scent, given);
            given.Add(lot.ToString());
            var product = LotProducts.Of(Product.Planned(workshop, scent), lot, market, on);
            var job = LabelJob.Prepare(product, market, design, lot, on);
            if (job.Fit is Fit.DoesNotFit not)
                throw new InputException(new Problem("recipe.of-product", ("product", scent.Name), ("inner", not.Problem)));
            labels.Add(new LabelsToPrint(job, lot, stock.PerSheet) { Stock = stock.Id });
        }
        return labels.ToImmutable();
    }

    /// <summary>What stands on the sheets: a new sheet for each scent, full.</summary>
    /// <exception cref="InputException">A label does not fit the stock.</exception>
    public static SheetOrder Order(ImmutableArray<LabelsToPrint> labels, LabelStock stock) => new()
    {
        Stock = stock,
        Runs = [
            .. labels.Select(l => new LabelRun(l.Job.Fit is Fit.Fits fits
                ? fits.Layout
                : throw new InvalidOperationException("Only what fits is printed."), l.Count))],
    };

    private static LotCode? Begun(IBooks? books, Recipe scent) =>
        books?.LastBatch(scent.Id, scent.VariantName) is { } batch ? LotCode.Parse(batch.Lot).OrRefuse() : null;

    private static LotCode Fresh(DateOnly on, HashSet<string> given) => new(on, given.Count + 1);
}
