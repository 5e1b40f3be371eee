using LabelForge.Checks;
using LabelForge.Lots;
using LabelForge.Print.Designs;
using LabelForge.Print.Drawing;
using LabelForge.Print.Fitting;
using LabelForge.Print.Jobs;
using LabelForge.Print.Sheets;
using LabelForge.Recipes.Files;
using LabelForge.Records.Books;
using LabelForge.UseCases;
using LabelForge.Web.Workbench;
using Microsoft.AspNetCore.Components;
using Entry = LabelForge.Web.Workbench.Entry;

namespace LabelForge.Web.Components.Pages;

/// <summary>What is printed of one product, why not, and what became of it.</summary>
public partial class PrintPage
{
    private string _printed = "";
    private string _count = "";
    private string _first = "";
    private bool _marks;
    private ImmutableArray<Finding> _eachOpen = [];
    private bool _eachAnyway;
    private LabelJob? _eachOf;
    private SheetOrder? _order;
    private IReadOnlyList<string> _warnings = [];
    private (string Address, SheetOrder Order)? _made;
    private string? _remembered;
    private ImmutableArray<Finding> _open = [];
    private bool _anyway;

    /// <summary>How many a link asks for.</summary>
    [SupplyParameterFromQuery(Name = "count")]
    public int? AskedCount { get; set; }

    private (string Address, ImmutableArray<string> Lots)? _each;

    private string EachForm => $"print each of {Id}";

    private string PrintForm => $"print {Id}";

    /// <inheritdoc/>
    protected override void OnParametersSet()
    {
        if (TypedLot.Length == 0)
            _count = AskedCount is > 0 and var many ? many.ToString(CultureInfo.InvariantCulture) : "";
        base.OnParametersSet();
    }

    /// <inheritdoc/>
    protected override void Made()
    {
        var open = Stops();
        _anyway &= open.SequenceEqual(_open);
        _open = open;
        // Another text of the recipe may break other rules: what was said of the one before, and the tick, are over with it.
        if (!ReferenceEquals(_eachOf, View.Job))
            (_eachOf, _eachOpen, _eachAnyway) = (View.Job, [], false);
        Settle();
    }

    private ImmutableArray<Finding> Stops()
    {
        try
        {
            return View is { IsOld: false, Job: { } job } ? PrintLabels.Open([job], []) : [];
        }
        catch (InputException)
        {
            // The view says why it cannot be judged.
            return [];
        }
    }

    // What would be printed, or why it cannot be.
    /// <inheritdoc/>
    protected override void Settle()
    {
        (_order, Unprinted, _warnings) = (null, null, []);
        if (Layout is not { } layout || Stock is not { } stock)
            return;
        try
        {
            if (View.IsOld)
                throw new InputException("form.printed-out-of-date");
            if (LotWrong is not null)
                return;
            var first = _first.Length == 0 ? FirstOf(stock) : Entry.At("first", () => Whole(_first, Say["print-page.first-free"]));
            int? count = _count.Trim().Length == 0 ? null : Entry.At("count", () => Whole(_count, Say["print-page.number-of-labels"]));
            Entry.At("first", () => SheetWriter.Plan(stock, first, 1));
            var plan = Entry.At("count", () => SheetWriter.Plan(stock, first, count));
            var printer = Choice.Printer is { } id ? PrinterFile.Find(OpenDocuments.Folder, id) ?? Printer.Unknown : Printer.Unknown;
            var order = new SheetOrder
            {
                Stock = stock,
                Runs = [new LabelRun(layout, plan.Count)],
                First = first,
                Registration = printer.Registration,
                CutMarks = _marks,
            };
            order.Plan();
            _warnings = [.. EdgeWarnings.Of(order, printer), .. CutMarks.Warnings(order)];
            _order = order;
        }
        catch (InputException e)
        {
            Unprinted = e.Problem;
        }
    }

    private static int Whole(string text, string what) =>
        int.TryParse(text.Trim(), NumberStyles.None, CultureInfo.InvariantCulture, out var value)
            ? value
            : throw new InputException("form.not-this-number", ("text", text.Trim()), ("what", what));

    private string Sheets(SheetOrder order) => (order.Stock.Kind, order.Plan().Sheets) switch
    {
        (StockKind.Roll, _) => Say["print-page.a-roll"],
        (_, var sheets) => Say.Counted("print-page.sheets", sheets),
    };

    private async Task Make()
    {
        if (_order is not { } order
            || View.IsOld
            || View.Job is not { } job
            || LotCode.Parse(TypedLot) is not { IsValue: true, Value: var lot } || job.Content.Lot != lot.ToString())
            return;
        (_made, _remembered, Unprinted) = (null, null, null);
        ImmutableArray<string> despite = _anyway ? [.. _open.Select(f => f.Rule)] : [];
        await Print(PrintForm, () => (
            new PrintCall([new LabelsToPrint(job, lot, order.Count)], despite, Options.Today(), Preferences.Who),
            order with { Note = PrintLabels.Note([job], despite) }, $"{job.Content.ProductName}, lot {lot}", job.On),
            (outcome, document) =>
        {
            if (outcome.IsStopped)
            {
                (_open, _anyway) = (outcome.Open, false);
                return null;
            }
            _printed = outcome.Recorded[0].Lot;
            BooksCache.Remember(BookLists.Printing, [.. outcome.Recorded.Select(w => w.Id)],
                Say.Counted("print.remembered", order.Count, outcome.Recorded[0].Product, lot));
            _made = (TemporaryDownloads.Put(document, "application/pdf", $"{Id}-{lot}.pdf"), order);
            return _made.Value.Address;
        });
        if (Unprinted is not null)
            _order = null;
    }

    // Three scents, three sheets, one press: each on a new sheet and with a lot of its own.
    private async Task MakeEach()
    {
        if (Stock is not { } stock || View.IsOld || View.Job is not { } shown || File is not { } file)
            return;
        (_each, _made, Unprinted) = (null, null, null);
        ImmutableArray<string> despite = _eachAnyway ? [.. _eachOpen.Select(f => f.Rule).Distinct()] : [];
        await Print(EachForm, () =>
        {
            var recipe = RecipeFile.Read(Id, YamlFile.ReadText(file.Text, Shown));
            var labels = BooksCache.Ask(books => SheetOfEach.Of(shown.Workshop, recipe, shown.Content.Market, Choice.Design, stock, books,
                Options.Today()));
            return (new PrintCall(labels, despite, Options.Today(), Preferences.Who),
                SheetOfEach.Order(labels, stock) with { Note = PrintLabels.Note(labels.Select(l => l.Job), despite) },
                string.Join(", ", labels.Select(l => l.Job.Content.ProductName)), Options.Today());
        }, (outcome, document) =>
        {
            (_eachOpen, _eachAnyway) = (outcome.Open, false);
            if (outcome.IsStopped)
                return null;
            BooksCache.Remember(BookLists.Printing, [.. outcome.Recorded.Select(w => w.Id)],
                Say["print.remembered-each", outcome.Recorded.Sum(r => r.Labels), outcome.Recorded.Length]);
            _each = (TemporaryDownloads.Put(document, "application/pdf", $"{Id}.pdf"),
                [.. outcome.Recorded.Select(r => $"{r.Product} {r.Lot}")]);
            return _each.Value.Address;
        });
    }

    private async Task UndoPrinting()
    {
        try
        {
            await BooksCache.UndoAsync(Options.Today(), Preferences.Who);
            (_made, _each, _remembered) = (null, null, null);
            UsualLot();
            Remake();
        }
        catch (InputException e)
        {
            Unprinted = e.Problem;
        }
    }

    private void Remember()
    {
        if (_made is not { } made)
            return;
        var next = PartUsedSheets.Of(OpenDocuments.Folder).Remember(made.Order.Stock, made.Order.First, made.Order.Count);
        _remembered = next == 1 ? Say["print-page.sheet-full"] : Say["print-page.next-at", next];
        _first = "";
        Settle();
    }
}
