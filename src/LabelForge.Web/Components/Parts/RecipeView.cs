using LabelForge.Lots;
using LabelForge.Recipes.Files;
using LabelForge.Records.Books;
using LabelForge.Web.Editing;
using LabelForge.Web.Workbench;
using Microsoft.AspNetCore.Components;

namespace LabelForge.Web.Components.Parts;

/// <summary>A page about one recipe that shows its label as it is typed.</summary>
public abstract class RecipeView : EditorView
{
    private LotCode? _next;
    private LabelView _view = LabelView.None;
    private LatestOnlyWorker<(string Text, LabelWish Wish), LabelView>? _latest;

    /// <summary>Makes views of labels.</summary>
    [Inject]
    public required LabelViews Views { get; init; }

    /// <summary>The workshop.</summary>
    [Inject]
    public required WorkshopCache WorkshopCache { get; init; }

    /// <summary>What was chosen for each recipe.</summary>
    [Inject]
    public required Choices Choices { get; init; }

    /// <summary>Whether the program ends.</summary>
    [Inject]
    public required Stopping Stopping { get; init; }

    /// <summary>The books.</summary>
    [Inject]
    public required BooksCache BooksCache { get; init; }

    /// <summary>How the page is served, and on what day.</summary>
    [Inject]
    public required ServeOptions Options { get; init; }

    /// <summary>The recipe's id.</summary>
    [Parameter]
    public string Id { get; set; } = "";

    /// <summary>How the label was last wanted.</summary>
    protected Choice Choice { get; private set; } = new();

    /// <summary>The last view that could be made; marked as old where the text that stands now cannot be used.</summary>
    protected LabelView View =>
        File?.Problem is { } problem && _view.Job is not null ? _view with { IsOld = true, Problem = problem } : _view;

    /// <summary>How the file is named.</summary>
    protected string Shown => $"recipes/{Id}.yaml";

    /// <inheritdoc/>
    protected override Problem? Trouble =>
        File?.Problem ?? (View.Problem is { } p && (p.File == Shown || p.Letter is not null) ? p : null);

    /// <inheritdoc/>
    protected override IReadOnlyList<string> Order => RecipeKeys;

    /// <summary>The variant that is shown; null for a recipe without any.</summary>
    protected virtual string? Variant => null;

    /// <summary>The lot that a batch of this product begun today would have.</summary>
    protected LotCode NextFree =>
        _next ??= BooksCache.Asked(books => NextLot.Of(books, Options.Today(), AsWritten()), new LotCode(Options.Today(), 1));

    /// <summary>The lot that the label is shown with, and whether a batch of it may have been
    /// begun. Until one is chosen, the next free one: a label has a lot.</summary>
    protected virtual (LotCode? Lot, bool IsBegun) Lot => (NextFree, false);

    /// <summary>Writes what the maker settles of the product into the recipe.</summary>
    protected void Answer((string Fact, bool Is) answer) => Set(answer.Is ? "yes" : "no", "facts", answer.Fact);

    /// <summary>How the label is wanted now.</summary>
    protected virtual LabelWish Wish =>
        new(Lot: Lot.Lot, IsBegun: Lot.IsBegun, Variant: Variant,
            Market: Choice.Market is { } m
                && (WorkshopCache.Read().Workshop?.Markets ?? Shipped.Markets).Find(m) is { IsValue: true, Value: var market }
                ? market
                : null, Design: Choice.Design);

    private static IReadOnlyList<string> RecipeKeys { get; } =
        ["name", "identity", "product", "sold as", "facts", "item", "claims", "materials", "superfat", "declare as", "yield", "loss", "pieces",
            "net", "package", "directions", "warnings", "variants", "period after opening", "best before", "origin", "notes"];

    /// <inheritdoc/>
    protected override void OnParametersSet()
    {
        File = OpenDocuments.Open(OpenDocuments.Recipes, Id);
        Choice = Choices.Of(Id);
        _next = null;
        _latest ??= new((want, stop) => Views.OfAsync(Id, want.Text, want.Wish, stop, view => Soon(view, stop)), Ready, Failed, Stopping);
        Arrived();
        // What is known is shown with the first drawing of the page: a second one a moment later would be laid out and sent anew.
        if (File is { Problem: null } file && Views.Known(Id, file.Text, Wish) is { } known)
        {
            Show(known);
            if (known.IsWhole)
            {
                _latest.Forget();
                return;
            }
        }
        Remake();
    }

    /// <summary>Told when the page was opened on a recipe, before its label is asked for.</summary>
    protected virtual void Arrived()
    {
    }

    /// <summary>Keeps a choice and makes the label anew.</summary>
    protected void Choose(Choice choice)
    {
        Choice = choice;
        Choices.Keep(Id, choice);
        Remake();
    }

    /// <summary>The lot of the next batch is asked for anew: another variant is shown, or the books changed.</summary>
    protected void ForgetNextFree() => _next = null;

    /// <summary>The recipe of the shown product as its file has it; null where it cannot be read.</summary>
    protected Recipe? AsWritten()
    {
        try
        {
            var recipe = File is { Problem: null } file ? RecipeFile.Read(Id, YamlFile.ReadText(file.Text, Shown)) : null;
            return recipe is { Variants.IsEmpty: false } && Variant is { } variant ? recipe.Variant(variant) : recipe;
        }
        catch (InputException)
        {
            return null;
        }
    }

    /// <summary>Makes the label anew.</summary>
    protected void Remake()
    {
        if (File is not { Problem: null } file)
            return;
        _latest?.Want((file.Text, Wish));
    }

    /// <summary>Told when a view was made.</summary>
    protected virtual void Made()
    {
    }

    // What a label is wanted of is the page's own: it is read on the page's thread, whoever changed the file.
    /// <inheritdoc/>
    protected override void FileChanged() => InvokeAsync(() =>
    {
        Remake();
        // Nothing is made of a text that cannot be used, and what was made is out of date by it.
        if (File?.Problem is not null)
            Made();
        StateHasChanged();
    });

    /// <inheritdoc/>
    protected override void WorkshopChanged() => InvokeAsync(() =>
    {
        File ??= OpenDocuments.Open(OpenDocuments.Recipes, Id);
        Remake();
        StateHasChanged();
    });

    /// <inheritdoc/>
    protected override void Dispose(bool disposing)
    {
        _latest?.Dispose();
        base.Dispose(disposing);
    }

    // What was last said of the other scents stays on the screen until they are judged anew; what is said of them all waits.
    private void Soon(LabelView view, CancellationToken stop) => InvokeAsync(() =>
    {
        if (stop.IsCancellationRequested)
            return;
        _view = view with { Others = _view.Others };
        Made();
        StateHasChanged();
    });

    private Task Ready(LabelView view) => InvokeAsync(() =>
    {
        Show(view);
        StateHasChanged();
    });

    private void Show(LabelView view)
    {
        // Where something is wrong the last good picture stays on the screen, marked as old.
        _view = view.Job is null && _view.Job is not null ? _view with { Problem = view.Problem, IsOld = true } : view;
        Made();
    }

    private Task Failed(Exception e) => DispatchExceptionAsync(e);
}
