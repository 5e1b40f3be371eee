using LabelForge.Cli.Handover;
using LabelForge.Print.Output;
using LabelForge.Print.Proofs;
using LabelForge.Print.Scans;
using LabelForge.UseCases;

namespace LabelForge.Cli.Verbs;

/// <summary><c>label</c>: one label as PDF, SVG or PNG, or a proof of it.</summary>
internal static class LabelVerb
{
    public static Command Build()
    {
        var verb = new Verb("label", "One label as PDF, SVG or PNG; of a recipe with several products a PDF with a page for each");
        var dots = verb.Option<int?>("--dpi", "Dots to the inch of a PNG, from 72 to 2400 (default: 300)");
        var proof = verb.Option<bool>("--proof",
            "A proof instead, as a PDF: actual size, enlarged, and each rule with the margin to spare");
        var scan = verb.Option<string?>("--scan",
            "With --proof: a scan of the print, PNG or JPEG; its letters, contrast and barcode are measured against what was asked");
        var scanDots = verb.Option<double?>("--scan-dpi", "Dots to the inch of the scan, where its file does not say them");
        var output = OutputOption.Optional("The file to write: .pdf, .svg or .png; needed save with --scan", OutputOption.Drawn)
            .AddTo(verb);
        var inputs = new PrintInputs().AddTo(verb);
        inputs.AddWhitePlateTo(verb);
        return verb.OpensBooksWhereKept(inputs.Folder, r =>
        {
            if (r.GetValue(scan) is { } picture)
                return OfScan(r, inputs, r.GetValue(proof), picture, r.GetValue(scanDots));
            var path = output.PathOrNone(r) ?? throw new InputException("call.no-file-named");
            var ending = Path.GetExtension(path).ToLowerInvariant();
            if (r.GetValue(dots) is not null && ending != ".png")
                throw new InputException("call.no-dots", ("ending", ending));
            if (r.GetValue(proof) && ending != ".pdf")
                throw new InputException("call.proof-is-pdf");
            if (r.GetValue(proof) && inputs.IsWhitePlate(r))
                throw new InputException("call.white-plate-alone");
            var (jobs, lot, on) = inputs.Prepare(r);
            var (labels, info) = (jobs.Select(j => inputs.Drawn(r, j)).ToArray(), PrintInputs.Info(jobs, lot, on));
            // A label by itself has no margin: the document's title says it, which no printer prints.
            if (inputs.Note(r, jobs) is { } note)
                info = info with { Title = $"{info.Title} ({note})" };
            if (r.GetValue(proof))
                ProofSheet.WritePdf(path, labels, jobs[0].Content.Market, on, info);
            else
                inputs.Print(r, [.. jobs.Select(j => new LabelsToPrint(j, lot, 0))], on, () =>
                    LabelFile.Write(path, labels, info, r.GetValue(dots) ?? LabelFile.UsualDotsPerInch));
            inputs.Say(r, path, jobs, lot);
            return Exit.Done;
        });
    }

    // Each product of the recipe is looked for; the scan holds one of them.
    private static int OfScan(ParseResult r, PrintInputs inputs, bool proof, string picture, double? dots)
    {
        if (!proof)
            throw new InputException("call.scan-without-proof");
        var scan = ScannedPicture.Read(picture, dots);
        var (jobs, _, _) = inputs.Prepare(r);
        Parsed<LabelReading>? refused = null;
        foreach (var job in jobs)
        {
            var found = LabelScan.Read(scan, job.Fit.OrRefuse());
            if (!found.IsValue)
            {
                refused = found;
                continue;
            }
            ScanReport.Say(job.Content.ProductName, found.Value, inputs.Json(r));
            return found.Value.Texts.Any(t => !t.IsHighEnough) ? Exit.FindingStands : Exit.Done;
        }
        Shared.Need(refused!.Value);
        return Exit.WrongInput;
    }
}
