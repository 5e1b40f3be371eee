using LabelForge.Days;
using LabelForge.Lots;
using LabelForge.Print.Designs;
using LabelForge.Print.Drawing;
using LabelForge.Print.Fitting;
using LabelForge.Print.Jobs;
using LabelForge.Print.Sheets;
using LabelForge.Records.Books;

namespace LabelForge.UseCases;

/// <summary>Plans a print run: all labels that batches need, several products on one sheet, on what the workshop has.</summary>
public sealed class RunPlanner
{
    private readonly Workshop _workshop;
    private readonly IBooks _books;
    private readonly Market _market;
    private readonly DateOnly _on;

    /// <summary>A planner for a day.</summary>
    /// <param name="books">The books; the planner is used while they are open.</param>
    /// <param name="market">The market of the labels.</param>
    public RunPlanner(Workshop workshop, IBooks books, Market market, DateOnly on) =>
        (_workshop, _books, _market, _on) = (workshop, books, market, on);

    /// <summary>The batches that wait for labels, and how many each.</summary>
    public ImmutableArray<(Batch Batch, int Labels)> Waiting =>
        [.. OpenToday.Waiting(_books, _on)];

    /// <summary>The batches that lots or pots stand for, and how many labels each still needs.</summary>
    /// <exception cref="InputException">The books know no such lot.</exception>
    public ImmutableArray<(Batch Batch, int Labels)> Of(IEnumerable<string> lots) =>
        [.. lots.SelectMany(l => _books.BatchesOfPot(l).ToArray() is { Length: > 0 } poured ? poured : [_books.BatchOf(l)])
            .DistinctBy(b => b.Id)
            .Select(b => (b, OpenToday.LabelsNeeded(_books, b)))];

    /// <summary>Plans.</summary>
    /// <param name="batches">What needs labels, and how many.</param>
    /// <param name="stock">The stock to print the products' own labels on; null for what the workshop has.</param>
    /// <exception cref="InputException">A label does not fit, a stock is not known, or nothing needs labels.</exception>
    public RunPlan Plan(IEnumerable<(Batch Batch, int Labels)> batches, string? stock = null)
    {
        var wanted = batches.Where(b => b.Labels > 0).ToArray();
        if (wanted.Length == 0)
            throw new InputException("print.nothing-waits");
        var notes = new List<string>();
        ImmutableArray<RunLabels> labels = [.. wanted.SelectMany(w => LabelsOf(w.Batch, w.Labels, stock, notes))];
        var shelf = PartUsedSheets.Of(_workshop.Folder);
        return new RunPlan(labels, [.. labels.GroupBy(l => l.Stock.Id).SelectMany(g => Sheets([.. g], shelf))], [.. notes.Distinct()]);
    }

    private IEnumerable<RunLabels> LabelsOf(Batch batch, int count, string? stock, List<string> notes)
    {
        var lot = LotCode.Parse(batch.Lot).OrRefuse();
        var product = LotProducts.Weighed(_workshop.ProductsOf(batch.Recipe), _books, batch, _market, _on);
        notes.AddRange((product.Weighed?.Changes ?? [])
            .Select(c => $"Lot {lot}, by what was really weighed: {c} This goes by what was weighed."));
        var job = LabelJob.Prepare(product, _market, null, lot, _on);
        notes.AddRange(job.LeftOut.Select(m => $"{batch.Product}: {m}"));
        if (Changed(batch, job) is { } changed)
            notes.Add(changed);
        var usual = UsualDesign.For(job.Kind.Id, job.Workshop.Business.LabelStock, job.Batch.Recipe.Package);
        yield return Labels(job, lot, job.Fit.OrRefuse(), stock ?? usual.Stock, count, own: true, asked: stock is not null);
        foreach (var (design, fit) in job.Companions.OrderBy(c => c.Key, StringComparer.Ordinal))
        {
            if (usual.With.TryGetValue(design, out var other))
                yield return Labels(job, lot, fit.OrRefuse(), other, count, own: false, asked: false);
        }
    }

    private RunLabels Labels(LabelJob job, LotCode lot, LabelLayout layout, string usual, int count, bool own, bool asked) =>
        new(job, lot, layout, StockShelf.Of(_workshop.Folder).Load(asked ? usual : AtHand(layout.Design) ?? usual), count, own);

    // What lies in the workshop and fits, the least waste first; of equals the one that the maker wrote first.
    private string? AtHand(LabelDesign design) => _workshop.Business.LabelStock
        .Select(StockShelf.Of(_workshop.Folder).Load).Where(s => StockFit.Fits(design, s))
        .OrderBy(s => s.LabelWidth.Millimetres * s.LabelHeight.Millimetres).FirstOrDefault()?.Id;

    // A lot's labels are one label: where it would come out otherwise than those on the shelf, that is told.
    private string? Changed(Batch batch, LabelJob job) => job.Fit is Fit.Fits fits
        && _books.PrintingsOf(batch.Lot).LastOrDefault(p => p.Drawing is not null) is { } before
        && before.Drawing != LabelDrawing.Of(fits.Layout)
            ? Invariant(
                $"The label of lot {batch.Lot} ({batch.Product}) has changed since it was printed on {before.On:yyyy-MM-dd}; run {before.Run} printed again gives it as it was.")
            : null;

    private static IEnumerable<RunSheet> Sheets(ImmutableArray<RunLabels> labels, PartUsedSheets shelf)
    {
        var stock = labels[0].Stock;
        var known = shelf.SheetsOf(stock);
        var plan = SheetFilling.Plan(stock.PerSheet, known, labels.Sum(l => l.Count));
        using var next = labels.SelectMany(l => Enumerable.Repeat(l, l.Count)).GetEnumerator();
        foreach (var sheet in plan)
        {
            var filled = sheet.Places
                .Select(p => (p, next.MoveNext() ? next.Current : throw new InvalidOperationException("More places than labels.")))
                .ToImmutableArray();
            var name = sheet.Name ?? (sheet.Places.Length < stock.PerSheet ? PartUsedSheets.FreeName(known) : null);
            yield return new RunSheet(stock, name, sheet.Name is null, sheet.UsedBefore, filled);
        }
    }
}
