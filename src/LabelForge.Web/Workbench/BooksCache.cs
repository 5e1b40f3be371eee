using LabelForge.Records.Books;
using LabelForge.Web.Editing;

namespace LabelForge.Web.Workbench;

/// <summary>The workshop's books as the pages ask them; it tells when something is written into
/// them, here or by another program.</summary>
public sealed class BooksCache : IDisposable
{
    private readonly Lock _gate = new();
    private readonly OpenDocuments _documents;
    private readonly FileWatch _watcher;
    private readonly Debounce _look;
    private readonly Debounce _again;

    // The page itself, and each question or entry that is under way.
    private readonly CountdownEvent _users = new(1);
    private bool _isOver;
    private ServerWatch? _server;
    private int _version;

    /// <summary>The books of the workshop whose files are open.</summary>
    public BooksCache(OpenDocuments documents)
    {
        _documents = documents;
        _look = new Debounce(TimeSpan.FromMilliseconds(200), Forget);
        _again = new Debounce(TimeSpan.FromSeconds(5), Forget);
        _watcher = new FileWatch(documents.Folder, OpenBooks.FileName, deep: false, _look);
    }

    /// <summary>What was written last and can be undone by one button; null where nothing can.</summary>
    public Booking? Last { get; private set; }

    /// <summary>Grows with every change, so that what was asked of the books before it is told from what is asked after.</summary>
    public int Version => _version;

    /// <summary>Told when the books changed, on any thread.</summary>
    public event Action? Changed;

    /// <summary>Why the books could not be asked the last time that a page only wanted to show something; null where they could.</summary>
    public Problem? Trouble { get; private set; }

    /// <summary>Asks the books to show something: what is given instead stands where there are none yet, or where they cannot be read,
    /// which <see cref="Trouble"/> tells.</summary>
    /// <param name="ask">Asks them, and gives an answer that no longer needs them.</param>
    /// <param name="otherwise">What is given instead.</param>
    public T Asked<T>(Func<IBooks, T> ask, T otherwise)
    {
        try
        {
            Trouble = null;
            return Ask(books => books is null ? otherwise : ask(books));
        }
        catch (InputException e)
        {
            Trouble = e.Problem;
            // Pages keep an answer until the books change, and this is none: whoever writes now will be through soon, and a disk that
            // was taken out may be back.
            (e.Problem.Code == "books.busy" ? _look : _again).Start();
            return otherwise;
        }
        catch (OperationCanceledException)
        {
            return otherwise;
        }
    }

    /// <summary>Asks the books by query, at one moment, without reading them whole; null is handed in where there are none yet.</summary>
    /// <exception cref="InputException">They cannot be read.</exception>
    /// <exception cref="OperationCanceledException">The page is no longer served.</exception>
    public T Ask<T>(Func<IBooks?, T> ask) =>
        Using(() => OpenBooks.Exists(_documents.Folder) ? Opened().Ask<T>(books => ask(books)) : ask(null));

    /// <summary>Asks the books what only the whole program knows, as where a lot went.</summary>
    /// <exception cref="InputException">They cannot be read.</exception>
    /// <exception cref="OperationCanceledException">The page is no longer served.</exception>
    public T AskWhole<T>(Func<OpenBooks, T> ask) => Using(() => ask(Opened()));

    /// <summary>Writes into the books; makes them where there are none.</summary>
    /// <exception cref="InputException">The entry cannot stand, or the books cannot be written.</exception>
    /// <exception cref="OperationCanceledException">The page is no longer served.</exception>
    public async Task<T> WriteAsync<T>(Func<OpenBooks, T> write)
    {
        try
        {
            return await Task.Run(() => AskWhole(write));
        }
        finally
        {
            Forget();
        }
    }

    /// <summary>Remembers what was just written, so that it can be undone for a minute.</summary>
    public void Remember(string list, IReadOnlyList<int> entries, string what)
    {
        Last = new Booking(list, entries, what, DateTime.UtcNow);
        _ = Task.Delay(Booking.Lasts).ContinueWith(_ => Changed?.Invoke(), TaskScheduler.Default);
    }

    /// <summary>Strikes what was written last.</summary>
    /// <returns>What it was; null where it is too late, or it was undone already.</returns>
    /// <exception cref="InputException">Something was written since that hangs on it.</exception>
    public async Task<string?> UndoAsync(DateOnly on, string by)
    {
        Booking? last;
        lock (_gate)
            (last, Last) = (Last, null);
        if (last is not { CanBeUndone: true })
            return null;
        try
        {
            await WriteAsync(book => last.Entries.Reverse()
                .Select(e => Correcting.Of(book, Shipped.Markets, last.List, e, new Dictionary<string, string>(), "Undone at once", on,
                    by)).ToArray());
            return last.What;
        }
        catch (InputException)
        {
            Last = last;
            throw;
        }
    }

    /// <summary>Waits for what is under way, so that nobody looks into the books when the page is said to be stopped, and their
    /// folder may be moved.</summary>
    public void Dispose()
    {
        if (Interlocked.Exchange(ref _isOver, true))
            return;
        _users.Signal();
        _users.Wait(TimeSpan.FromSeconds(30));
        _watcher.Dispose();
        _server?.Dispose();
    }

    private T Using<T>(Func<T> work)
    {
        if (Volatile.Read(ref _isOver) || !_users.TryAddCount())
            throw new OperationCanceledException();
        try
        {
            return work();
        }
        finally
        {
            _users.Signal();
        }
    }

    // What others write into books on a server is told by the server; it is listened to once the
    // books were opened, not before it was agreed to.
    private OpenBooks Opened()
    {
        var book = OpenBooks.Open(_documents.Folder);
        lock (_gate)
        {
            if (book.Place.Server != _server?.Server)
            {
                _server?.Dispose();
                _server = book.Place.Server is null ? null : new ServerWatch(book.Place, _look.Start);
            }
        }
        return book;
    }

    private void Forget()
    {
        Interlocked.Increment(ref _version);
        Changed?.Invoke();
    }
}
