using System.CommandLine;
using LabelForge.Lots;
using LabelForge.Markets;
using LabelForge.Print.Jobs;
using LabelForge.Print.Output;

namespace LabelForge.Cli.Verbs;

/// <summary>What the verbs that print take alike: the recipe, its lot, the market and the design.</summary>
internal sealed class PrintInputs
{
    private readonly Argument<string> _recipe = Shared.RecipeArgument();
    private readonly Option<string?> _workshop = Shared.Workshop();
    private readonly Option<string?> _market = Shared.Market();
    private readonly Option<string?> _design = Shared.Design();
    private readonly Option<string?> _lot = Shared.Lot(required: true);
    private readonly Option<string?> _on = Shared.On();
    private readonly Option<string?> _variant = Shared.Variant();

    public void AddTo(Command verb)
    {
        verb.Arguments.Add(_recipe);
        foreach (var option in new Option[] { _workshop, _market, _design, _lot, _on, _variant })
            verb.Options.Add(option);
    }

    /// <summary>Goes from the recipe to the laid-out label.</summary>
    public (LabelJob Job, LotCode Lot, DateOnly On) Prepare(ParseResult r)
    {
        var (workshop, recipe) = Shared.Open(r.GetValue(_recipe)!, r.GetValue(_workshop), r.GetValue(_variant));
        var lot = Shared.Need(LotCode.Parse(r.GetValue(_lot)!));
        var on = Shared.Date(r.GetValue(_on));
        var market = Shared.Need(MarketText.Parse(r.GetValue(_market) ?? workshop.Business.Market));
        return (LabelJob.Prepare(workshop, recipe, market, r.GetValue(_design), lot, on), lot, on);
    }

    /// <summary>The document's title and time. The time is the date judged by, so that the same input gives the same bytes.</summary>
    public static DocumentInfo Info(LabelJob job, LotCode lot, DateOnly on) =>
        new($"{job.Content.ProductName}, lot {lot}", new DateTimeOffset(on.ToDateTime(TimeOnly.MinValue), TimeSpan.Zero));
}
