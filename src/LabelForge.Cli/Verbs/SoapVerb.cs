using System.CommandLine;
using LabelForge.Checks;
using LabelForge.Measures;
using LabelForge.Recipes;
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
        var verb = new Command("soap", "Soap made from oils: the lye, the superfat, what is in the soap, and whether lye could be left over") { recipe, workshop, format };
        verb.SetAction(r => Exit.Run(() => Run(r.GetValue(recipe)!, r.GetValue(workshop), r.GetValue(format)!)));
        return verb;
    }

    private static int Run(string recipe, string? folder, string format)
    {
        var (workshop, read) = Shared.Open(recipe, folder);
        var batch = BatchFormula.Of(workshop, read);
        var charge = SoapCharge.In(workshop, batch) ?? throw new InputException(new Problem(read.File, 0,
            "No soap is made in this batch: it has no material of kind lye, or none of kind oil for it.", "For soap made from a bought base, see: labelforge declare."));
        var findings = SoapCheck.Find(workshop, batch).ToArray();
        if (format == "json")
            JsonOut.Write(SoapReport.Json(batch, charge, findings));
        else
            SoapReport.Write(batch, charge, findings);
        return findings.Any(f => f.Severity == Severity.Must) ? Exit.FindingStands : Exit.Done;
    }
}
