using LabelForge.Checks;

namespace LabelForge.Cli.Verbs;

/// <summary><c>rules</c>: the rules that checks judge by, each with its source.</summary>
internal static class RulesVerb
{
    public static Command Build()
    {
        var verb = new Verb("rules", "Lists the rules that labels are checked against, with their sources and dates");
        var market = verb.Market();
        var format = verb.Format();
        var law = verb.Option<bool>("--law", "Writes by market what is judged, from which text of which day, and what is not judged");
        return verb.Runs(r =>
        {
            var only = r.GetValue(market) is { } named ? Shared.MarketOf(named) : null;
            if (r.GetValue(law))
                Console.Write(LawPage.Markdown(Shipped.Markets));
            else if (r.GetValue(format) == "json")
                JsonOut.Write(RuleList.Sections(Shipped.Markets, only).SelectMany(s => s.Rules.Select(rule => (Rule: rule, s.Markets)))
                    .ToJson(found => Of(found.Rule, found.Markets)));
            else
                Console.Write(RuleList.Markdown(Shipped.Markets, only));
            return Exit.Done;
        });
    }

    private static JsonObject Of(Rule rule, IEnumerable<Market> markets) => new JsonObject
    {
        ["rule"] = rule.Name,
        ["id"] = rule.Id,
        ["markets"] = markets.ToJson(m => m.Id),
        ["severity"] = rule.Severity.ToString().ToLowerInvariant(),
        ["message"] = rule.Message,
        ["fix"] = rule.Fix,
        ["source"] = rule.Source,
        ["basis"] = BasisText.Of(rule.Basis),
        ["read"] = rule.Read,
        ["from"] = rule.InForceFrom.ToIso(),
        ["checked"] = rule.LastChecked.ToIso(),
        ["products"] = rule.Products.ToJson(),
    };
}
