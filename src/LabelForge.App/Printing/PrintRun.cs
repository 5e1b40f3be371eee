using LabelForge.Checks;
using LabelForge.Print.Output;
using LabelForge.Print.Sheets;
using LabelForge.Records.Books;

namespace LabelForge.UseCases;

/// <summary>What became of a print run.</summary>
/// <param name="Run">Its number.</param>
/// <param name="Outcome">What stopped it, or what stands in the books.</param>
/// <param name="Short">Label sheets that the books do not have: by material, how many labels.</param>
public sealed record RunOutcome(int Run, PrintOutcome Outcome, IReadOnlyDictionary<string, decimal> Short);

/// <summary>Prints a run, remembers which places are used, keeps the pages for an exact reprint,
/// and writes all of it in the books.</summary>
public static class PrintRun
{
    /// <summary>The folder in a workshop that keeps the pages of each run.</summary>
    public const string Kept = "printed";

    // What a new sheet that is full at once is called in the books.
    private const string NewSheet = "new";

    /// <summary>Prints.</summary>
    /// <param name="plan">What is printed.</param>
    /// <param name="despite">Ids of the rules that the person knows to be broken and prints over.</param>
    /// <param name="path">The PDF to write.</param>
    /// <param name="by">Who prints.</param>
    /// <exception cref="InputException">A product cannot be judged, or a file cannot be written.</exception>
    public static RunOutcome Print(Workshop workshop, OpenBooks book, RunPlan plan, ImmutableArray<string> despite, Printer printer,
        string path, DateOnly on, string by)
    {
        var run = book.Ask(books => books.LastRun()) + 1;
        var call = new PrintCall([.. plan.Labels.Where(l => l.IsOwn)
            .Select(l => new LabelsToPrint(l.Job, l.Lot, l.Count)
            {
                Stock = l.Stock.Id, Places = PlacesOf(plan, l.Lot.ToString()), Drawing = LabelDrawing.Of(l.Layout),
            })], despite, on, by)
        { Run = run };
        var outcome = PrintLabels.Run(call, book, () =>
        {
            var kept = FileOf(workshop, run);
            Directory.CreateDirectory(Path.GetDirectoryName(kept)!);
            var note = PrintLabels.Note(call.Labels.Select(l => l.Job), despite);
            MixedSheets.WritePdf(kept,
                [.. plan.Sheets
                    .Select(s => new MixedSheet(s.Stock, [.. s.Labels.Select(l => (l.Place, l.Label.Layout))]) { Note = note })],
                printer.Registration,
                new DocumentInfo(
                    $"Print run {run}: {string.Join("; ", plan.Labels.Where(l => l.IsOwn).Select(l => $"{l.Job.Content.ProductName}, lot {l.Lot}"))}", on));
            Copy(kept, path);
        });
        if (outcome.IsStopped)
            return new RunOutcome(run, outcome, ImmutableDictionary<string, decimal>.Empty);
        foreach (var sheets in plan.Sheets.GroupBy(s => s.Stock.Id))
            RememberSheets(workshop, sheets.First().Stock, sheets);
        return new RunOutcome(run, outcome,
            UseUp(workshop, book, plan.Labels.Select(l => (l.Lot.ToString(), l.Stock.Id, l.Count)), run, on, by));
    }

    /// <summary>Prints a run again, exactly as it was, on new sheets.</summary>
    /// <param name="run">The run's number.</param>
    /// <param name="path">The PDF to write.</param>
    /// <param name="by">Who prints.</param>
    /// <returns>What stands in the books now.</returns>
    /// <exception cref="InputException">There was no such run, or its pages are gone.</exception>
    public static IReadOnlyList<Printing> Again(Workshop workshop, OpenBooks book, int run, string path, DateOnly on, string by)
    {
        var kept = FileOf(workshop, run);
        var (before, last) = book.Ask(books => (books.PrintingsOfRun(run).DistinctBy(p => p.Lot).ToArray(), books.LastRun()));
        if (before.Length == 0)
            throw (last > 0
                ? new InputException("print.no-such-run", ("run", run), ("last", last))
                : new InputException("print.no-run-yet", ("run", run)));
        if (!File.Exists(kept))
            throw new InputException(Path.Combine(Kept, Path.GetFileName(kept)), 0, "print.pages-gone",
                ("list", string.Join(" --batch ", before.Select(p => p.Lot))));
        Copy(kept, path);
        var again = PrintedLots.Print(book, [.. before.Select(p => new Printing
        {
            On = on, By = by, Note = "printed again, as it was", Lot = p.Lot, Recipe = p.Recipe, Variant = p.Variant, Product = p.Product,
            Labels = p.Labels, Run = run, Stock = p.Stock, Places = p.Places, Drawing = p.Drawing,
        })]);
        foreach (var stock in before.Where(p => p is { Stock: not null, Places: not null }).GroupBy(p => p.Stock!))
            RememberNewSheets(workshop, StockShelf.Of(workshop.Folder).Load(stock.Key), stock.SelectMany(p => p.Places!.Split(' ')));
        UseUp(workshop, book, before.Where(p => p.Stock is not null).Select(p => (p.Lot, p.Stock!, p.Labels)), run, on, by);
        return again;
    }

    /// <summary>Writes down labels of a lot that came out badly: from then on they wait to be printed again.</summary>
    /// <exception cref="InputException">Not so many were printed.</exception>
    public static void Spoil(OpenBooks book, MarketBook markets, string lot, int count, DateOnly on, string by)
    {
        foreach (var printing in book.Ask(books => books.PrintingsOf(lot)).Reverse())
        {
            var now = Math.Min(count, printing.Labels - printing.Spoiled);
            if (now > 0)
                Correcting.Of(book, markets, BookLists.Printing, printing.Id,
                    new Dictionary<string, string>
                    {
                        ["spoiled"] = (printing.Spoiled + now).ToString(System.Globalization.CultureInfo.InvariantCulture),
                    }, "came out badly", on, by);
            count -= Math.Max(0, now);
        }
        if (count > 0)
            throw new InputException("printing.spoiled-more", ("count", count), ("lot", lot));
    }

    private static string FileOf(Workshop workshop, int run) =>
        Path.Combine(workshop.Folder, Kept, Invariant($"run-{run:0000}.pdf"));

    private static void Copy(string from, string to) => AtomicFile.Write(to, stream => stream.Write(File.ReadAllBytes(from)));

    private static string PlacesOf(RunPlan plan, string lot) => string.Join(' ', plan.Sheets
        .Select(s => (s.Called, Places: s.Labels.Where(l => l.Label.Lot.ToString() == lot).Select(l => l.Place).ToArray()))
        .Where(s => s.Places.Length > 0)
        .Select(s => $"{s.Called}:{PositionRanges.Write(s.Places)}"));

    // The sheets that the run was on are used up there: what is printed again goes on new ones, and leaves these part-used.
    private static void RememberNewSheets(Workshop workshop, LabelStock stock, IEnumerable<string> places)
    {
        var shelf = PartUsedSheets.Of(workshop.Folder);
        var sheets = shelf.SheetsOf(stock).ToList();
        foreach (var sheet in places.Select(p => p.Split(':')).Where(p => p.Length == 2 && p[0] != NewSheet).GroupBy(p => p[0]))
        {
            var used = sheet.SelectMany(p => PositionRanges.Read(p[1]) ?? []).ToImmutableSortedSet();
            if (used.Count > 0 && used.Count < stock.PerSheet)
                sheets.Add(new PartUsedSheet(PartUsedSheets.FreeName(sheets), used));
        }
        shelf.Remember(stock, sheets);
    }

    private static void RememberSheets(Workshop workshop, LabelStock stock, IEnumerable<RunSheet> printed)
    {
        if (stock.Kind == StockKind.Roll)
            return;
        var shelf = PartUsedSheets.Of(workshop.Folder);
        var now = printed.Where(s => s.Name is not null)
            .ToDictionary(s => s.Name!, s => new PartUsedSheet(s.Name!, s.UsedBefore.Union(s.Labels.Select(l => l.Place))));
        var known = shelf.SheetsOf(stock);
        shelf.Remember(stock,
            [.. known.Select(s => now.GetValueOrDefault(s.Name, s)), .. now.Values.Where(s => known.All(k => k.Name != s.Name))]);
    }

    // Only where the workshop says which material its label sheets are, and only for lots that the books have.
    private static IReadOnlyDictionary<string, decimal> UseUp(Workshop workshop, OpenBooks book,
        IEnumerable<(string Lot, string Stock, int Labels)> labels, int run, DateOnly on, string by)
    {
        var materials = workshop.Materials.Values.Where(m => m.LabelStock is not null).GroupBy(m => m.LabelStock!)
            .ToDictionary(g => g.Key, g => g.First().Id);
        (string, string,
            decimal)[] used = book.Ask(books => labels.Where(l => materials.ContainsKey(l.Stock) && books.FindBatch(l.Lot) is not null)
            .Select(l => (l.Lot, materials[l.Stock], (decimal)l.Labels)).ToArray());
        return used.Length == 0 ? ImmutableDictionary<string, decimal>.Empty : Packing.Use(book, used, on, by, $"print run {run}").Missing;
    }
}
