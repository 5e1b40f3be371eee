using System.CommandLine;
using LabelForge.Declarations;
using LabelForge.Markets;
using LabelForge.Recipes;

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
        var since = Shared.Since();
        var verb = new Command("declare", "The ingredient declaration of a recipe, and what is not proved about its order") { recipe, workshop, market, format, on, names, variant, since };
        verb.SetAction(r => Exit.Run(() => Run(r.GetValue(recipe)!, r.GetValue(workshop), r.GetValue(market), r.GetValue(format)!, r.GetValue(on), r.GetValue(names)!, r.GetValue(variant), r.GetValue(since))));
        return verb;
    }

    private static int Run(string recipe, string? folder, string? market, string format, string? on, string names, string? variant, string? since)
    {
        var (workshop, found) = Shared.Open(recipe, folder, variant);
        var read = Shared.OnMarket(found, since);
        var (kind, day) = (ProductKindOf.Recipe(read), Shared.Date(on));
        var (where, style) = (Shared.Need(MarketText.Parse(market ?? workshop.Business.Market)), Shared.Need(NameStyleText.Parse(names)));
        var declaration = DeclarationBuilder.Build(workshop, BatchFormula.Of(workshop, read), kind, where, day, style);
        var assortment = Assortment.Of(workshop, read, kind, where, day, style);
        if (format == "json")
            JsonOut.Write(JsonOut.Of(declaration, assortment));
        else
            Report.Write(declaration, assortment);
        return Exit.Done;
    }
}
