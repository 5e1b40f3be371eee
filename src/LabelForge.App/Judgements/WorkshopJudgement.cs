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
    /// <param name="workshop">The workshop.</param>
    /// <param name="markets">The markets to judge by.</param>
    /// <param name="on">The day to judge by.</param>
    public static ImmutableArray<JudgedProduct> Of(Workshop workshop, IReadOnlyList<Market> markets, DateOnly on) =>
        [.. workshop.RecipeIds.SelectMany(id => OfRecipe(workshop, id, markets, on)),
            .. GiftSet.Ids(workshop).SelectMany(id => markets.Select(m => OfSet(workshop, id, m, on)))];

    private static IEnumerable<JudgedProduct> OfRecipe(Workshop workshop, string id, IReadOnlyList<Market> markets, DateOnly on)
    {
        ImmutableArray<Product> products;
        try
        {
            products = workshop.ProductsOf(id);
        }
        catch (InputException e)
        {
            return [.. markets.Select(m => new JudgedProduct(id, m, null, e.Problem))];
        }
        return [.. products.SelectMany(p => markets.Select(m => Judge(p, m, on)))];
    }

    private static JudgedProduct OfSet(Workshop workshop, string id, Market market, DateOnly on)
    {
        var name = $"{GiftSet.Folder}/{id}";
        try
        {
            return new(name, market, SetLabel.Prepare(workshop, GiftSet.Named(workshop, name)!, market, new LotCode(on, 1), on).Check(),
                null);
        }
        catch (InputException e)
        {
            return new(name, market, null, e.Problem);
        }
    }

    // Each batch brings its own lot; the day's first stands for it, so that none is called missing.
    private static JudgedProduct Judge(Product product, Market market, DateOnly on)
    {
        try
        {
            return new(product.Name, market, RecipeCheck.Run(LabelJob.Prepare(product, market, null, new LotCode(on, 1), on).Facts), null);
        }
        catch (InputException e)
        {
            return new(product.Name, market, null, e.Problem);
        }
    }
}
