using System.CommandLine;
using LabelForge.Checks;
using LabelForge.Markets;
using LabelForge.Measures;

namespace LabelForge.Cli.Verbs;

/// <summary><c>rules</c>: the rules that checks judge by, each with its source.</summary>
internal static class RulesVerb
{
    public static Command Build()
    {
        var market = Shared.Market();
        var format = Shared.Format();
        var verb = new Command("rules", "Lists the rules that labels are checked against, with their sources and dates") { market, format };
        verb.SetAction(r => Exit.Run(() =>
        {
            if (Shared.Need(MarketText.Parse(r.GetValue(market) ?? "us")) != Market.Us)
                throw new InputException(new Problem(null, 0, "Rules are written down for us only, so far.", "Write --market us."));
            if (r.GetValue(format) == "json")
                JsonOut.Write(RuleBook.Us.All.Select(Of));
            else
                Console.Write(RuleList.Markdown(RuleBook.Us, "the United States"));
            return Exit.Done;
        }));
        return verb;
    }

    private static object Of(Rule rule) => new
    {
        rule = rule.Name,
        id = rule.Id,
        severity = rule.Severity.ToString().ToLowerInvariant(),
        message = rule.Message,
        fix = rule.Fix,
        source = rule.Source,
        from = rule.InForceFrom.ToString("yyyy-MM-dd", System.Globalization.CultureInfo.InvariantCulture),
        @checked = rule.LastChecked.ToString("yyyy-MM-dd", System.Globalization.CultureInfo.InvariantCulture),
        products = rule.Products,
    };
}
