using System.CommandLine;
using LabelForge.Print.Output;

namespace LabelForge.Cli.Verbs;

/// <summary><c>label</c>: one label as PDF, SVG or PNG.</summary>
internal static class LabelVerb
{
    public static Command Build()
    {
        var inputs = new PrintInputs();
        var output = Shared.Out("The file to write: .pdf, .svg or .png");
        var verb = new Command("label", "One label as PDF, SVG or PNG") { output };
        inputs.AddTo(verb);
        verb.SetAction(r => Exit.Run(() =>
        {
            var (job, lot, on) = inputs.Prepare(r);
            LabelFile.Write(r.GetValue(output)!, job.Fit.OrRefuse(), PrintInputs.Info(job, lot, on));
            return Exit.Done;
        }));
        return verb;
    }
}
