using LabelForge.Cli.Handover;
using LabelForge.Files;
using LabelForge.Lots;
using LabelForge.Print.Designs;
using LabelForge.Print.Fitting;
using LabelForge.Print.Jobs;
using LabelForge.Print.Output;
using LabelForge.Print.Proofs;
using LabelForge.Print.Sheets;
using LabelForge.UseCases;

namespace LabelForge.Cli.Verbs;

/// <summary><c>sheet</c>: labels laid out on label stock.</summary>
internal static class SheetVerb
{
    private static readonly PrintInputs Inputs = new(severalRecipes: true);
    private static readonly PrinterInputs PrinterOptions = new();
    private static readonly Option<string> Stock = new("--stock")
    {
        Description = "The label stock (see: labelforge stock)",
        Required = true,
    };
    private static readonly Option<int?> Count = new("--count")
    {
        Description = "How many labels of each product (default: what is left of one sheet, shared out among them)",
    };
    private static readonly Option<int?> First = new("--first")
    {
        Description = "The first free position of a part-used sheet, counted from 1",
    };
    private static readonly Option<string?> Fill = new("--fill")
    {
        Description = "Several recipes, products or lots on the sheets: bramble-bar:10,bath-salt/Plain Soak:5,tideline-bar@26R25-02C:20",
    };
    private static readonly Option<string?> Serial = new("--serial")
    {
        Description = "Number the labels, each with its own barcode: 1..500",
    };
    private static readonly Option<bool> Remember = new("--remember")
    {
        Description = "Start where the last print on this stock ended, and remember where this one ends",
    };
    private static readonly Option<bool> Marks = new("--cut-marks") { Description = "Draw marks to cut by, for plain paper" };
    private static readonly OutputOption Output = new("The PDF to write", FileKind.Pdf);

    public static Command Build()
    {
        var verb = new Verb("sheet", "Labels laid out on label stock, as a PDF to print at actual size")
        {
            Stock, Count, First, Fill, Serial, Remember, Marks,
        };
        Output.AddTo(verb);
        Inputs.AddTo(verb);
        Inputs.AddWhitePlateTo(verb);
        PrinterOptions.AddTo(verb);
        return verb.OpensBooksWhereKept(Inputs.Folder, Run);
    }

    private static int Run(ParseResult r)
    {
        var path = Output.Path(r);
        var items = Items(r);
        var numbers = Numbers(r, items[0].Count);
        var made =
            items.SelectMany(i => Inputs.Prepare(r, i.Recipe, i.Lot) is var p
                ? p.Jobs.Select(j => (Made: (Job: j, p.Lot, p.On), i.Count))
                : []).ToList();
        var folder = made[0].Made.Job.Workshop.Folder;
        var stock = StockShelf.Of(folder).Load(r.GetValue(Stock)!);
        var partUsed = r.GetValue(Remember) ? PartUsedSheets.Of(folder) : null;
        var first = r.GetValue(First) ?? partUsed?.FirstOf(stock) ?? 1;
        var (printer, changed) = PrinterOptions.Resolve(r, folder);
        if (numbers is not null && made.Count > 1)
            throw new InputException("call.serial-one-product", ("recipe", items[0].Recipe), ("count", made.Count),
                ("list", string.Join(", ", made.Select(m => $"\"{m.Made.Job.Product.Name}\""))));
        var serials = numbers is null ? null : SerialLabels.Prepare(made[0].Made.Job, made[0].Made.Lot, numbers);
        var order = new SheetOrder
        {
            Stock = stock,
            Runs = serials is not null
                ? [new LabelRun(serials.Sample, serials.Count)]
                : [
                    .. made.Select((m,
                        at) => new LabelRun(Inputs.Drawn(r, m.Made.Job),
                            m.Count ?? r.GetValue(Count) ?? Part(SheetWriter.Plan(stock, first, null).Count, made.Count, at)))
                        .Where(run => run.Count > 0)],
            First = first,
            Registration = printer.Registration,
            CutMarks = r.GetValue(Marks),
            Note = Inputs.Note(r, made.Select(m => m.Made.Job)),
        };
        var (info, progress) = (Info([.. made.Select(m => m.Made)]), LongWork.Of("sheets", order.Plan().Sheets));
        Inputs.Print(r,
            [
                .. made.Select(m => new LabelsToPrint(m.Made.Job, m.Made.Lot,
                    serials?.Count
                        ?? order.Runs.Where(run => m.Made.Job.Fit is Fit.Fits fits && run.Label == fits.Layout).Sum(run => run.Count)))],
            made[0].Made.On, () =>
        {
            if (serials is null)
                SheetWriter.WritePdf(path, order, info, progress);
            else
                SerialSheets.WritePdf(path, serials, order, info, progress);
        }, binds: true);
        foreach (var warning in EdgeWarnings.Of(order, printer).Concat(CutMarks.Warnings(order)).Concat(MarginNote.Warnings(order)))
            Console.Error.WriteLine(warning);
        PrinterInputs.Remember(folder, printer, changed);
        // Under the white comes the same sheet again, for its colours.
        var next = Inputs.IsWhitePlate(r) ? null : partUsed?.Remember(stock, first, order.Count);
        Tell(r, path, order, next);
        return Exit.Done;
    }

    private static SerialNumbers? Numbers(ParseResult r, int? count)
    {
        if (r.GetValue(Serial) is not { } serial)
            return null;
        var numbers = Shared.Need(SerialNumbers.Parse(serial));
        return (count ?? r.GetValue(Count)) is not null ? throw new InputException("call.serial-counts")
            : Inputs.IsWhitePlate(r) ? throw new InputException("call.white-plate-alone")
            : numbers;
    }

    private static void Tell(ParseResult r, string path, SheetOrder order, int? next)
    {
        if (Inputs.Json(r))
        {
            JsonOut.Write(new JsonObject
            {
                ["file"] = path,
                ["stock"] = order.Stock.Id,
                ["labels"] = order.Count,
                ["sheets"] = order.Plan().Sheets,
                ["first"] = order.First,
                ["next"] = next,
                ["inkPercent"] = Math.Round(Ink(order), 1)
            });
            return;
        }
        Console.WriteLine($"{path}: {order.Count} labels on {order.Plan().Sheets} {(order.Stock.Kind == StockKind.Roll ? "page" : "sheet")}{(order.Plan().Sheets == 1 ? "" : "s")} of {order.Stock.Id}, from position {order.First}. Print at actual size.");
        Console.WriteLine(Invariant($"Ink: about {Ink(order):0} % of a label's area, were it printed solid; for comparing designs (more with --proof of label)."));
        if (next is not null)
            Console.WriteLine(next == 1
                ? "The last sheet is full; the next print starts a new one."
                : $"The next print on this stock starts at position {next}.");
    }

    // Each is drawn to be measured.
    private const int MostInked = 20;

    private static double Ink(SheetOrder order) =>
        order.Runs.Select(run => run.Label).Distinct().Take(MostInked).Average(l => (double)InkCoverage.Of(l).Percent);

    // What is left of a sheet, shared out among several products as evenly as it goes.
    private static int Part(int places, int products, int at) => places / products + (at < places % products ? 1 : 0);

    private static IReadOnlyList<(string? Recipe, string? Lot, int? Count)> Items(ParseResult r)
    {
        if (r.GetValue(Fill) is not { } fill)
            return [(Inputs.Recipe(r), null, null)];
        if (Inputs.Recipe(r) is not null || r.GetValue(Count) is not null)
            throw new InputException("call.fill-alone");
        return [.. Shared.Need(FillItem.ParseAll(fill)).Select(i => ((string?)i.Recipe, i.Lot, (int?)i.Count))];
    }

    private static DocumentInfo Info(IReadOnlyList<(LabelJob Job, LotCode Lot, DateOnly On)> made)
    {
        var all = made.Select(m => PrintInputs.Info(m.Job, m.Lot, m.On)).ToList();
        return all[0] with { Title = string.Join("; ", all.Select(i => i.Title).Distinct()) };
    }
}
