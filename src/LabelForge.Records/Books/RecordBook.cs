using LabelForge.Measures;
using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;

namespace LabelForge.Records.Books;

/// <summary>The books of a workshop: records.db, opened, read and written to.</summary>
/// <remarks>
/// Each write is one transaction that takes the write lock before it reads, so two programs at once cannot both sell the last
/// bar. SQLite's write-ahead log with full synchronising: what was acknowledged is on the disk.
/// </remarks>
public sealed class RecordBook
{
    /// <summary>The file's name in the workshop's folder.</summary>
    public const string FileName = "records.db";

    private readonly DbContextOptions<RecordsContext> _options;

    private RecordBook(string path)
    {
        Path = path;
        var connection = new SqliteConnectionStringBuilder { DataSource = path, ForeignKeys = true, Pooling = false, DefaultTimeout = 20 };
        _options = new DbContextOptionsBuilder<RecordsContext>().UseSqlite(connection.ToString()).Options;
    }

    /// <summary>The file.</summary>
    public string Path { get; }

    /// <summary>Whether a workshop has books yet.</summary>
    public static bool Exists(string workshopFolder) => File.Exists(System.IO.Path.Combine(workshopFolder, FileName));

    /// <summary>Opens a workshop's books; makes them where there are none, and brings an older version's up to date.</summary>
    /// <exception cref="InputException">The file is damaged, from a newer version, or cannot be written.</exception>
    public static RecordBook Open(string workshopFolder)
    {
        var book = new RecordBook(System.IO.Path.Combine(workshopFolder, FileName));
        return book.Guarded(() =>
        {
            using var context = new RecordsContext(book._options);
            var known = context.Database.GetMigrations().ToArray();
            if (File.Exists(book.Path) && context.Database.GetAppliedMigrations().FirstOrDefault(m => !known.Contains(m)) is { } newer)
                throw new InputException(new Problem(book.Path, 0, $"These books were written by a newer version of labelforge ({newer}).", "Use that version, or restore a backup made by this one."));
            if (!File.Exists(book.Path) || context.Database.GetPendingMigrations().Any())
                context.Database.Migrate();
            context.Database.ExecuteSqlRaw("PRAGMA journal_mode=WAL;");
            return book;
        });
    }

    /// <summary>Reads the books as they stand: one moment, corrections applied.</summary>
    public Ledger Read() => Guarded(() =>
    {
        using var context = new RecordsContext(_options);
        using var moment = context.Database.BeginTransaction(System.Data.IsolationLevel.Serializable);
        return Ledger.Load(context);
    });

    /// <summary>Adds entries, all or none; the rules are checked against the books as they stand at that moment.</summary>
    /// <param name="write">Given the books and the tables, adds entries and gives an answer.</param>
    public T Write<T>(Func<Ledger, RecordsContext, T> write) => Guarded(() =>
    {
        using var context = new RecordsContext(_options);
        using var moment = context.Database.BeginTransaction(System.Data.IsolationLevel.Serializable);
        var before = Ledger.Load(context);
        var answer = write(before, context);
        context.SaveChanges();
        // The lock is held, so the books are what they were and what was added.
        Balance.Check(before.With([.. context.ChangeTracker.Entries<BookEntry>().Select(e => e.Entity)]));
        moment.Commit();
        return answer;
    });

    /// <summary>Runs something on the open file; used by backup.</summary>
    internal T WithConnection<T>(Func<SqliteConnection, T> use) => Guarded(() =>
    {
        using var context = new RecordsContext(_options);
        context.Database.OpenConnection();
        return use((SqliteConnection)context.Database.GetDbConnection());
    });

    private T Guarded<T>(Func<T> action)
    {
        try
        {
            return action();
        }
        catch (DbUpdateException e) when (e.InnerException is SqliteException inner)
        {
            throw BookTrouble.Of(inner, Path);
        }
        catch (SqliteException e)
        {
            throw BookTrouble.Of(e, Path);
        }
    }
}
