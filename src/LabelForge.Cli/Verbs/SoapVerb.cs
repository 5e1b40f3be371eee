using LabelForge.Checks;
using LabelForge.Recipes.Saponification;

namespace LabelForge.Cli.Verbs;

/// <summary><c>soap</c>: the lye that oils take up, and what is in the soap that comes of them.</summary>
internal static class SoapVerb
{
    public static Command Build()
    {
        var recipe = Shared.RecipeArgument();
        var workshop = Shared.Workshop();
        var format = Shared.Format();
        var variant = Shared.Variant();
        var verb = new Command("soap",
            "Soap made from oils: the lye, the superfat, what is in the soap, and whether lye could be left over")
        {
            recipe, workshop, format, variant,
        };
        verb.SetAction(
            r => Exit.Run(() => Run(Shared.Products(r.GetValue(recipe)!, r.GetValue(workshop), r.GetValue(variant)),
                r.GetValue(format)!)));
        return verb;
    }

    private static int Run(ImmutableArray<Product> products, string format)
    {
        var charges = Product.Each(products,
            p => SoapCharge.In(p.Workshop, p.Batch) ?? throw new InputException(p.Recipe.File, 0, "call.no-soap"));
        var findings = Product.Each(products, p => SoapCheck.Find(p.Workshop, p.Batch).ToArray());
        if (format == "json")
            JsonOut.Write([.. products.Select((p, i) => (p.Name, SoapReport.Json(p.Batch, charges[i], findings[i])))]);
        for (var i = 0; i < products.Length && format != "json"; i++)
        {
            Report.Heading(products, i);
            SoapReport.Write(products[i].Batch, charges[i], findings[i]);
        }
        return findings.Any(all => all.Any(f => f.Severity == Severity.Must)) ? Exit.FindingStands : Exit.Done;
    }
}
