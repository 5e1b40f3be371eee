using LabelForge.Quantities;

namespace LabelForge.Cli.Verbs;

/// <summary><c>quantity</c>: the net quantity statement, and the least height of its letters.</summary>
internal static class QuantityVerb
{
    public static Command Build()
    {
        var verb = new Verb("quantity", "The net quantity statement for a market, and its least letter height");
        var amount = verb.Argument<string[]>("AMOUNT",
            "What the package holds, for example: 4 oz, 113 g, 8 fl oz", ArgumentArity.OneOrMore);
        var panel = verb.Option<string?>("--panel", "The principal display panel, for example: 2.5x3.5in or 60x90mm");
        var market = verb.Market();
        var format = verb.Format();
        var on = verb.On();
        return verb.Runs(r => Run(string.Join(' ', r.GetValue(amount)!), r.GetValue(panel), r.GetValue(market), r.GetValue(format)!,
            r.GetValue(on)));
    }

    private static int Run(string amount, string? panel, string? market, string format, string? on)
    {
        var shown = panel is null ? null : Shared.Need(Panel.Parse(panel));
        var quantity = NetQuantityStatement.For(Shared.MarketOf(market), Shared.Need(NetAmount.Parse(amount)), Shared.Date(on), shown);
        if (format == "json")
        {
            JsonOut.Write(new JsonObject
            {
                ["market"] = quantity.Market.Id,
                ["statement"] = quantity.Statement,
                ["customary"] = quantity.Customary,
                ["metric"] = quantity.Metric,
                ["letterHeight"] = quantity.LetterHeight is { } least
                    ? new JsonObject { ["inches"] = least.Inches, ["mm"] = least.Mm, ["source"] = least.Source }
                    : null,
            });
            return Exit.Done;
        }
        Console.WriteLine(quantity.Statement);
        if (quantity.LetterHeight is { } height)
            Console.WriteLine(Invariant($"Letters at least {height.Mm:0.###} mm ({height.Inches:0.####} in) high [{height.Source}]"));
        return Exit.Done;
    }
}
