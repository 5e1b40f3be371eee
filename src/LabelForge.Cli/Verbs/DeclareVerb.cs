using System.CommandLine;
using LabelForge.Checks;
using LabelForge.Cli.Explain;
using LabelForge.Declarations;
using LabelForge.Markets;
using LabelForge.Measures;
using LabelForge.Recipes;
using LabelForge.Recipes.Saponification;

namespace LabelForge.Cli.Verbs;

/// <summary><c>declare</c>: the ingredient declaration, with what is and is not proved about its order.</summary>
internal static class DeclareVerb
{
    public static Command Build()
    {
        var recipe = Shared.RecipeArgument();
        var workshop = Shared.Workshop();
        var market = Shared.Market();
        var format = Shared.Format();
        var on = Shared.On();
        var names = Shared.Names();
        var variant = Shared.Variant();
        var since = Shared.Since();
        var explain = new Option<bool>("--explain") { Description = "Show what the order rests on: a bar for each range, what is proved and why, whom to ask for what" };
        var verb = new Command("declare", "The ingredient declaration of a recipe, and what is not proved about its order") { recipe, workshop, market, format, on, names, variant, since, explain };
        verb.SetAction(r => Exit.Run(() => Run(r.GetValue(recipe)!, r.GetValue(workshop), r.GetValue(market), r.GetValue(format)!, r.GetValue(on), r.GetValue(names)!, r.GetValue(variant), r.GetValue(since), r.GetValue(explain))));
        return verb;
    }

    private static int Run(string recipe, string? folder, string? market, string format, string? on, string names, string? variant, string? since, bool explain)
    {
        if (explain && format == "json")
            throw new InputException(new Problem(null, 0, "--explain is for people to read.", "Leave it out: --format json gives the bounds and the pairs as data."));
        var (workshop, found) = Shared.Open(recipe, folder, variant);
        var read = Shared.OnMarket(found, since);
        var batch = BatchFormula.Of(workshop, read);
        var (kind, day) = (ProductKindOf.Recipe(read), Shared.Date(on));
        var (where, style) = (Shared.Need(MarketText.Parse(market ?? workshop.Business.Market)), Shared.Need(NameStyleText.Parse(names)));
        var declaration = DeclarationBuilder.Build(workshop, batch, kind, where, day, style);
        var assortment = Assortment.Of(workshop, read, kind, where, day, style);
        if (format == "json")
            JsonOut.Write(JsonOut.Of(declaration, assortment));
        else if (explain)
            Explanation.Of(declaration, declaration.Composition!).Write(Console.Out, Page.Width);
        else
            Report.Write(declaration, assortment);
        if (format != "json" && LyeCautions.Apply(workshop, batch))
            SoapReport.WriteCautions();
        return declaration.Findings.Any(f => f.Severity == Severity.Must) ? Exit.FindingStands : Exit.Done;
    }
}
