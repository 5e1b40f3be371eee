using LabelForge.Checks;
using LabelForge.Cli.Explain;
using LabelForge.Declarations;
using LabelForge.Recipes.Saponification;

namespace LabelForge.Cli.Verbs;

/// <summary><c>declare</c>: the ingredient declaration, with what is and is not proved about its order.</summary>
internal static class DeclareVerb
{
    public static Command Build()
    {
        var verb = new Verb("declare", "The ingredient declaration of a recipe, and what is not proved about its order");
        var recipe = verb.Recipe();
        var workshop = verb.Workshop();
        var market = verb.Market();
        var format = verb.Format();
        var on = verb.On();
        var names = verb.Names();
        var variant = verb.Variant();
        var since = verb.Since();
        var explain = verb.Option<bool>("--explain",
            "Show what the order rests on: a bar for each range, what is proved and why, whom to ask for what");
        return verb.Runs(r => Run(r.GetValue(recipe)!, r.GetValue(workshop), r.GetValue(market), r.GetValue(format)!, r.GetValue(on),
            r.GetValue(names)!, r.GetValue(variant), r.GetValue(since), r.GetValue(explain)));
    }

    private static int Run(string recipe, string? folder, string? market, string format, string? on, string names, string? variant,
        string? since, bool explain)
    {
        if (explain && format == "json")
            throw new InputException("call.explain-is-text");
        var products = Shared.OnMarket(Shared.Products(recipe, folder, variant), since);
        var (where, style) = (Shared.MarketOf(market, products[0].Workshop), Shared.Need(NameStyleText.Parse(names)));
        var day = Shared.Date(on);
        var declarations = Product.Each(products, p => DeclarationBuilder.Build(p.Workshop, p.Batch, p.Kind, where, day, style));
        var assortment = products.Length > 1 ? Assortment.Of(products, declarations, where, day) : null;
        if (format == "json")
            JsonOut.Write([.. products.Select((p, i) => (p.Name, JsonOut.Of(declarations[i], i == 0 ? assortment : null)))]);
        else
            Write(products, declarations, assortment, where.On(day), explain);
        return declarations.Any(d => d.Findings.Any(f => f.Severity == Severity.Must)) ? Exit.FindingStands : Exit.Done;
    }

    private static void Write(ImmutableArray<Product> products, ImmutableArray<Declaration> declarations, Assortment? assortment,
        RulesOf rules, bool explain)
    {
        for (var i = 0; i < products.Length; i++)
        {
            Report.Heading(products, i);
            if (explain)
                Explanation.Of(declarations[i], declarations[i].Composition!).Write(Console.Out, Page.Width);
            else
                Report.Write(declarations[i]);
        }
        if (assortment is not null && !explain)
            Report.Write(assortment.Common);
        if (!explain
            && declarations.Any(d => !d.IsProved)
            && SupplierQuestions.For(products, rules) is { Letters.IsEmpty: false } questions)
            AskReport.Write(questions);
        if (products.Any(p => LyeCautions.Apply(p.Workshop, p.Batch)))
            SoapReport.WriteCautions();
    }
}
