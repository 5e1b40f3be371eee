using System.CommandLine;
using LabelForge.Checks;
using LabelForge.Declarations;
using LabelForge.Markets;
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
        var names = new Option<string>("--names") { Description = "market: as the market names them; dual: for one label sold in us, eu, uk and ca", DefaultValueFactory = _ => "market" };
        var variant = Shared.Variant();
        var verb = new Command("declare", "The ingredient declaration of a recipe, and what is not proved about its order") { recipe, workshop, market, format, on, names, variant };
        verb.SetAction(r => Exit.Run(() => Run(r.GetValue(recipe)!, r.GetValue(workshop), r.GetValue(market), r.GetValue(format)!, r.GetValue(on), r.GetValue(names)!, r.GetValue(variant))));
        return verb;
    }

    private static int Run(string recipe, string? folder, string? market, string format, string? on, string names, string? variant)
    {
        var (workshop, read) = Shared.Open(recipe, folder, variant);
        var (kind, day) = (ProductKindOf.Recipe(read), Shared.Date(on));
        var (where, style) = (Shared.Need(MarketText.Parse(market ?? workshop.Business.Market)), Shared.Need(NameStyleText.Parse(names)));
        var batch = BatchFormula.Of(workshop, read);
        var declaration = DeclarationBuilder.Build(workshop, batch, kind, where, day, style);
        var assortment = Assortment.Of(workshop, read, kind, where, day, style);
        if (format == "json")
            JsonOut.Write(JsonOut.Of(declaration, assortment));
        else
            Report.Write(declaration, assortment);
        if (format != "json" && LyeCautions.Apply(workshop, batch))
            SoapReport.WriteCautions();
        return declaration.Findings.Any(f => f.Severity == Severity.Must) ? Exit.FindingStands : Exit.Done;
    }
}
