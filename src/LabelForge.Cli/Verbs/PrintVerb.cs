using LabelForge.Cli.Handover;
using LabelForge.Files;
using LabelForge.Print.Jobs;
using LabelForge.Print.Sheets;
using LabelForge.Records.Books;
using LabelForge.UseCases;

namespace LabelForge.Cli.Verbs;

/// <summary><c>print</c>: all labels that batches need, on as few part-used sheets as can be.</summary>
internal static class PrintVerb
{
    private static readonly Option<bool> Today = new("--today") { Description = "What waits for labels, as labelforge today lists it" };
    private static readonly Option<string[]> Batches = new("--batch")
    {
        Description = "The labels of a lot, or of all lots of a pot; once for each",
    };
    private static readonly Option<string[]> Only = new("--count")
    {
        Description = "So many labels of a lot, whatever it still needs: --count LOT=3; once for each",
    };
    private static readonly Option<int> Spare = new("--spare") { Description = "So many more of each lot, in case of spoils" };
    private static readonly Option<string[]> Spoiled = new("--spoiled")
    {
        Description = "Labels that came out badly: --spoiled LOT=2; they wait to be printed again",
    };
    private static readonly Option<int?> Again = new("--again") { Description = "Print that run again, exactly as it was, on new sheets" };
    private static readonly Option<string?> Stock = new("--stock")
    {
        Description = "The label stock (default: what workshop.yaml has at hand, else what is usual)",
    };
    private static readonly Option<bool> DryRun = new("--dry-run")
    {
        Description = "Show what would be printed on which sheets, and write nothing",
    };
    private static readonly Option<string[]> Despite = new("--despite")
    {
        Description = "Print although this rule is broken, as the findings name it; once for each rule",
    };

    public static Command Build()
    {
        var verb = new Verb("print",
            "All labels that batches need: several products on one sheet, part-used sheets first, written down in the books")
        {
            Today, Batches, Only, Spare, Spoiled, Again, Stock, DryRun, Despite,
        };
        var market = verb.Market();
        var output = OutputOption.Optional("The PDF to write", FileKind.Pdf).AddTo(verb);
        var options = new BookOptions().AddFileTo(verb);
        var printers = new PrinterInputs().AddTo(verb);
        return verb.OpensBooks(r =>
        {
            var workshop = options.Workshop(r);
            var book = BookOptions.Book(workshop);
            foreach (var (lot, count) in (r.GetValue(Spoiled) ?? []).Select(LotAndCount))
                PrintRun.Spoil(book, workshop.Markets, lot, count, options.On(r), options.By(r));
            if (r.GetValue(Again) is { } run)
                return Reprint(r, options, workshop, book, run, Needed(output.PathOrNone(r)));
            if (!r.GetValue(Today) && (r.GetValue(Batches) ?? []).Length == 0 && (r.GetValue(Only) ?? []).Length == 0)
                return (r.GetValue(Spoiled) ?? []).Length > 0 ? Exit.Done
                    : throw new InputException("call.print-what");
            Prewarm.Begin(() => Shipped.Dictionary, () => Shipped.Markets);
            var plan = book.Ask(books =>
            {
                var planner = new RunPlanner(workshop, books, Shared.MarketOf(r.GetValue(market), workshop), options.On(r));
                return planner.Plan(Wanted(r, planner, books), r.GetValue(Stock));
            });
            foreach (var note in plan.Notes)
                Console.Error.WriteLine($"Note: {note}");
            if (r.GetValue(DryRun))
            {
                Tell(r, options, plan, null, null);
                return Exit.Done;
            }
            var path = Needed(output.PathOrNone(r));
            var (printer, changed) = printers.Resolve(r, workshop.Folder);
            var outcome = PrintRun.Print(workshop, book, plan, [.. r.GetValue(Despite) ?? []], printer, path, options.On(r),
                options.By(r));
            PrintInputs.StopWhereBroken(outcome.Outcome, plan.Labels.Any(l => l.Job.Product.Weighed is not null));
            PrinterInputs.Remember(workshop.Folder, printer, changed);
            if (outcome.Outcome.NotRecorded is { } problem)
                Console.Error.WriteLine($"Note: that these labels were made is not in the books. {problem}");
            foreach (var (material, missing) in outcome.Short)
                Console.Error.WriteLine(Invariant($"Note: the books have {missing:0.###} less of {material} than were printed on. Write what came in (labelforge receive), or count it (labelforge count)."));
            Tell(r, options, plan, path, outcome.Run);
            return Exit.Done;
        });
    }

    private static IEnumerable<(Batch Batch, int Labels)> Wanted(ParseResult r, RunPlanner planner, IBooks books)
    {
        var asked = (r.GetValue(Only) ?? []).Select(LotAndCount).Select(l => (Batch: books.BatchOf(l.Lot), Labels: l.Count)).ToArray();
        var waiting = (r.GetValue(Today) ? planner.Waiting : []).Concat(planner.Of((r.GetValue(Batches) ?? []).Select(BookOptions.Lot)));
        return asked.Concat(waiting).DistinctBy(w => w.Batch.Id).Select(w => w.Labels > 0 ? (w.Batch, w.Labels + r.GetValue(Spare)) : w);
    }

    private static int Reprint(ParseResult r, BookOptions options, Workshop workshop, OpenBooks book, int run, string path)
    {
        var again = PrintRun.Again(workshop, book, run, path, options.On(r), options.By(r));
        return options.Told(r, new JsonObject
        {
            ["run"] = run,
            ["file"] = path,
            ["labels"] = again.Sum(p => p.Labels),
            ["lots"] = again.ToJson(p => new JsonObject { ["lot"] = p.Lot, ["labels"] = p.Labels, ["places"] = p.Places })
        }, $"{path}: run {run} again, {again.Sum(p => p.Labels)} labels, exactly as they were. Load new sheets; the same places are "
                + $"printed. Print at actual size.");
    }

    private static void Tell(ParseResult r, BookOptions options, RunPlan plan, string? path, int? run)
    {
        if (options.Json(r))
        {
            JsonOut.Write(new JsonObject
            {
                ["run"] = run,
                ["file"] = path,
                ["labels"] = plan.Labels
                    .ToJson(l => new JsonObject
                    {
                        ["lot"] = l.Lot.ToString(),
                        ["product"] = l.Job.Product.Name,
                        ["design"] = l.Layout.Design.Id,
                        ["stock"] = l.Stock.Id,
                        ["count"] = l.Count
                    }),
                ["sheets"] = plan.Sheets.ToJson(s => new JsonObject
                {
                    ["stock"] = s.Stock.Id,
                    ["sheet"] = s.Name,
                    ["isNew"] = s.IsNew,
                    ["usedBefore"] = PositionRanges.Write(s.UsedBefore),
                    ["freeAfter"] = s.FreeAfter,
                    ["places"] = s.Labels.ToJson(l => new JsonObject { ["place"] = l.Place, ["lot"] = l.Label.Lot.ToString() }),
                }),
            });
            return;
        }
        foreach (var label in plan.Labels)
            Console.WriteLine($"  {label.Count,4} {label.Job.Content.ProductName}, lot {label.Lot}{(label.IsOwn ? "" : $", {label.Layout.Design.Id}")}");
        Console.WriteLine($"{(path is null ? "" : $"{path}: ")}{plan.Labels.Sum(l => l.Count)} labels on {plan.Sheets.Length} {(plan.Sheets.Length == 1 ? "sheet" : "sheets")}{(run is { } n ? $", print run {n}" : "")}. Print at actual size. In the tray, from the top:");
        foreach (var (sheet, page) in plan.Sheets.Select((s, i) => (s, i + 1)))
        {
            var which = sheet.IsNew
                ? $"a new sheet{(sheet.Name is { } letter ? $", write {letter} on it" : "")}"
                : $"sheet {sheet.Name}, {PositionRanges.Write(sheet.UsedBefore)} used";
            Console.WriteLine($"  {page}. {which}: {sheet.Labels.Length} printed at {PositionRanges.Write(sheet.Labels.Select(l => l.Place))}, {(sheet.FreeAfter == 0 ? "full" : $"{sheet.FreeAfter} free")}  ({sheet.Stock.Id})");
        }
    }

    private static string Needed(string? path) => path ?? throw new InputException("call.no-file-named");

    private static (string Lot, int Count) LotAndCount(string text)
    {
        var at = text.LastIndexOf('=');
        return at > 0
            && PlainFigure.Whole(text[(at + 1)..].Trim()) is > 0 and <= SheetWriter.MostLabels and var count
            ? (BookOptions.Lot(text[..at].Trim()), count)
            : throw new InputException("call.does-not-say-how-many-labels", ("text", text));
    }
}
