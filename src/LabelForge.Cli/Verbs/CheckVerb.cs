using System.CommandLine;
using LabelForge.Checks;
using LabelForge.Lots;
using LabelForge.Markets;
using LabelForge.Measures;
using LabelForge.Print.Jobs;

namespace LabelForge.Cli.Verbs;

/// <summary><c>check</c>: what is missing or wrong on what would be printed.</summary>
internal static class CheckVerb
{
    public static Command Build()
    {
        var recipe = Shared.RecipeArgument();
        var workshop = Shared.Workshop();
        var market = Shared.Market();
        var design = Shared.Design();
        var lot = Shared.Lot(required: false);
        var format = Shared.Format();
        var on = Shared.On();
        var variant = Shared.Variant();
        var verb = new Command("check", "What is missing or wrong on the label of a recipe, with the source of each rule") { recipe, workshop, market, design, lot, format, on, variant };
        verb.SetAction(r => Exit.Run(() =>
        {
            var (opened, read) = Shared.Open(r.GetValue(recipe)!, r.GetValue(workshop), r.GetValue(variant));
            var where = Shared.Need(MarketText.Parse(r.GetValue(market) ?? opened.Business.Market));
            var code = r.GetValue(lot) is { } text ? Shared.Need(LotCode.Parse(text)) : (LotCode?)null;
            var job = LabelJob.Prepare(opened, read, where, r.GetValue(design), code, Shared.Date(r.GetValue(on)));
            var report = RecipeCheck.Run(job.Facts);
            if (r.GetValue(format) == "json")
                JsonOut.Write(JsonOut.Of(report));
            else
                Report.Write(report);
            return report.HasMust ? Exit.FindingStands : Exit.Done;
        }));
        return verb;
    }
}
