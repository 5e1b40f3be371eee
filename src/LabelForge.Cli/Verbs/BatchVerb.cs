using LabelForge.Cli.Handover;
using LabelForge.Files;
using LabelForge.Print.Documents;
using LabelForge.Print.Jobs;
using LabelForge.UseCases;

namespace LabelForge.Cli.Verbs;

/// <summary><c>batch</c>: the batch sheet for the bench.</summary>
internal static class BatchVerb
{
    public static Command Build()
    {
        var verb = new Verb("batch",
            "The batch sheet for the bench, as a PDF: weights, boxes to tick, cautions, the lot; and the batch's record in the books")
        {
            BatchBenchVerbs.Start(), PotVerbs.Begin(), BatchBenchVerbs.Weigh(), BatchBenchVerbs.Note(), BatchBenchVerbs.Close(),
            BatchBenchVerbs.Show(), PotVerbs.Sheet(),
        };
        var output = new OutputOption("The PDF to write", FileKind.Pdf).AddTo(verb);
        var inputs = new PrintInputs().AddTo(verb);
        return verb.OpensBooksWhereKept(inputs.Folder, r =>
        {
            var path = output.Path(r);
            var (jobs, lot, on) = inputs.Prepare(r);
            inputs.Print(r, [.. jobs.Select(j => new LabelsToPrint(j, lot, 0))], on, () =>
                BatchSheetWriter.WritePdf(path,
                    [
                        .. jobs.Select(j => BatchSheetJob.Content(j, lot,
                            BatchBenchVerbs.TakeFrom(j, on)) with { MarginNote = inputs.Note(r, [j]) })], PrintInputs.Info(jobs, lot, on)),
                paper: "Batch sheet");
            inputs.Say(r, path, jobs, lot);
            return Exit.Done;
        });
    }
}
