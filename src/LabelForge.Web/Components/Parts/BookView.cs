using System.Globalization;
using LabelForge.Measures;
using LabelForge.Recipes;
using LabelForge.Records.Books;
using LabelForge.Web.Editing;
using LabelForge.Web.Serving;
using LabelForge.Web.Workbench;
using Microsoft.AspNetCore.Components;

namespace LabelForge.Web.Components.Parts;

/// <summary>A page over the workshop's books.</summary>
public abstract class BookView : ComponentBase, IDisposable
{
    /// <summary>The desk.</summary>
    [Inject]
    public required Desk Desk { get; init; }

    /// <summary>The workshop.</summary>
    [Inject]
    public required Shelf Shelf { get; init; }

    /// <summary>How the page is served, and on what day.</summary>
    [Inject]
    public required ServeOptions Options { get; init; }

    /// <summary>The workshop as its files stand; null where one cannot be read.</summary>
    protected Workshop? Workshop => Shelf.Read().Workshop;

    /// <summary>The books as last read; null where there are none yet.</summary>
    protected Ledger? Ledger { get; private set; }

    /// <summary>Why the last thing could not be done.</summary>
    protected string? Refused { get; set; }

    /// <summary>What was done last.</summary>
    protected string? Done { get; set; }

    /// <summary>Who writes: the user of this machine.</summary>
    protected static string By => Environment.UserName;

    /// <summary>Today.</summary>
    protected DateOnly Today => Options.Today();

    /// <inheritdoc/>
    protected override void OnInitialized()
    {
        Desk.Changed += Redraw;
        ReadBooks();
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        Dispose(true);
        GC.SuppressFinalize(this);
    }

    /// <summary>Lets go of what is watched.</summary>
    protected virtual void Dispose(bool disposing) => Desk.Changed -= Redraw;

    /// <summary>Reads the books anew.</summary>
    protected void ReadBooks() => Ledger = RecordBook.Exists(Desk.Folder) ? RecordBook.Open(Desk.Folder).Read() : null;

    /// <summary>Writes in the books and reads them anew; what is refused is told on the page, and nothing is written.</summary>
    /// <returns>Whether it was written.</returns>
    protected bool Write(Func<RecordBook, string?> write)
    {
        (Refused, Done) = (null, null);
        try
        {
            Done = write(RecordBook.Open(Desk.Folder));
            ReadBooks();
            return true;
        }
        catch (InputException e)
        {
            Refused = $"{e.Problem.Wrong} {e.Problem.Write}";
            return false;
        }
    }

    /// <summary>A sum of money: a plain figure with at most two decimals.</summary>
    protected static decimal Money(string text, string what) =>
        decimal.TryParse(text.Trim(), NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var money) && money == Math.Round(money, 2)
            ? money
            : throw new InputException(new Problem(null, 0, $"\"{text}\" is not {what}.", "Write a plain figure with a decimal point: 9.50"));

    /// <summary>A whole number.</summary>
    protected static int Whole(string text, string what) =>
        int.TryParse(text.Trim(), NumberStyles.None, CultureInfo.InvariantCulture, out var number)
            ? number
            : throw new InputException(new Problem(null, 0, $"\"{text}\" is not {what}.", "Write a whole number."));

    /// <summary>A day, or null where nothing is written.</summary>
    protected static DateOnly? Day(string text) => text.Trim().Length == 0 ? null
        : DateOnly.TryParseExact(text.Trim(), "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var day) ? day
        : throw new InputException(new Problem(null, 0, $"\"{text}\" is not a day.", "Write year, month and day: 2027-06-30"));

    private void Redraw() => InvokeAsync(StateHasChanged);
}
