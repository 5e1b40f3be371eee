using LabelForge.Cli.Handover;
using LabelForge.Records.Books;
using LabelForge.Records.Money;

namespace LabelForge.Cli.Verbs;

/// <summary><c>cost</c> and <c>buy</c>: what a piece costs, and what to buy next.</summary>
internal static class MoneyVerbs
{
    public static Command Cost()
    {
        var verb = new Verb("cost", "What a batch and a piece cost, the price for a margin, break-even, and what matters most");
        var what = verb.Argument<string>("WHAT",
            "A recipe, one of its products as RECIPE/VARIANT, or the lot of a finished batch (then by what was paid for the lots "
                + "really used)");
        var margin = verb.Option<string?>("--margin",
            "The share of the price wanted as profit: \"50 %\" (default: costs.yaml, else 50 %)");
        var price = verb.Option<string?>("--price", "A price to judge (default: the one for the margin)");
        var pieces = verb.Option<int?>("--pieces", "Scale the recipe to this many pieces");
        var swing = verb.Option<decimal>("--swing", "By how many percent each input is moved", 10);
        var options = new BookOptions().AddReadingTo(verb, dated: false);
        return verb.OpensBooksWhereKept(options.Folder, r =>
        {
            var workshop = options.Workshop(r);
            var costs = CostsFile.Of(workshop);
            var wanted = r.GetValue(margin) is { } m ? Percent(m) : costs.Margin;
            if (r.GetValue(swing) is <= 0 or >= 100)
                throw new InputException("call.swing");
            var sheets = Sheets(workshop, r.GetValue(what)!, r.GetValue(pieces), costs);
            decimal? asked = r.GetValue(price) is { } p ? BookOptions.Money(p, "--price") : null;
            var currency = workshop.Business.Currency;
            if (options.Json(r))
                JsonOut.Write([.. sheets.Select(s => (s.Name, CostReport.Json(s.Sheet, currency, wanted, asked, r.GetValue(swing))))]);
            foreach (var (name, sheet) in options.Json(r) ? [] : sheets)
            {
                if (sheets.Length > 1)
                    Console.WriteLine($"== {name}");
                CostReport.Write(sheet, currency, wanted, asked, r.GetValue(swing));
            }
            return Exit.Done;
        });
    }

    public static Command Buy()
    {
        var verb = new Verb("buy", "The cheapest whole packs that make the wanted pieces, starting from what is in stock");
        var recipes = verb.Argument<string[]>("RECIPE[:PIECES]",
            "What is wanted: hayloft-bar:18 \"bath-salt/Plain Soak:12\", of a recipe with variants so many of each; without numbers, "
                + "as many as the budget makes", ArgumentArity.OneOrMore);
        var budget = verb.Option<string?>("--budget", "The most to spend");
        var tools = verb.Option<bool>("--tools",
            "Count what pouring needs once, too: a scale, a jug, a mould; what costs.yaml says of them, else the upper end of "
                + "what is usual");
        var fillings = verb.Option<int?>("--fillings",
            "How often a mould is filled at most, with --tools (default: as often as it takes)");
        var options = new BookOptions().AddReadingTo(verb, dated: true);
        return verb.OpensBooks(r =>
        {
            var workshop = options.Workshop(r);
            var most = r.GetValue(recipes)!.All(t => !t.Contains(':'));
            if (most && r.GetValue(budget) is null)
                throw new InputException("call.how-many");
            if (r.GetValue(fillings) is <= 0)
                throw new InputException("call.fillings");
            if (r.GetValue(fillings) is not null && !r.GetValue(tools))
                throw new InputException("call.fillings-without-tools");
            long? cents = r.GetValue(budget) is { } b ? (long)(BookOptions.Money(b, "--budget") * 100m) : null;
            var problem = BookOptions.AskIfAny(workshop,
                books => BuyList.Of(workshop, r.GetValue(recipes)!.SelectMany(t => Wanted(t, workshop)).ToArray(), CostsFile.Of(workshop),
                    books, cents, most, options.On(r), r.GetValue(tools))) with
            { Fillings = r.GetValue(fillings) };
            // Before any reckoning: a material that nobody sells makes the dearest plan no cheaper.
            if (problem.NotToBeHad.Count > 0)
                throw new InputException("call.not-enough-stock", ("listed", Listed(problem.NotToBeHad)),
                    ("listed-2", Listed([.. problem.NotToBeHad.Select(id => workshop.Materials[id].File)])));
            var plan = BuySolver.Solve(problem);
            if (plan is null)
            {
                var without = problem.BudgetCents is null ? null : BuySolver.Solve(problem with { BudgetCents = null, Most = false });
                throw (without is null
                    ? new InputException("call.pieces-cannot-be-made")
                    : new InputException("call.pieces-cannot-be-made-without", ("cents", $"{without.Cents / 100m:0.00}")));
            }
            var bare = most && plan.Tools.Count > 0 ? BuySolver.Solve(problem with { Tools = [] }) : null;
            Tell(plan, bare, problem, workshop, options.Json(r));
            return Exit.Done;
        });
    }

    private static string Listed(IReadOnlyList<string> names) =>
        names is [_, _, ..] ? $"{string.Join(", ", names.SkipLast(1))} and {names[^1]}" : string.Join(", ", names);

    // What the same money makes once the things are there is told beside it.
    private static void Tell(BuyPlan plan, BuyPlan? bare, BuyProblem problem, Workshop workshop, bool json)
    {
        if (json)
        {
            JsonOut.Write(new JsonObject
            {
                ["currency"] = workshop.Business.Currency,
                ["optimal"] = plan.Optimal,
                ["total"] = plan.Cents / 100m,
                ["packs"] = Packs(plan),
                ["tools"] = plan.Tools
                    .ToJson(t => new JsonObject
                    {
                        ["tool"] = t.Tool.Id,
                        ["name"] = t.Tool.Name,
                        ["count"] = t.Count,
                        ["price"] = t.Tool.Cents / 100m,
                        ["guessed"] = t.Tool.IsGuess
                    }),
                ["leftOut"] = problem.WithoutPrice.ToJson(),
                ["withoutTools"] = bare?.Made,
                ["pieces"] = plan.Pieces.ToJson(p => new JsonObject { ["recipe"] = p.Key, ["count"] = p.Value }),
                ["left"] = plan.Left.ToJson(l => new JsonObject { ["material"] = l.Key, ["amount"] = Math.Round(l.Value, 3) }),
            });
            return;
        }
        foreach (var (material, pack, count) in plan.Packs)
            Console.WriteLine(Invariant($"  {count} x {pack.Size} of {material}: {count * pack.Cents / 100m:0.00}"));
        foreach (var (tool, count) in plan.Tools)
            Console.WriteLine(Invariant($"  {count} x {tool.Name}: {count * tool.Cents / 100m:0.00}{(tool.IsGuess ? ", the upper end of what is usual" : "")}"));
        Console.WriteLine(Invariant($"{plan.Cents / 100m:0.00} {workshop.Business.Currency} in all; {(plan.Optimal ? "proved: there is no better" : "the best found; not proved that there is no better")}."));
        if (plan.Tools.Any(t => t.Tool.IsGuess))
            Console.WriteLine(
                "Prices of things are common practice: write what yours cost into costs.yaml, tools: [ { use: scale, price: 18.00 } ], or "
                    + "have: 1 where you have one.");
        if (problem.WithoutPrice.Count > 0)
            Console.WriteLine(
                $"Left out, because nothing says what it costs: {string.Join(", ", problem.WithoutPrice)}. Write it into costs.yaml: "
                    + $"tools: [ {{ use: scale, price: 18.00 }} ]");
        if (bare is not null)
            Console.WriteLine($"Once these things are there, the same money makes {bare.Made} pieces.");
        Console.WriteLine($"Makes {string.Join(", ", plan.Pieces.Where(p => p.Value > 0).Select(p => $"{p.Value} of {p.Key}"))}.");
        Console.WriteLine($"Left over: {string.Join(", ", plan.Left.Where(l => l.Value > 0).Select(l => Invariant($"{l.Key} {l.Value:0.#}")))} (grams, or pieces of packaging).");
    }

    /// <summary>What to buy, as data.</summary>
    internal static JsonArray Packs(BuyPlan plan) => plan.Packs.ToJson(p => new JsonObject
    {
        ["material"] = p.Material,
        ["size"] = p.Pack.Size,
        ["count"] = p.Count,
        ["price"] = p.Pack.Cents / 100m,
    });

    private static (string Name, CostSheet Sheet)[] Sheets(Workshop workshop, string what, int? pieces, CostsFile costs) =>
        BookOptions.AskIfAny<(string Name, CostSheet Sheet)[]>(workshop, books =>
        {
            if (Lots.LotCode.Parse(what) is { IsValue: true } lot && !workshop.RecipeIds.Contains(what))
                return [(what,
                    CostSheet.Of(workshop, (books ?? throw new InputException("call.no-books-yet")).BatchOf(lot.Value.ToString()),
                        costs, books))];
            // A lot with a slip in it is no recipe's name: what is said is about the lot.
            if (char.IsAsciiDigit(what[0])
                && !workshop.RecipeIds.Contains(what)
                && !what.Contains('/', StringComparison.Ordinal)
                && books is not null)
                BookOptions.Lot(what);
            var products = workshop.ProductsOf(what);
            return [
                .. products.Zip(Product.Each(products,
                    p => CostSheet.Of(workshop, BatchSize.ToPieces(workshop, p.Recipe, pieces ?? p.Recipe.Pieces), costs, books)),
                    (p, s) => (p.Name, s))];
        });

    // So many of each product that the name stands for.
    private static IEnumerable<(Product Product, int Pieces)> Wanted(string text, Workshop workshop)
    {
        var parts = text.Split(':');
        return parts.Length == 1 ? workshop.ProductsOf(text).Select(p => (p, 0))
            : parts.Length == 2
                && PlainFigure.Whole(parts[1]) is > 0 and <= 100_000 and var n ? workshop.ProductsOf(parts[0]).Select(p => (p, n))
            : throw new InputException("call.does-not-say-how-many", ("text", text));
    }

    private static decimal Percent(string text) =>
        PlainFigure.Read(text.TrimEnd('%', ' ')) is >= 0 and < 100 and var figure
            ? figure / 100m
            : throw new InputException("call.not-a-margin", ("text", text));
}
