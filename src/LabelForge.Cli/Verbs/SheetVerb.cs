using System.CommandLine;
using LabelForge.Print.Sheets;

namespace LabelForge.Cli.Verbs;

/// <summary><c>sheet</c>: labels laid out on label stock.</summary>
internal static class SheetVerb
{
    public static Command Build()
    {
        var inputs = new PrintInputs();
        var stock = new Option<string>("--stock") { Description = "The label stock (see: labelforge stock)", Required = true };
        var count = new Option<int?>("--count") { Description = "How many labels (default: what is left of one sheet)" };
        var first = new Option<int>("--first") { Description = "The first free position of a part-used sheet, counted from 1", DefaultValueFactory = _ => 1 };
        var output = Shared.Out("The PDF to write");
        var verb = new Command("sheet", "Labels laid out on label stock, as a PDF to print at actual size") { stock, count, first, output };
        inputs.AddTo(verb);
        verb.SetAction(r => Exit.Run(() =>
        {
            var (job, lot, on) = inputs.Prepare(r);
            SheetWriter.WritePdf(r.GetValue(output)!, job.Fit.OrRefuse(), LabelStock.Load(r.GetValue(stock)!), PrintInputs.Info(job, lot, on),
                r.GetValue(first), r.GetValue(count));
            return Exit.Done;
        }));
        return verb;
    }
}
