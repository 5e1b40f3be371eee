using LabelForge.Records.Books;
using LabelForge.Records.Money;

namespace LabelForge.Selling;

/// <summary>What to pour next of a product.</summary>
/// <param name="Product">The product.</param>
/// <param name="Sold">Pieces sold in the days looked at, less those brought back.</param>
/// <param name="Left">Pieces in the house, or at the bench.</param>
/// <param name="Pour">Pieces that as many days to come would want beyond these, in whole batches as the recipe stands.</param>
/// <param name="Money">What they would bring at the price in the recipe; null where it has none.</param>
public sealed record NextPourRow(Product Product, int Sold, int Left, int Pour, decimal? Money)
{
    /// <summary>Pieces that are poured within the budget; the whole of <see cref="Pour"/> where there is none.</summary>
    public int WithinBudget { get; init; } = Pour;
}

/// <summary>What to pour next, by what sold.</summary>
/// <param name="From">The first day looked at.</param>
/// <param name="To">The last.</param>
/// <param name="Rows">The products that sold, what sold best first.</param>
/// <param name="Buy">The cheapest packs for it; null where they cannot be reckoned.</param>
/// <param name="WhyNot">Why they cannot; null where they are.</param>
public sealed record NextPour(DateOnly From, DateOnly To, ImmutableArray<NextPourRow> Rows, BuyPlan? Buy, Problem? WhyNot)
{
    /// <summary>How many days are looked at where nobody says: four weeks, common practice.</summary>
    public const int UsualDays = 28;

    /// <summary>Looks at what sold, and what is still there.</summary>
    /// <param name="books">The books; of them those days and what is in the house are asked for.</param>
    /// <param name="days">How many days back count.</param>
    /// <param name="budget">What may be spent on materials and packaging; null for as much as it takes.</param>
    public static NextPour Of(Workshop workshop, IBooks books, DateOnly on, int days = UsualDays, decimal? budget = null)
    {
        var from = on.AddDays(1 - days);
        var (sold, open) = (books.SoldBetween(from, on), books.OpenBatches());
        ImmutableArray<NextPourRow> rows = [.. PriceList.In(workshop, books).Select(p => Row(workshop, sold, open, p))
            .OfType<NextPourRow>()
            .OrderByDescending(r => r.Sold).ThenBy(r => r.Product.Name, StringComparer.Ordinal)];
        if (rows.All(r => r.Pour == 0))
            return new NextPour(from, on, rows, null, null);
        try
        {
            var (wanted, plan) = Within(workshop, books, rows, on, budget);
            return new NextPour(from, on, wanted, plan, null);
        }
        catch (InputException e)
        {
            return new NextPour(from, on, rows, null, e.Problem);
        }
    }

    private static NextPourRow? Row(Workshop workshop, IReadOnlyList<ProductSold> all, IReadOnlyList<Batch> open, ProductOnTable product)
    {
        bool IsOf(string recipe, string? variant) => recipe == product.Recipe.Id && variant == product.Recipe.VariantName;
        var sold = all.Where(p => IsOf(p.Recipe, p.Variant)).Sum(p => p.Sold - p.Returned);
        if (sold <= 0)
            return null;
        var left = product.Left + open.Where(b => IsOf(b.Recipe, b.Variant)).Sum(b => b.PiecesPlanned);
        var each = product.Recipe.Pieces;
        var pour = (Math.Max(0, sold - left) + each - 1) / each * each;
        return new NextPourRow(Product.Planned(workshop, product.Recipe), sold, left, pour,
            product.Price is { } price ? pour * price : null);
    }

    // Batch after batch, what sold best first, as long as the cheapest packs for all of it cost no more.
    private static (ImmutableArray<NextPourRow> Rows,
        BuyPlan? Plan) Within(Workshop workshop, IBooks books, ImmutableArray<NextPourRow> rows, DateOnly on, decimal? budget)
    {
        BuyPlan? Cheapest(IEnumerable<NextPourRow> of) =>
        of.Where(r => r.WithinBudget > 0).Select(r => (r.Product, r.WithinBudget)).ToArray() is { Length: > 0 } wanted
                ? Solved(workshop, BuyList.Of(workshop, wanted, CostsFile.Of(workshop), books, null, false, on)) : null;
        if (budget is not { } most)
            return (rows, Cheapest(rows));
        NextPourRow[] chosen = [.. rows.Select(r => r with { WithinBudget = 0 })];
        BuyPlan? plan = null;
        for (var at = 0; at < chosen.Length; at++)
        {
            while (chosen[at].WithinBudget < chosen[at].Pour)
            {
                var before = chosen[at];
                chosen[at] = before with { WithinBudget = before.WithinBudget + before.Product.Recipe.Pieces };
                if (Cheapest(chosen) is not { } more || more.Cents > most * 100m)
                {
                    chosen[at] = before;
                    break;
                }
                plan = more;
            }
        }
        return ([.. chosen], plan);
    }

    private static BuyPlan? Solved(Workshop workshop, BuyProblem problem) => problem.NotToBeHad.Count == 0
        ? BuySolver.Solve(problem)
        : throw new InputException("buy.no-pack", ("list", string.Join(", ", problem.NotToBeHad)),
            ("list-2", string.Join(", ", problem.NotToBeHad.Select(id => workshop.Materials[id].File))));
}
