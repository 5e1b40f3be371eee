using LabelForge.Cli.Handover;
using LabelForge.Selling;

namespace LabelForge.Cli.Verbs;

/// <summary><c>next</c>: what to pour next by what sold.</summary>
internal static class NextVerb
{
    public static Command Build()
    {
        var verb = new Verb("next", "What to pour next by what sold, with the money it would bring, and what to buy for it");
        var days = verb.Option<int>("--days", "How many days back count, and how many to come are poured for", NextPour.UsualDays);
        var budget = verb.Option<string?>("--budget", "The most to spend on what is to be bought for it");
        var options = new BookOptions().AddReadingTo(verb, dated: true);
        return verb.OpensBooks(r =>
        {
            if (r.GetValue(days) is < 1 or > 366)
                throw new InputException("call.days-out-of-range", ("days", r.GetValue(days)));
            var workshop = options.Workshop(r);
            var next = BookOptions.Book(workshop)
                .Ask(books => NextPour.Of(workshop, books, options.On(r), r.GetValue(days),
                    r.GetValue(budget) is { } b ? BookOptions.Money(b, "--budget") : null));
            var currency = workshop.Business.Currency;
            if (options.Json(r))
            {
                JsonOut.Write(new JsonObject
                {
                    ["from"] = next.From.ToJson(),
                    ["to"] = next.To.ToJson(),
                    ["currency"] = currency,
                    ["cost"] = next.Buy?.Cents / 100m,
                    ["problem"] = next.WhyNot?.ToString(),
                    ["pour"] = next.Rows
                        .ToJson(p => new JsonObject
                        {
                            ["product"] = p.Product.Name,
                            ["sold"] = p.Sold,
                            ["left"] = p.Left,
                            ["pour"] = p.Pour,
                            ["withinBudget"] = p.WithinBudget,
                            ["money"] = p.Money
                        }),
                    ["packs"] = next.Buy is { } packs ? MoneyVerbs.Packs(packs) : null,
                });
                return Exit.Done;
            }
            foreach (var row in next.Rows)
                Console.WriteLine(Invariant($"  {row.Product.Recipe.Name,-24} {row.Sold,4} sold, {row.Left,3} left: {(row.Pour == 0 ? "enough" : $"pour {row.WithinBudget}{(row.WithinBudget < row.Pour ? $" of {row.Pour}, by the budget" : "")}{(row.Product.Recipe.Price is { } price ? Invariant($", would bring {row.WithinBudget * price:0.00} {currency}") : ", no price")}")}"));
            if (next.Rows.IsEmpty)
                Console.WriteLine(Invariant($"Nothing sold from {next.From:yyyy-MM-dd} to {next.To:yyyy-MM-dd}."));
            foreach (var (material, pack, count) in next.Buy?.Packs ?? [])
                Console.WriteLine(Invariant($"  buy {count} x {pack.Size} of {material}: {count * pack.Cents / 100m:0.00}"));
            if (next.Buy is { } plan)
                Console.WriteLine(Invariant($"{plan.Cents / 100m:0.00} {currency} to buy for it, beyond what is in stock and not promised to a batch."));
            if (next.WhyNot is { } problem)
                Console.Error.WriteLine($"What to buy cannot be reckoned: {problem}");
            return Exit.Done;
        });
    }
}
