using LabelForge.Checks;
using LabelForge.Lots;
using LabelForge.Print.Jobs;

namespace LabelForge.UseCases;

/// <summary>What was found about one product in one market.</summary>
/// <param name="Product">The product's name, as <c>bramble-bar/Moss Wall</c>; of a recipe that cannot be read, its id.</param>
/// <param name="Market">The market.</param>
/// <param name="Report">The findings; null where the product could not be judged.</param>
/// <param name="Problem">Why it could not; null where it was.</param>
public sealed record JudgedProduct(string Product, Market Market, CheckReport? Report, Problem? Problem)
{
    /// <summary>How many findings weigh so much.</summary>
    public int Count(Severity severity) => Report?.Findings.Count(f => f.Severity == severity) ?? 0;
}

/// <summary>Judges a whole workshop: every product that would be printed, market by market.</summary>
public static class WorkshopJudgement
{
    /// <summary>Each product in each market, in the order of recipes and variants, then each gift set. A recipe that cannot be read is a
    /// row of its own and stops no other.</summary>
    /// <param name="markets">The markets to judge by.</param>
    /// <param name="on">The day to judge by.</param>
    public static ImmutableArray<JudgedProduct> Of(Workshop workshop, IReadOnlyList<Market> markets, DateOnly on) =>
        [.. workshop.RecipeIds.SelectMany(id => OfRecipe(workshop, id, markets, on)),
            .. GiftSet.Ids(workshop).Select(id => $"{GiftSet.Folder}/{id}").SelectMany(name => markets.Select(m => Judge(name, m,
                () => SetLabel.Prepare(workshop, GiftSet.Named(workshop, name)!, m, new LotCode(on, 1), on))))];

    private static IEnumerable<JudgedProduct> OfRecipe(Workshop workshop, string id, IReadOnlyList<Market> markets, DateOnly on)
    {
        try
        {
            // Each batch brings its own lot; the day's first stands for it, so that none is called missing.
            return [.. workshop.ProductsOf(id).SelectMany(p => markets.Select(m =>
                Judge(p.Name, m, () => LabelJob.Prepare(p, m, null, new LotCode(on, 1), on))))];
        }
        catch (InputException e)
        {
            return [.. markets.Select(m => new JudgedProduct(id, m, null, e.Problem))];
        }
    }

    private static JudgedProduct Judge(string name, Market market, Func<LabelJob> label)
    {
        try
        {
            return new(name, market, label().Check(), null);
        }
        catch (InputException e)
        {
            return new(name, market, null, e.Problem);
        }
    }
}
