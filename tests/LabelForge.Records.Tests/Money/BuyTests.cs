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
        var problem = BuyList.Of(shop.Workshop, [(shop.Workshop.ProductOf("bar"), 8)], CostsFile.None with { Packaging = [("bag", 1)] },
            shop.Book.Read(), null, false, TestShop.Day);
        var plan = BuySolver.Solve(problem)!;
        // 300 g of base are short (what is past its date does not count), all of the scent and the bags.
        Assert.Equal(["bag 100 pieces 1", "base 500 g 1", "scent 60 g 1"],
            plan.Packs.Select(p => $"{p.Material} {p.Pack.Size} {p.Count}").Order(StringComparer.Ordinal));
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

    // Every way to have a thing or not, against the solver: what is bought once costs what it costs, and only where it is needed.
    [Fact]
    public void Things_that_are_bought_once_are_those_of_trying_with_and_without_each_product()
    {
        var random = new Random(13);
        for (var round = 0; round < 40; round++)
        {
            var problem = Random(random, most: true, budget: random.Next(600, 2500));
            BuyTool[] tools = [new("jug", "jug", random.Next(50, 400), false, [0, 1]),
                new("mould", "mould", random.Next(50, 600), false, [0])];
            // With the first product, both things are paid; with the second alone, the jug; with none, nothing.
            var both = Best(problem, tools[0].Cents!.Value + tools[1].Cents!.Value, only: null);
            var second = Best(problem, tools[0].Cents!.Value, only: 1);
            var plan = BuySolver.Solve(problem with { Tools = tools })!;
            Assert.Equal(Math.Max(both, second), plan.Made);
            Assert.True(plan.Optimal && plan.Cents <= problem.BudgetCents);
            Assert.Equal(plan.Cents, plan.Packs.Sum(p => p.Count * p.Pack.Cents) + plan.Tools.Sum(t => t.Count * t.Tool.Cents!.Value));
        }

        static long Best(BuyProblem problem, long things, int? only)
        {
            if (problem.BudgetCents - things is not (>= 0 and var left))
                return 0;
            var products = only is { } one
                ? [.. problem.Products
                    .Select((p, i) => i == one ? p : p with { PerBatch = p.PerBatch.ToDictionary(t => t.Key, _ => 1_000_000m) })]
                : problem.Products;
            return BruteForce(problem with { BudgetCents = left, Products = products })?.Pieces ?? 0;
        }
    }

    [Theory]
    [InlineData(1, 8, 2)]
    [InlineData(2, 8, 1)]
    [InlineData(2, 13, 2)]
    [InlineData(null, 600, 1)]
    public void So_many_moulds_are_bought_that_each_is_filled_no_oftener_than_is_wanted(int? fillings, int pieces, long moulds)
    {
        var plan = BuySolver.Solve(new BuyProblem([new BuyMaterial("base", 100_000, [])],
            [new BuyProduct("bar", new Dictionary<string, decimal> { ["base"] = 100 }, 1, pieces)], null, false)
        { Tools = [new BuyTool("mould", "mould", 900, false, [0]) { Pieces = 6 }], Fillings = fillings })!;
        Assert.Equal((moulds, moulds * 900), (plan.Tools.Single().Count, plan.Cents));
    }

    [Fact]
    public void What_the_workshop_has_is_not_bought_and_what_has_no_price_is_left_out_by_name()
    {
        using var shop = new TestShop();
        BuyProblem Of() =>
        BuyList.Of(shop.Workshop, [(shop.Workshop.ProductOf("bar"), 8)], CostsFile.Of(shop.Workshop), null, null, false, TestShop.Day,
            tools: true);
        Assert.Equal(["scale 25 True", "jug 12 True", "mould 15 True", "thermometer 15 True"],
            Of().Tools.Select(t => $"{t.Id} {t.Cents / 100} {t.IsGuess}"));
        shop.Write("costs.yaml",
            "tools: [ { use: scale, price: 18.50 }, { use: jug, have: 1 }, { use: stick blender, price: 30 }, { use: bell } ]\n");
        var problem = Of();
        Assert.Equal(["mould", "scale", "stick blender", "thermometer"],
            BuySolver.Solve(problem)!.Tools.Select(t => t.Tool.Id).Order(StringComparer.Ordinal));
        Assert.Equal(1850, problem.Tools.Single(t => t.Id == "scale").Cents);
        Assert.Equal(["bell"], problem.WithoutPrice);
        Assert.DoesNotContain(problem.Tools, t => t.Id == "goggles");
        // Prices of the United States are no prices elsewhere.
        File.AppendAllText(Path.Combine(shop.Folder, "workshop.yaml"), "currency: EUR\n");
        Assert.Contains("mould of six cavities", Of().WithoutPrice);
    }

    [Theory]
    [InlineData("tools: [ { use: scale, price: much } ]", "\"much\" is not a price")]
    [InlineData("tools: [ { use: scale, have: -1 } ]", "not a number of them")]
    [InlineData("tools: [ { use: scale }, { use: scale } ]", "scale stands here twice")]
    [InlineData("tools: [ scale ]", "not a thing and its price")]
    public void What_is_wrong_about_a_thing_is_said_with_its_line(string text, string says)
    {
        using var shop = new TestShop();
        shop.Write("costs.yaml", text);
        Assert.Contains(says, TestShop.Refusal(() => CostsFile.Of(shop.Workshop)), StringComparison.Ordinal);
    }

    private static BuyProblem Random(Random random, bool most, long? budget)
    {
        var materials = Enumerable.Range(0, 2).Select(m => new BuyMaterial($"m{m}", random.Next(0, 30),
            [.. Enumerable.Range(0, 2).Select(p => new BuyPack($"p{p}", random.Next(10, 80), random.Next(100, 600)))])).ToArray();
        var products = Enumerable.Range(0, 2)
            .Select(p => new BuyProduct($"r{p}", materials.ToDictionary(m => m.Id, _ => random.Next(1, 1200) / 10m), random.Next(1, 13),
                most ? 0 : random.Next(1, 8))).ToArray();
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
                    cents += Cheapest(m, a.PerBatch[m.Id] * b.Pieces * x + b.PerBatch[m.Id] * a.Pieces * y - m.Stock * a.Pieces * b.Pieces,
                        a.Pieces * b.Pieces);
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
