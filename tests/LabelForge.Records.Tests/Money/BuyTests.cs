using LabelForge.Recipes;
using LabelForge.Records.Books;
using LabelForge.Records.Money;
using LabelForge.Records.Tests.Books;

namespace LabelForge.Records.Tests.Money;

public class BuyTests
{
    [Fact]
    public void The_cheapest_packs_are_those_of_trying_every_combination()
    {
        var random = new Random(11);
        for (var round = 0; round < 60; round++)
        {
            var problem = Random(random, most: false, budget: null);
            Assert.Equal(BruteForce(problem)?.Cents, BuySolver.Solve(problem)?.Cents);
        }
    }

    [Fact]
    public void The_most_pieces_of_a_budget_are_those_of_trying_every_combination()
    {
        var random = new Random(12);
        for (var round = 0; round < 40; round++)
        {
            var problem = Random(random, most: true, budget: random.Next(200, 1500));
            var (best, plan) = (BruteForce(problem), BuySolver.Solve(problem));
            Assert.Equal(best?.Pieces, plan?.Pieces.Values.Sum());
            Assert.Equal(best?.Cents, plan?.Cents);
            Assert.True(plan is null || (plan.Optimal && plan.Cents <= problem.BudgetCents && plan.Left.Values.All(l => l >= 0)));
        }
    }

    [Fact]
    public void What_is_in_stock_is_not_bought_again()
    {
        using var shop = new TestShop();
        shop.Receive("base", 600, 8);
        shop.Receive("base", 5000, 8, TestShop.Day.AddDays(-1));
        shop.Receive("castor-oil", 100, 3);
        var problem = BuyList.Of(shop.Workshop, [(shop.Workshop.ProductOf("bar"), 8)], CostsFile.None with { Packaging = [("bag", 1)] }, shop.Book.Read(), null, false, TestShop.Day);
        var plan = BuySolver.Solve(problem)!;
        // 300 g of base are short (what is past its date does not count), all of the scent and the bags.
        Assert.Equal(["bag 100 pieces 1", "base 500 g 1", "scent 60 g 1"], plan.Packs.Select(p => $"{p.Material} {p.Pack.Size} {p.Count}").Order(StringComparer.Ordinal));
        Assert.Equal((2200, 200m), (plan.Cents, plan.Left["base"]));
        Assert.True(plan.Optimal);
    }

    // Six pieces of a pound take a pound, though a sixth of it has no end of decimals: one pack, and none left.
    [Theory]
    [InlineData(6, 6, 1)]
    [InlineData(6, 12, 2)]
    [InlineData(7, 7, 1)]
    [InlineData(6, 7, 2)]
    [InlineData(3, 9, 3)]
    public void A_whole_batch_takes_whole_packs_and_no_more(int perBatch, int wanted, long packs)
    {
        var pound = 453.59237m;
        var plan = BuySolver.Solve(new BuyProblem(
            [new BuyMaterial("base", 0, [new BuyPack("1 lb", pound, 900)])],
            [new BuyProduct("bar", new Dictionary<string, decimal> { ["base"] = pound }, perBatch, wanted)], null, false))!;
        Assert.Equal((packs, true), (plan.Packs.Single().Count, plan.Optimal));
        Assert.InRange(plan.Left["base"], 0, pound);
    }

    // An amount that is itself a third of something: what was rounded is never called the best unless it is.
    [Fact]
    public void A_plan_with_rounded_needs_is_called_the_best_only_where_it_is()
    {
        BuyPlan Of(decimal pack) => BuySolver.Solve(new BuyProblem(
            [new BuyMaterial("base", 0, [new BuyPack("a third", pack, 900)])],
            [new BuyProduct("bar", new Dictionary<string, decimal> { ["base"] = 1000m / 3 }, 1, 3)], null, false))!;
        Assert.Equal((4, true), (Of(299m).Packs.Single().Count, Of(299m).Optimal));
        Assert.Equal((4, false), (Of(1000m / 3 - 1e-20m).Packs.Single().Count, Of(1000m / 3 - 1e-20m).Optimal));
    }

    [Fact]
    public void A_budget_too_small_gives_no_plan()
    {
        using var shop = new TestShop();
        var problem = BuyList.Of(shop.Workshop, [(shop.Workshop.ProductOf("bar"), 8)], CostsFile.None, null, 2000, false, TestShop.Day);
        Assert.Null(BuySolver.Solve(problem));
        Assert.Equal(2900, BuySolver.Solve(problem with { BudgetCents = null })!.Cents);
    }

    private static BuyProblem Random(Random random, bool most, long? budget)
    {
        var materials = Enumerable.Range(0, 2).Select(m => new BuyMaterial($"m{m}", random.Next(0, 30),
            [.. Enumerable.Range(0, 2).Select(p => new BuyPack($"p{p}", random.Next(10, 80), random.Next(100, 600)))])).ToArray();
        var products = Enumerable.Range(0, 2).Select(p => new BuyProduct($"r{p}", materials.ToDictionary(m => m.Id, _ => random.Next(1, 1200) / 10m), random.Next(1, 13), most ? 0 : random.Next(1, 8))).ToArray();
        return new BuyProblem(materials, products, budget, most);
    }

    // Every number of pieces, and for each material every pair of packs.
    private static (long Pieces, long Cents)? BruteForce(BuyProblem problem)
    {
        (long Pieces, long Cents)? best = null;
        var (a, b) = (problem.Products[0], problem.Products[1]);
        for (var x = a.Least; x <= (problem.Most ? 700 : a.Least); x++)
        {
            var any = false;
            for (var y = b.Least; y <= (problem.Most ? 700 : b.Least); y++)
            {
                var cents = 0L;
                foreach (var m in problem.Materials)
                    cents += Cheapest(m, a.PerBatch[m.Id] * b.Pieces * x + b.PerBatch[m.Id] * a.Pieces * y - m.Stock * a.Pieces * b.Pieces, a.Pieces * b.Pieces);
                if (problem.BudgetCents is { } budget && cents > budget)
                    break;
                any = true;
                if (best is null || x + y > best.Value.Pieces || (x + y == best.Value.Pieces && cents < best.Value.Cents))
                    best = (x + y, cents);
            }
            if (!any)
                break;
        }
        return best;
    }

    // What is short, so many times over, since a share of a batch may have no end of decimals.
    private static long Cheapest(BuyMaterial material, decimal short_, int over)
    {
        if (short_ <= 0)
            return 0;
        var (p, q) = (material.Packs[0], material.Packs[1]);
        return Enumerable.Range(0, (int)Math.Ceiling(short_ / (p.Amount * over)) + 1)
            .Min(n => n * p.Cents + (long)Math.Ceiling(Math.Max(0, short_ - n * p.Amount * over) / (q.Amount * over)) * q.Cents);
    }
}
