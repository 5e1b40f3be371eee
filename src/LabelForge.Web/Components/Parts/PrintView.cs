using LabelForge.Lots;
using LabelForge.Print.Designs;
using LabelForge.Print.Drawing;
using LabelForge.Print.Fitting;
using LabelForge.Print.Jobs;
using LabelForge.Print.Sheets;
using LabelForge.Records.Books;
using LabelForge.UseCases;
using LabelForge.Web.Wording;
using LabelForge.Web.Workbench;
using Microsoft.AspNetCore.Components;
using Microsoft.JSInterop;

namespace LabelForge.Web.Components.Parts;

/// <summary>A page on which a product's labels are printed: which product of the recipe, of which lot, which of its labels, on what
/// stock.</summary>
public abstract class PrintView : RecipeView
{
    private const int LotsShown = 20;
    private const int LotsLookedThrough = 200;

    private WhileSame<(Length Width, Length Height, bool Round, int Shelf), IReadOnlyList<LabelStock>>? _fitting;
    private string? _variant;
    private string _which = "";
    private string _stockId = "";
    private int _shelf;

    /// <summary>The page's words.</summary>
    [Inject]
    public required Say Words { get; init; }

    /// <summary>The keys of forms.</summary>
    [Inject]
    public required FormKeys Keys { get; init; }

    /// <summary>The page's script.</summary>
    [Inject]
    public required IJSRuntime Script { get; init; }

    /// <summary>The lot that a link names.</summary>
    [SupplyParameterFromQuery(Name = "lot")]
    public string? AskedLot { get; set; }

    /// <summary>The variant that a link names.</summary>
    [SupplyParameterFromQuery(Name = "product")]
    public string? AskedVariant { get; set; }

    /// <summary>The sheets that are being made; null while none are.</summary>
    protected SheetJob? Under { get; private set; }

    /// <summary>Why it cannot be printed as it stands; null where it can.</summary>
    protected Problem? Unprinted { get; set; }

    /// <summary>The recipe's variants; none where it has none.</summary>
    protected string[] Variants { get; private set; } = [];

    /// <summary>The lot as typed.</summary>
    protected string TypedLot { get; private set; } = "";

    /// <summary>Why labels of this lot cannot be printed; null where they can.</summary>
    protected string? LotWrong { get; private set; }

    /// <summary>The lots of this product, the latest first.</summary>
    protected string[] Lots { get; private set; } = [];

    /// <inheritdoc/>
    protected override string? Variant =>
        Variants.FirstOrDefault(v => string.Equals(v, _variant, StringComparison.OrdinalIgnoreCase)) ?? Variants.FirstOrDefault();

    /// <inheritdoc/>
    protected override (LotCode? Lot, bool IsBegun) Lot =>
        (LotCode.Parse(TypedLot) is { IsValue: true, Value: var lot } ? lot : null, true);

    /// <summary>The label and those beside it, as they are laid out.</summary>
    protected IReadOnlyList<LabelLayout> Layouts => View.Job is { } job && job.Fit is Fit.Fits main
        ? [main.Layout,
            .. job.Companions.OrderBy(c => c.Key, StringComparer.Ordinal).Select(c => c.Value).OfType<Fit.Fits>().Select(f => f.Layout)]
        : [];

    /// <summary>The one that is printed.</summary>
    protected LabelLayout? Layout => Layouts.FirstOrDefault(l => l.Design.Id == _which) ?? Layouts.FirstOrDefault();

    // Reading every stock takes a while, and what fits changes with the design alone.
    private IReadOnlyList<LabelStock> FittingStock => Layout?.Design is not { } design ? []
        : (_fitting ??= new(_ => [.. StockShelf.Of(OpenDocuments.Folder).All
            .Where(s => Layout is { } layout && StockFit.Fits(layout.Design, s))
            .OrderBy(s => s.LabelWidth.Millimetres * s.LabelHeight.Millimetres)]))
            .Of((design.Width, design.Height, design.Round, _shelf));

    /// <summary>The stock that it fits, to choose from.</summary>
    protected IEnumerable<(string Id, string Name)> Fitting => FittingStock.Select(s => (s.Id, s.NameIn(Words.Language)));

    /// <summary>The stock that it is printed on.</summary>
    protected LabelStock? Stock
    {
        get
        {
            var fitting = FittingStock;
            var usual = View.Job is { } job ? UsualDesign.For(job.Kind.Id) : null;
            var wanted = new[] { _stockId, _which.Length == 0 ? Choice.Stock : null,
                Layout is { } l && usual?.With.GetValueOrDefault(l.Design.Id) is { } with ? with : usual?.Stock };
            return wanted.Select(w => fitting.FirstOrDefault(s => s.Id == w)).OfType<LabelStock>().FirstOrDefault()
                ?? fitting.FirstOrDefault();
        }
    }

    /// <summary>What the lot's code says.</summary>
    protected string LotHint => LotCode.Parse(TypedLot) is not { IsValue: true, Value: var lot } ? Words["print-page.as-sheet"]
        : Lots.Contains(lot.ToString())
        ? Words["print-page.lot-made", Day(lot.Made), lot.Batch]
        : Words["print-page.lot-new", Day(lot.Made), lot.Batch];

    /// <summary>The first free place on the sheet of a stock that lies there, as far as is remembered.</summary>
    protected int FirstOf(LabelStock stock) =>
        stock.Kind == StockKind.Roll ? 1 : PartUsedSheets.Of(OpenDocuments.Folder).FirstOf(stock);

    /// <summary>A day as it is written everywhere.</summary>
    protected static string Day(DateOnly day) => day.ToIso();

    /// <summary>What would be printed is looked at anew.</summary>
    protected abstract void Settle();

    /// <inheritdoc/>
    protected override void Arrived()
    {
        Variants = ProductChoices.Variants(Text);
        if (TypedLot.Length > 0)
            return;
        _variant = AskedVariant;
        if (AskedLot is { Length: > 0 } asked)
            TakeLot(asked);
        else
            UsualLot();
    }

    // Stock of the maker's own may have been added or changed.
    /// <inheritdoc/>
    protected override void WorkshopChanged()
    {
        _shelf++;
        base.WorkshopChanged();
    }

    /// <summary>Takes a lot as it is typed.</summary>
    protected void TypeLot(string typed)
    {
        if (TakeLot(typed))
            Remake();
        Settle();
    }

    private bool TakeLot(string typed)
    {
        TypedLot = typed;
        var read = LotCode.Parse(typed);
        LotWrong = read.IsValue ? OfAnother(read.Value.ToString()) : PageWords.Told(read.Problem, Words.Language);
        return read.IsValue;
    }

    /// <summary>The lot of the latest batch of what is shown; before there is one, the lot that it will have.</summary>
    protected void UsualLot()
    {
        Lots = BooksCache.Asked<string[]>(books => [.. books.Lots(null, LotsLookedThrough, Id).Select(l => l.Batch)
            .Where(b => Variant is not { } variant
                || b.Variant is not { } other
                || string.Equals(other, variant, StringComparison.OrdinalIgnoreCase)).Take(LotsShown).Select(b => b.Lot)], []);
        ForgetNextFree();
        (TypedLot, LotWrong) = (Lots.FirstOrDefault() ?? NextFree.ToString(), null);
    }

    /// <summary>Another product of the recipe is printed.</summary>
    protected void ChooseVariant(string variant)
    {
        _variant = variant;
        UsualLot();
        Remake();
        Settle();
    }

    /// <summary>Another of its labels is printed.</summary>
    protected void ChooseLabel(string design)
    {
        (_which, _stockId) = (design, "");
        Settle();
    }

    /// <summary>It is printed on another stock.</summary>
    protected void ChooseStock(string id)
    {
        _stockId = id;
        Choose(Choice with { Stock = _which.Length == 0 ? id : Choice.Stock });
    }

    // A lot is one product's. The lot of a batch of this recipe says which of its variants it is.
    private string? OfAnother(string lot)
    {
        var (batch, printed) = BooksCache.Asked<(Batch?, Printing?)>(
            books => (books.FindBatch(lot), books.PrintingsOf(lot).FirstOrDefault()), default);
        if (batch is not null)
        {
            if (batch.Recipe != Id)
                return Words["print-page.lot-of-another", lot, batch.Product];
            _variant = batch.Variant ?? _variant;
            return null;
        }
        return printed is not null && AsWritten() is { } recipe && !PrintedLots.IsSame(printed, recipe)
            ? Words["print-page.lot-printed", printed.Product, lot, Day(printed.On), NextFree]
            : null;
    }

    /// <summary>Prints once for the form's key, and opens what was made.</summary>
    /// <param name="form">The form's name.</param>
    /// <param name="prepared">What is printed.</param>
    /// <param name="made">Told what was made; gives its address, or null where nothing is handed out.</param>
    protected async Task Print(string form, Func<(PrintCall Call, SheetOrder Order, string Title, DateOnly On)> prepared,
        Func<PrintOutcome, byte[], string?> made)
    {
        string? address;
        try
        {
            var (call, order, title, on) = prepared();
            var under = Under = new SheetJob(order, () => InvokeAsync(StateHasChanged));
            byte[] document = [];
            var outcome =
                await BooksCache.WriteAsync(book => PrintLabels.Run(call, book.Once(Keys.Of(form)),
                    () => document = under.Write(title, on)));
            // No sheet is handed out with a lot that may be another product's.
            if (outcome.NotRecorded is { } problem)
                throw new InputException(problem);
            address = made(outcome, document);
        }
        catch (OperationCanceledException)
        {
            return;
        }
        catch (InputException e)
        {
            Unprinted = e.Problem;
            return;
        }
        finally
        {
            Keys.Renew(form);
            Under = null;
        }
        if (address is not null)
            await Script.InvokeVoidAsync("labelforge.open", address);
    }
}
