using System.CommandLine;
using LabelForge.Print.Jobs;

namespace LabelForge.Cli.Verbs;

/// <summary><c>batch</c>: the batch sheet for the bench.</summary>
internal static class BatchVerb
{
    public static Command Build()
    {
        var inputs = new PrintInputs();
        var output = Shared.Out("The PDF to write");
        var verb = new Command("batch", "The batch sheet for the bench, as a PDF: weights, boxes to tick, cautions, the lot; and the batch's record in the books")
        {
            output, BatchBenchVerbs.Start(), BatchBenchVerbs.Weigh(), BatchBenchVerbs.Note(), BatchBenchVerbs.Close(), BatchBenchVerbs.Show(),
        };
        inputs.AddTo(verb);
        verb.SetAction(r => Exit.Run(() =>
        {
            var (job, lot, on) = inputs.Prepare(r);
            BatchSheetJob.Write(r.GetValue(output)!, job, lot, PrintInputs.Info(job, lot, on), BatchBenchVerbs.TakeFrom(job, on));
            return Exit.Done;
        }));
        return verb;
    }
}
