using LabelForge.Records.Books;
using LabelForge.Selling;
using LabelForge.Web.Editing;
using LabelForge.Web.Workbench;
using Microsoft.AspNetCore.Components;

namespace LabelForge.Web.Components.Parts;

/// <summary>A page on the books, drawn anew when they or the workshop's files change; what is typed on it is kept.</summary>
public abstract class BooksView : FormView, IDisposable
{
    private WhileSame<(Workshop? Workshop, int Version), ImmutableArray<ProductOnTable>>? _onTable;

    private bool _writing;
    private string? _sureOf;

    /// <summary>The open documents.</summary>
    [Inject]
    public required OpenDocuments OpenDocuments { get; init; }

    /// <summary>The workshop as read.</summary>
    [Inject]
    public required WorkshopCache WorkshopCache { get; init; }

    /// <summary>The books.</summary>
    [Inject]
    public required BooksCache BooksCache { get; init; }

    /// <summary>What was typed.</summary>
    [Inject]
    public required Kept Kept { get; init; }

    /// <summary>The keys of forms.</summary>
    [Inject]
    public required FormKeys Keys { get; init; }

    /// <summary>Documents for the page.</summary>
    [Inject]
    public required TemporaryDownloads TemporaryDownloads { get; init; }

    /// <summary>How the page is served.</summary>
    [Inject]
    public required ServeOptions Options { get; init; }

    /// <summary>The workshop; null where one of its files cannot be used, which the frame tells.</summary>
    protected Workshop? Workshop => WorkshopCache.Read().Workshop;

    /// <summary>Asks the books to show something, in one transaction; see <see cref="BooksCache.Asked"/>.</summary>
    protected T Asked<T>(Func<IBooks, T> ask, T otherwise) => BooksCache.Asked(ask, otherwise);

    /// <summary>Asks the books for something that a form is about to write.</summary>
    /// <exception cref="InputException">There are none yet, or they cannot be read.</exception>
    protected T Known<T>(Func<IBooks, T> ask) =>
        BooksCache.Ask(books => ask(books ?? throw new InputException("form.no-books-yet")));

    /// <summary>Why the books could not be asked the last time; null where they could.</summary>
    protected Problem? BooksTrouble => BooksCache.Trouble is { } trouble ? PageWords.Of(trouble, PageSay.Language) : null;

    /// <summary>What can be sold: every product that can be read, with what is left of it.</summary>
    protected ImmutableArray<ProductOnTable> OnTable =>
        (_onTable ??= new(at => at.Workshop is { } workshop
            ? Asked<ImmutableArray<ProductOnTable>>(books => PriceList.In(workshop, books), PriceList.In(workshop, null))
            : [])).Of((Workshop, BooksCache.Version));

    /// <summary>Today, as forms show it.</summary>
    protected string Today => Day(Options.Today());

    /// <summary>How a person wants the page.</summary>
    [Inject]
    public required Preferences Preferences { get; init; }

    /// <summary>Who writes: the name at the foot of the page, else the user of this machine, as on the command line.</summary>
    protected string By => Preferences.Who;

    /// <summary>A day as it is written everywhere.</summary>
    protected static string Day(DateOnly day) => day.ToIso();

    /// <summary>Writes a form into the books, once for its key, and tells on the page what became of it.</summary>
    /// <param name="form">The form's name; its key is renewed, whatever becomes of it.</param>
    /// <param name="act">Reads the form, writes it through the writer that it is given, and says what was done.</param>
    /// <param name="again">Writes it once more after a slip was asked about, with what follows; null where nothing follows.</param>
    /// <returns>Whether it was done.</returns>
    protected async Task<bool> Write(string form, Func<FormWriter, Task<string>> act, Func<Task>? again = null)
    {
        // The script stops a second press; this stops one that came by any other way.
        if (_writing)
            return false;
        _writing = true;
        try
        {
            var writer = new FormWriter(BooksCache, Keys.Of(form), _sureOf == form);
            (Slip, _sureOf) = (null, null);
            return await Try(async () =>
            {
                var said = await act(writer);
                if (writer.Written is { } written)
                    BooksCache.Remember(written.List, written.Entries, said);
                return said;
            });
        }
        catch (SlipAskedException slip)
        {
            Slip = new SlipQuestion(form, slip.Questions, async () =>
            {
                _sureOf = form;
                await (again?.Invoke() ?? Write(form, act));
            });
            return false;
        }
        finally
        {
            _writing = false;
            Keys.Renew(form);
        }
    }

    /// <summary>What looks like a slip and was not written; null where nothing is asked.</summary>
    protected SlipQuestion? Slip { get; private set; }

    /// <summary>It will be typed again; nothing was written.</summary>
    protected void TypeAgain() => Slip = null;

    /// <summary>Strikes what was written last.</summary>
    protected Task Undo() => Try(async () => await BooksCache.UndoAsync(Options.Today(), By) is { } what
        ? PageSay["undoing.done", what]
        : PageSay["undoing.too-late"]);

    /// <inheritdoc/>
    protected override void OnInitialized()
    {
        OpenDocuments.Changed += Redraw;
        BooksCache.Changed += Redraw;
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        Dispose(true);
        GC.SuppressFinalize(this);
    }

    /// <summary>Lets go of what is watched.</summary>
    protected virtual void Dispose(bool disposing)
    {
        OpenDocuments.Changed -= Redraw;
        BooksCache.Changed -= Redraw;
    }

    /// <summary>Draws the page anew, from any thread.</summary>
    protected void Redraw() => InvokeAsync(StateHasChanged);
}
