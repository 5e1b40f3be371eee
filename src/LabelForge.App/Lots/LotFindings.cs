using LabelForge.Checks;
using LabelForge.Lots;
using LabelForge.Print.Designs;
using LabelForge.Print.Fitting;
using LabelForge.Print.Jobs;
using LabelForge.Records.Books;

namespace LabelForge.UseCases;

/// <summary>What the rules say of a lot by what was weighed into it: at the bench, when it is
/// closed, and before its labels are printed.</summary>
public static class LotFindings
{
    /// <summary>What is wrong with a lot by what was weighed so far and would not be by its plan:
    /// an overdose breaks the limits that it would break in a recipe.</summary>
    /// <param name="workshop">The workshop as it stands today.</param>
    /// <param name="batch">The batch; while it is open, what is still to be weighed counts as planned.</param>
    /// <param name="market">The market to judge by.</param>
    /// <param name="on">The day to judge by.</param>
    /// <returns>Findings of severity must; none where the product cannot be judged, which the label's changes say.</returns>
    public static ImmutableArray<Finding> BrokenAtTheBench(Workshop workshop, IBooks books, Batch batch, Market market, DateOnly on)
    {
        try
        {
            var products = workshop.ProductsOf(batch.Recipe);
            var weighed = books.ClosingOf(batch) is null
                ? LotProducts.SoFar(products, books, batch)
                : LotProducts.Weighed(products, books, batch, market, on);
            var planned = Musts(LotProducts.Begun(products, books, batch), batch, market, on);
            return [.. Musts(weighed, batch, market, on)
                .Where(f => !planned.Any(p => p.Rule == f.Rule && p.Source == f.Source && p.Where == f.Where))];
        }
        catch (InputException)
        {
            return [];
        }
    }

    /// <summary>What stops labels from being printed: each open <c>must</c> of what was laid out.</summary>
    /// <param name="job">The label.</param>
    /// <exception cref="InputException">The product cannot be judged.</exception>
    public static ImmutableArray<Finding> BeforePrinting(LabelJob job) =>
        IsForACarton(job) ? [] : [.. job.Check().Findings.Where(f => f.Severity == Severity.Must)];

    // A carton in the stock room holds packages that carry their own labels; nobody buys by it.
    private static bool IsForACarton(LabelJob job) =>
        job.Fit is Fit.Fits fits && fits.Layout.Design.Panels.SelectMany(p => p.Elements).Any(e => e.Role == Role.LotBarcode);

    private static ImmutableArray<Finding> Musts(Product product, Batch batch, Market market, DateOnly on) =>
        [.. RecipeCheck.Run(LabelJob.Prepare(product, market, null, LotCode.Parse(batch.Lot).OrRefuse(), on).Facts).Findings
            .Where(f => f.Severity == Severity.Must)];
}
