using System.CommandLine;
using LabelForge.Measures;
using LabelForge.Print.Output;
using LabelForge.Print.Proofs;
using LabelForge.UseCases;

namespace LabelForge.Cli.Verbs;

/// <summary><c>label</c>: one label as PDF, SVG or PNG, or a proof of it.</summary>
internal static class LabelVerb
{
    public static Command Build()
    {
        var inputs = new PrintInputs();
        var output = new OutputOption("The file to write: .pdf, .svg or .png", OutputOption.Drawn);
        var dots = new Option<int?>("--dpi") { Description = "Dots to the inch of a PNG, from 72 to 2400 (default: 300)" };
        var proof = new Option<bool>("--proof") { Description = "A proof instead, as a PDF: actual size, enlarged, and each rule with the margin to spare" };
        var verb = new Command("label", "One label as PDF, SVG or PNG; of a recipe with several products a PDF with a page for each") { dots, proof };
        output.AddTo(verb);
        inputs.AddTo(verb);
        verb.SetAction(r => Exit.Run(() =>
        {
            var path = output.Path(r);
            var ending = Path.GetExtension(path).ToLowerInvariant();
            if (r.GetValue(dots) is not null && ending != ".png")
                throw new InputException(null, 0, "call.no-dots", ("ending", ending));
            if (r.GetValue(proof) && ending != ".pdf")
                throw new InputException(null, 0, "call.proof-is-pdf");
            var (jobs, lot, on) = inputs.Prepare(r);
            var (labels, info) = (jobs.Select(j => j.Fit).ToArray(), PrintInputs.Info(jobs, lot, on));
            if (r.GetValue(proof))
                ProofSheet.WritePdf(path, [.. labels.Select(f => f.OrRefuse())], jobs[0].Content.Market, on, info);
            else
                inputs.Print(r, [.. jobs.Select(j => new LabelsToPrint(j, lot, 0))], on, () =>
                    LabelFile.Write(path, [.. labels.Select(f => f.OrRefuse())], info, r.GetValue(dots) ?? LabelFile.UsualDotsPerInch));
            return Exit.Done;
        }));
        return verb;
    }
}
