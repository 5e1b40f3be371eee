using LabelForge.Checks;
using LabelForge.Lots;
using LabelForge.Print.Designs;
using LabelForge.Print.Fitting;
using LabelForge.Print.Jobs;
using LabelForge.Print.Output;
using LabelForge.Print.Sheets;

namespace LabelForge.Cli.Verbs;

/// <summary><c>demo</c>: the whole job on the example workshop.</summary>
internal static class DemoVerb
{
    public static Command Build()
    {
        var verb = new Verb("demo", "The whole job on the example workshop: declaration, check, label, sheet of labels, batch sheet");
        var output = verb.Option<string>("--out", "The folder to write to", "demo-out");
        var on = verb.On();
        var force = verb.Option<bool>("--force", "Write over what was changed in the example since");
        var format = verb.Format();
        return verb.Runs(r => Run(r.GetValue(output)!, Shared.Date(r.GetValue(on)), r.GetValue(force), Shared.IsJson(r, format)));
    }

    private static int Run(string folder, DateOnly on, bool force, bool json)
    {
        var shop = Path.Combine(folder, "workshop");
        ShippedWorkshop.Write(ShippedWorkshop.Example, shop, force);
        var workshop = Shipped.Open(shop);
        var mustStands = false;
        var batch = 0;
        var (range, told) = (new List<ContactLabel>(), new List<JsonObject>());
        // A recipe's first product lies in the recipe's own folder, the others in folders by their names in it.
        var products = workshop.RecipeIds
            .SelectMany(id => workshop.ProductsOf(id)
                .Select((p, i) => (Product: p, Folder: i == 0 ? id : Path.Combine(id, p.Recipe.Name.ToLowerInvariant().Replace(' ', '-')),
                    IsFurther: i > 0)));
        foreach (var (product, inside, _) in products.OrderBy(p => p.IsFurther))
        {
            var lot = new LotCode(on, ++batch);
            var job = LabelJob.Prepare(product, Shipped.Markets.Usual, null, lot, on);
            var report = RecipeCheck.Run(job.Facts);
            mustStands |= report.HasMust;
            if (json)
                told.Add(new JsonObject
                {
                    ["name"] = product.Name,
                    ["lot"] = lot.ToString(),
                    ["pieces"] = job.Batch.Recipe.Pieces,
                    ["netQuantity"] = job.Content.NetQuantity,
                    ["statement"] = job.Declaration.Statement,
                    ["proved"] = job.Declaration.IsProved,
                    ["folder"] = Path.Combine(folder, inside),
                    ["findings"] = report.Findings.ToJson(JsonOut.Of)
                });
            else
                Say(job, lot, report);
            WriteFiles(Path.Combine(folder, inside), job, lot, on);
            range.Add(new ContactLabel(job.Fit.OrRefuse(), GalleryVerb.Said(product.Recipe, job.Fit.OrRefuse())));
        }
        ContactSheet.WritePdf(Path.Combine(folder, "range.pdf"), $"The range of {workshop.Business.Name}", range, Length.FromInches(8.5m),
            Length.FromInches(11m), new DocumentInfo("The range", on));
        if (json)
        {
            JsonOut.Write(new JsonObject { ["folder"] = folder, ["range"] = Path.Combine(folder, "range.pdf"), ["products"] = new JsonArray([.. told]) });
            return mustStands ? Exit.FindingStands : Exit.Done;
        }
        Console.WriteLine(
            $"\nWritten to {folder}: range.pdf shows all labels side by side; for each product its label (PDF, SVG, PNG), a sheet of "
                + $"labels and a batch sheet.");
        Console.WriteLine("Print at actual size, never \"fit to page\". Checked against the rules named; it does not decide what is lawful for you.");
        return mustStands ? Exit.FindingStands : Exit.Done;
    }

    private static void Say(LabelJob job, LotCode lot, CheckReport report)
    {
        Console.WriteLine($"{job.Content.ProductName}, lot {lot}: {job.Batch.Recipe.Pieces} pieces of {job.Content.NetQuantity}");
        Console.WriteLine($"  {job.Declaration.Statement}");
        Console.WriteLine($"  {(job.Declaration.IsProved ? "Order proved." : $"{job.Declaration.Unsettled.Length} pairs of the order are not proved; see: labelforge declare.")}");
        foreach (var finding in report.Findings.Where(f => f.Severity == Severity.Must))
            Console.WriteLine($"  MUST {finding.Rule}: {finding.Message}");
    }

    private static void WriteFiles(string folder, LabelJob job, LotCode lot, DateOnly on)
    {
        Directory.CreateDirectory(folder);
        var info = PrintInputs.Info(job, lot, on);
        var layout = job.Fit.OrRefuse();
        var usual = UsualDesign.For(job.Kind.Id, job.Workshop.Business.LabelStock, job.Batch.Recipe.Package);
        foreach (var (design, fit) in job.Companions)
        {
            LabelFile.Write(Path.Combine(folder, $"label-{design}.pdf"), fit.OrRefuse(), info);
            SheetWriter.WritePdf(Path.Combine(folder, $"sheet-{design}.pdf"), fit.OrRefuse(), LabelStock.Load(usual.With[design]), info,
                count: job.Batch.Recipe.Pieces);
        }
        foreach (var ending in new[] { "pdf", "svg", "png" })
            LabelFile.Write(Path.Combine(folder, $"label.{ending}"), layout, info);
        SheetWriter.WritePdf(Path.Combine(folder, "sheet.pdf"), layout, LabelStock.Load(usual.Stock), info,
            count: job.Batch.Recipe.Pieces);
        BatchSheetJob.Write(Path.Combine(folder, "batch-sheet.pdf"), job, lot, info);
    }
}
