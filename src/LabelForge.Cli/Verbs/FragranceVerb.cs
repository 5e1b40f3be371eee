using LabelForge.Checks;
using LabelForge.Declarations;
using LabelForge.Fragrances;

namespace LabelForge.Cli.Verbs;

/// <summary><c>fragrance</c>: each scent against its certificate, how much the batch can take, and the allergens of all sources.</summary>
internal static class FragranceVerb
{
    public static Command Build()
    {
        var verb = new Verb("fragrance",
            "Each scent of a recipe against its certificate, the most this batch can take, and its allergens");
        var recipe = verb.Recipe();
        var workshop = verb.Workshop();
        var market = verb.Market();
        var format = verb.Format();
        var on = verb.On();
        var variant = verb.Variant();
        var since = verb.Since();
        return verb.Runs(r =>
        {
            var products = Shared.OnMarket(Shared.Products(r.GetValue(recipe)!, r.GetValue(workshop), r.GetValue(variant)),
                r.GetValue(since));
            var where = Shared.MarketOf(r.GetValue(market), products[0].Workshop);
            var scents = Product.Each(products, p => Scent.Of(p, where, Shared.Date(r.GetValue(on))));
            Report.Each(products, scents, r.GetValue(format) == "json", (_, s) => JsonOut.Of(s.Budget, s.Allergens, s.Rule, s.Findings),
                (p, s) => Write(p.Recipe, s));
            return scents.Any(s => s.Findings.Any(f => f.Severity == Severity.Must)) ? Exit.FindingStands : Exit.Done;
        });
    }

    // What is told of one product's fragrance.
    private sealed record Scent(FragranceBudget Budget, ImmutableArray<AllergenTotal> Allergens, AllergenRule? Rule,
        ImmutableArray<Finding> Findings)
    {
        public static Scent Of(Product product, Market market, DateOnly on)
        {
            var finished = FinishedProduct.Of(product);
            var budget = FragranceLimits.Of(finished, product.Kind);
            return new Scent(budget, finished.Allergens,
                AllergenRule.For(market, product.Kind, on, product.Recipe.OnMarketSince),
                [.. FragranceCheck.Find(budget, product.Recipe, product.Workshop.Markets.Every).OrderBy(f => f.Severity)]);
        }
    }

    private static void Write(Recipe recipe, Scent scent)
    {
        var (budget, allergens, rule, findings) = scent;
        Console.WriteLine($"{recipe.Name}: {Grams(budget.Finished.Grams)} g of {budget.Kind.Name.ToLowerInvariant()}, IFRA category {budget.Kind.IfraCategory}");
        if (budget.Oils.IsEmpty)
        {
            Console.WriteLine("No fragrance or essential oil goes in.");
            return;
        }
        Console.WriteLine("\nEach oil against its own certificate:");
        foreach (var oil in budget.Oils)
        {
            var limit = oil.Limit is { } known ? $"{(oil.IsOver ? "OVER its limit of" : "limit")} {known}" : "no limit written down";
            Console.WriteLine($"  {Grams(oil.Mass.Grams),10} g  {Percent(oil.Share.Percent),8} %  {oil.Material.Name} ({limit}{(oil.PartOfLimit is { } part ? $", {Percent(part * 100)} % of it used" : "")})");
        }
        Console.WriteLine("\nThe most of each that this batch can take, with everything else as it is:");
        foreach (var line in budget.Lines)
            Console.WriteLine($"  {line.Material.Name}: {Most(line)}");
        if (budget.Oils.Length > 1)
        {
            Console.WriteLine(budget.Together is { } sum
                ? $"\nTogether they use up {Percent(sum * 100)} % of one limit. Oils may share a restricted substance, so it is common "
                    + $"practice to stay under 100 %{(budget.MostTogether is { } all ? $": at most {Grams(all.Grams)} g of all fragrance in these proportions" : "")}."
                : "\nHow much they use up together is not known: a limit is not written down.");
        }
        Console.WriteLine(allergens.Length == 0
            ? "\nNo certificate names an allergen."
            : $"\nAllergens in the finished product, over every source{(rule is null ? "" : $" (named above {Percent(rule.Threshold.Percent)} %, {rule.List.ToString().ToLowerInvariant()} list)")}:");
        foreach (var total in allergens)
        {
            var named = rule is not null && total.Entry is { } entry && rule.Lists(entry) && total.High > rule.Threshold.Percent;
            Console.WriteLine($"  {Percent(total.Low),8} to {Percent(total.High),8} %  {total.Name}{(named ? "  named on the label" : "")}  from {string.Join(", ", total.Sources.Select(s => s.Material))}");
        }
        foreach (var finding in findings)
            Report.Write(finding);
    }

    private static string Most(FragranceLine line) => line switch
    {
        { Most: { } most, MostDrops: { } drops } => $"{Grams(most.Grams)} g, or {drops} drops{Why(line)}",
        { Most: { } most } => $"{Grams(most.Grams)} g{Why(line)} (its density would give drops)",
        _ when line.Material.Limits.IsEmpty && line.Material.MadeFrom.IsEmpty => "not known; its limit is not written down",
        _ => "not known, or no limit binds it",
    };

    private static string Why(FragranceLine line) =>
        line.Binds is { } binds && binds.Id != line.Material.Id ? $" ({binds.Name} reaches its limit first)" : "";

    private static string Grams(decimal grams) => grams.ToString("0.00", CultureInfo.InvariantCulture);

    private static string Percent(decimal percent) => percent.ToString(percent >= 1 ? "0.##" : "0.####", CultureInfo.InvariantCulture);
}
