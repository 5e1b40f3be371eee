using LabelForge.Checks;
using LabelForge.Recipes.Saponification;

namespace LabelForge.Cli.Verbs;

/// <summary><c>soap</c>: the lye that oils take up, and what is in the soap that comes of them.</summary>
internal static class SoapVerb
{
    public static Command Build()
    {
        var verb = new Verb("soap", "Soap made from oils: the lye, the superfat, what is in the soap, and whether lye could be left over");
        var recipe = verb.Recipe();
        var workshop = verb.Workshop();
        var format = verb.Format();
        var variant = verb.Variant();
        return verb.Runs(r => Run(Shared.Products(r.GetValue(recipe)!, r.GetValue(workshop), r.GetValue(variant)),
            r.GetValue(format)!));
    }

    private static int Run(ImmutableArray<Product> products, string format)
    {
        var charges = Product.Each(products,
            p => SoapCharge.In(p.Workshop, p.Batch) ?? throw new InputException(p.Recipe.File, 0, "call.no-soap"));
        var findings = Product.Each(products, p => SoapCheck.Find(p.Workshop, p.Batch).ToArray());
        Report.Each(products, [.. charges.Zip(findings)], format == "json", (p, s) => SoapReport.Json(p.Batch, s.First, s.Second),
            (p, s) => SoapReport.Write(p.Batch, s.First, s.Second));
        return findings.Any(all => all.Any(f => f.Severity == Severity.Must)) ? Exit.FindingStands : Exit.Done;
    }
}
