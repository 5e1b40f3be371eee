using System.Data.Common;
using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;

namespace LabelForge.Records.Books;

/// <summary>The books of a workshop, opened, read and written to: records.db in its folder, or a server that it names.</summary>
/// <remarks>
/// Each write is one transaction that takes the write lock before it reads, so two programs at once cannot both sell the last
/// bar. What was acknowledged is on the disk: SQLite's write-ahead log with full synchronising, or the server's own.
/// </remarks>
public sealed class OpenBooks
{
    /// <summary>The file's name in the workshop's folder.</summary>
    public const string FileName = "records.db";

    private readonly BooksDatabase _store;

    private readonly string? _once;

    private OpenBooks(BookPlace place, int patience) => (Place, _store) = (place, BooksDatabase.Of(place, patience));

    private OpenBooks(OpenBooks book, string once) =>
        (Place, _store, IsReadOnly, _once) = (book.Place, book._store, book.IsReadOnly, once);

    private OpenBooks(BookPlace place, BooksDatabase copy) => (Place, _store, IsReadOnly) = (place, copy, true);

    /// <summary>Whether the books lie where they may only be read.</summary>
    public bool IsReadOnly { get; }

    /// <summary>Where they are kept.</summary>
    public BookPlace Place { get; }

    /// <summary>The file, or how messages name the server.</summary>
    public string Path => Place.Shown;

    /// <summary>Whether a workshop has books yet; a server always counts as having them.</summary>
    public static bool Exists(string workshopFolder) =>
        BookPlace.Of(workshopFolder) is var place && (place.File is not { } file || File.Exists(file));

    /// <summary>Opens a workshop's books; makes them where there are none, and brings an older version's up to date.</summary>
    /// <exception cref="InputException">They are damaged, from a newer version, or cannot be reached or written.</exception>
    public static OpenBooks Open(string workshopFolder)
    {
        if (!WholeProgram.IsThis)
            throw new NeedsWholeProgramException();
        var place = BookPlace.Of(workshopFolder);
        KnownServers.RefuseUnknown(place);
        return Open(place);
    }

    /// <summary>Opens the books of a place.</summary>
    /// <param name="patience">How long a writer waits for another, in seconds.</param>
    public static OpenBooks Open(BookPlace place, int patience = BooksDatabase.Patience)
    {
        var book = new OpenBooks(place, patience);
        return book.Guarded(() =>
        {
            try
            {
                return book.Made();
            }
            catch (SqliteException e) when (e.SqliteErrorCode is SQLitePCL.raw.SQLITE_READONLY or SQLitePCL.raw.SQLITE_CANTOPEN
                && place.File is { } file && File.Exists(file))
            {
                return new OpenBooks(place, BooksDatabase.Of(BookPlace.InFile(Copied(file, e)), patience)).Made();
            }
        });
    }

    /// <summary>The same books for one form: what is written through them is written once for its key, however often it is sent.</summary>
    /// <param name="key">The form's own key, not empty, at most <see cref="OnceKey.MostCharacters"/> characters.</param>
    public OpenBooks Once(string key) => key.Length is > 0 and <= OnceKey.MostCharacters
        ? new OpenBooks(this, key)
        : throw new ArgumentOutOfRangeException(nameof(key), key.Length, "The key of a form is empty or too long.");

    // Ready for use; a new or an older version's file is brought up to date.
    private OpenBooks Made()
    {
        using var context = _store.Open();
        _store.Ready(context);
        _store.BringUpToDate(context, Path);
        return this;
    }

    private static string Copied(string file, SqliteException why)
    {
        try
        {
            return ReadOnlyCopy.Of(file);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw why;
        }
    }

    /// <summary>Reads all entries in one transaction. It grows with the shop: one use
    /// asks for what it needs, by <see cref="Ask"/>.</summary>
    public BooksSnapshot ReadWhole() => Reading((_, context) => BooksSnapshot.Load(context));

    /// <summary>Asks the books, all questions in one transaction.</summary>
    /// <param name="ask">Given the books, asks them and gives an answer that no longer needs them.</param>
    public T Ask<T>(Func<IBooks, T> ask) => Reading((books, _) => ask(books));

    /// <summary>Reads everything and holds every balance against the entries.</summary>
    /// <exception cref="InputException">The books are damaged, or cannot be reached.</exception>
    public BooksCheck Check() => Reading((_, context) => BooksCheck.Of(_store, context));

    /// <summary>Asks the books in the store's own words, in one transaction.</summary>
    internal T Reading<T>(Func<BookQueries, RecordsContext, T> read)
    {
        if (!WholeProgram.IsThis)
            throw new NeedsWholeProgramException();
        return Guarded(() =>
        {
            using var context = _store.Open();
            using var transaction = _store.BeginReading(context);
            return read(new BookQueries(context), context);
        });
    }

    /// <summary>Adds entries, all or none; the rules are checked against the books as they stand at that moment.</summary>
    /// <param name="write">Given the books and the tables, adds entries and gives an answer.</param>
    public T Write<T>(Func<IBooks, RecordsContext, T> write)
    {
        if (!WholeProgram.IsThis)
            throw new NeedsWholeProgramException();
        return Writing(context =>
        {
            var books = new BookQueries(context);
            var answer = write(books, context);
            context.SaveChanges();
            // The lock is held, so the books are what they were and what was added.
            new Posting(context, books).Post([.. context.ChangeTracker.Entries<BookEntry>().Select(e => e.Entity)]);
            return answer;
        });
    }

    /// <summary>Adds entries of other books, under the numbers that they had; everything is read, checked and reckoned anew.</summary>
    internal T Take<T>(Func<BooksSnapshot, RecordsContext, T> write) => Writing(context =>
    {
        var before = BooksSnapshot.Load(context);
        var answer = write(before, context);
        context.SaveChanges();
        _store.NumbersWereGiven(context);
        var after = before.With([.. context.ChangeTracker.Entries<BookEntry>().Select(e => e.Entity)]);
        BooksInvariants.Check(after);
        Rebuild.Stock(context, after);
        return answer;
    });

    private T Writing<T>(Func<RecordsContext, T> write) => Guarded(() =>
    {
        if (IsReadOnly)
            throw new SqliteException("read-only", SQLitePCL.raw.SQLITE_READONLY);
        using var context = _store.Open();
        using var transaction = _store.BeginWriting(context);
        if (_once is { } key)
        {
            if (context.OnceKeys.Any(k => k.Key == key))
                throw new InputException("books.form-written-before");
            context.OnceKeys.Add(new OnceKey { Key = key });
        }
        var answer = write(context);
        transaction.Commit();
        return answer;
    });

    /// <summary>Runs something on the open file; used by backup.</summary>
    internal T WithFile<T>(Func<SqliteConnection, T> use) => Guarded(() =>
    {
        using var context = _store.Open();
        return use((SqliteConnection)context.Database.GetDbConnection());
    });

    private T Guarded<T>(Func<T> action)
    {
        try
        {
            return action();
        }
        catch (DbUpdateException e) when (e.InnerException is DbException inner)
        {
            throw BookTrouble.Of(inner, Path);
        }
        catch (InvalidOperationException e) when (e.InnerException is DbException inner)
        {
            throw BookTrouble.Of(inner, Path);
        }
        catch (DbException e)
        {
            throw BookTrouble.Of(e, Path);
        }
    }
}
