using System.CommandLine;
using LabelForge.Print.Bench;
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
            var (jobs, lot, on) = inputs.Prepare(r);
            BatchSheetWriter.WritePdf(r.GetValue(output)!, [.. jobs.Select(j => BatchSheetJob.Content(j, lot, BatchBenchVerbs.TakeFrom(j, on)))], PrintInputs.Info(jobs, lot, on));
            return Exit.Done;
        }));
        return verb;
    }
}
