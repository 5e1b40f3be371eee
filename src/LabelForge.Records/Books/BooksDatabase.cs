using System.Data;
using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Infrastructure;
using Microsoft.EntityFrameworkCore.Migrations;
using Microsoft.EntityFrameworkCore.Storage;

namespace LabelForge.Records.Books;

/// <summary>What differs between the places that books are kept in: how they are opened, and how one writer at a time is let in.</summary>
internal abstract class BooksDatabase
{
    /// <summary>How long a writer waits for another, in seconds.</summary>
    public const int Patience = 20;

    // How the migrations end, of each store, that brought the tables of what is left.
    private const string FirstBalances = "Balances";

    // And the one that brought how suppliers' lots are looked for.
    private const string SupplierLots = "SupplierLots";

    /// <summary>The store of a place.</summary>
    public static BooksDatabase Of(BookPlace place, int patience = Patience)
    {
        if (!WholeProgram.IsThis)
            throw new NeedsWholeProgramException();
        return place.Server is { } server ? new BooksServer(server, patience) : new BooksFile(place.File!, patience);
    }

    /// <summary>A context on the store.</summary>
    public abstract RecordsContext Open();

    /// <summary>Makes the store ready for its first use.</summary>
    public abstract void Ready(RecordsContext context);

    /// <summary>Begins a transaction in which nobody else writes.</summary>
    public IDbContextTransaction BeginWriting(RecordsContext context)
    {
        var transaction = Lock(context);
        using var command = context.Database.GetDbConnection().CreateCommand();
        command.Transaction = transaction.GetDbTransaction();
        command.CommandText = Clock;
        context.Now = DateTime.UnixEpoch.AddSeconds(Convert.ToInt64(command.ExecuteScalar(), CultureInfo.InvariantCulture));
        return transaction;
    }

    /// <summary>Begins a transaction, and waits until nobody else writes.</summary>
    protected abstract IDbContextTransaction Lock(RecordsContext context);

    /// <summary>A query for the store's own clock: whole seconds since the beginning of 1970, UTC.</summary>
    protected abstract string Clock { get; }

    /// <summary>Begins a transaction in which the books stand still for the reader.</summary>
    public abstract IDbContextTransaction BeginReading(RecordsContext context);

    /// <summary>Makes what a new or older version's books lack, in one transaction: killed in the middle, it never began.</summary>
    /// <remarks>Not by the framework's own routine, which leaves a lock behind when it is killed.</remarks>
    public void BringUpToDate(RecordsContext context, string shown)
    {
        var known = context.Database.GetMigrations().ToArray();
        var before = Applied(context);
        if (Newer(before, known) is { } newer)
            throw new InputException(shown, 0, "books.newer-version", ("newer", newer));
        if (before.Length == known.Length)
            return;
        using var transaction = BeginWriting(context);
        // Another program may have done it while this one waited.
        var applied = Applied(context);
        if (applied.Length < known.Length)
        {
            PrepareToMigrate(context);
            var script = context.GetService<IMigrator>()
                .GenerateScript(applied.LastOrDefault() ?? "0", known[^1], MigrationsSqlGenerationOptions.NoTransactions);
            Run(context, script);
            // What is left is reckoned from the entries by the same rules that books verify goes by.
            bool Had(string migration) => applied.Any(m => m.EndsWith(migration, StringComparison.Ordinal));
            if (applied.Length > 0 && !Had(FirstBalances))
                Rebuild.Stock(context);
            else if (applied.Length > 0 && !Had(SupplierLots))
                Rebuild.SupplierLots(context);
        }
        transaction.Commit();
    }

    /// <summary>Reads the whole store and looks whether it is sound.</summary>
    /// <exception cref="System.Data.Common.DbException">It is not.</exception>
    public virtual void CheckPages(RecordsContext context)
    {
    }

    /// <summary>Tells the store that entries were added under numbers of their own.</summary>
    public virtual void NumbersWereGiven(RecordsContext context)
    {
    }

    /// <summary>Makes known what the migrations' statements call.</summary>
    protected virtual void PrepareToMigrate(RecordsContext context)
    {
    }

    /// <summary>A query that says whether the table of migrations is there: 1 or 0.</summary>
    protected abstract string HasHistory { get; }

    // Not by the framework's own question, which lets a server's transaction fail where the table is not there.
    private string[] Applied(RecordsContext context)
    {
        using var command = context.Database.GetDbConnection().CreateCommand();
        command.Transaction = context.Database.CurrentTransaction?.GetDbTransaction();
        command.CommandText = HasHistory;
        if (Convert.ToInt64(command.ExecuteScalar(), CultureInfo.InvariantCulture) == 0)
            return [];
        command.CommandText = "SELECT \"MigrationId\" FROM \"__EFMigrationsHistory\" ORDER BY \"MigrationId\"";
        using var reader = command.ExecuteReader();
        var applied = new List<string>();
        while (reader.Read())
            applied.Add(reader.GetString(0));
        return [.. applied];
    }

    protected static void Run(RecordsContext context, string sql)
    {
        using var command = context.Database.GetDbConnection().CreateCommand();
        command.Transaction = context.Database.CurrentTransaction?.GetDbTransaction();
        command.CommandText = sql;
        command.ExecuteNonQuery();
    }

    private static string? Newer(string[] applied, string[] known) => applied.FirstOrDefault(m => !known.Contains(m));
}

/// <summary>Books in a file: SQLite, write-ahead log, every commit on the disk before it is acknowledged.</summary>
internal sealed class BooksFile : BooksDatabase
{
    private readonly DbContextOptions<RecordsContext> _options;

    public BooksFile(string path, int patience)
    {
        var connection = new SqliteConnectionStringBuilder
        {
            DataSource = path,
            ForeignKeys = true,
            Pooling = false,
            DefaultTimeout = patience,
        };
        _options = new DbContextOptionsBuilder<RecordsContext>().UseSqlite(connection.ToString()).Options;
    }

    protected override string Clock => "SELECT CAST(strftime('%s', 'now') AS INTEGER)";

    protected override string HasHistory => "SELECT COUNT(*) FROM sqlite_master WHERE name = '__EFMigrationsHistory'";

    public override RecordsContext Open()
    {
        var context = new RecordsContext(_options);
        context.Database.OpenConnection();
        Run(context, "PRAGMA synchronous=FULL;");
        return context;
    }

    public override void Ready(RecordsContext context) => Run(context, "PRAGMA journal_mode=WAL;");

    protected override void PrepareToMigrate(RecordsContext context)
    {
        var connection = (SqliteConnection)context.Database.GetDbConnection();
        connection.CreateFunction<string?, long, string, long?>(WholeAmounts.Whole, static (written, factor, way) => written is null ? null
            : decimal.Parse(written, NumberStyles.AllowDecimalPoint | NumberStyles.AllowLeadingSign,
                CultureInfo.InvariantCulture) * factor is var amount
                ? (long)(way switch
                {
                    "ceil" => Math.Ceiling(amount),
                    "floor" => Math.Floor(amount),
                    _ => Math.Round(amount, MidpointRounding.AwayFromZero),
                }) : null, isDeterministic: true);
        connection.CreateFunction<string, string>(WholeAmounts.Digest, FrozenText.DigestOf, isDeterministic: true);
    }

    public override void CheckPages(RecordsContext context)
    {
        using var command = context.Database.GetDbConnection().CreateCommand();
        command.Transaction = context.Database.CurrentTransaction?.GetDbTransaction();
        command.CommandText = "PRAGMA quick_check(1)";
        if (!Equals(command.ExecuteScalar(), "ok"))
            throw new SqliteException("quick_check", SQLitePCL.raw.SQLITE_CORRUPT);
    }

    // Takes the write lock at once, so that two programs cannot both sell the last bar.
    protected override IDbContextTransaction Lock(RecordsContext context) =>
        context.Database.BeginTransaction(IsolationLevel.Serializable);

    public override IDbContextTransaction BeginReading(RecordsContext context)
    {
        // A deferred transaction sees one state of the log and keeps nobody waiting.
        var connection = (SqliteConnection)context.Database.GetDbConnection();
        return context.Database.UseTransaction(connection.BeginTransaction(deferred: true))!;
    }
}

/// <summary>Books on a PostgreSQL server: one writer at a time by an advisory lock, which dies with its connection.</summary>
internal sealed class BooksServer : BooksDatabase
{
    // Any number will do that no other program on the database uses: the letters L F B K.
    private const int LockNumber = 0x4C46424B;

    private readonly DbContextOptions<ServerRecordsContext> _options;
    private readonly int _patience;

    public BooksServer(string connection, int patience)
    {
        _patience = patience;
        _options = new DbContextOptionsBuilder<ServerRecordsContext>().UseNpgsql(connection).Options;
    }

    protected override string Clock => "SELECT CAST(extract(epoch FROM now()) AS bigint)";

    protected override string HasHistory => "SELECT CASE WHEN to_regclass('\"__EFMigrationsHistory\"') IS NULL THEN 0 ELSE 1 END";

    public override RecordsContext Open()
    {
        var context = new ServerRecordsContext(_options);
        context.Database.OpenConnection();
        return context;
    }

    public override void Ready(RecordsContext context)
    {
    }

    protected override IDbContextTransaction Lock(RecordsContext context)
    {
        // Each statement after the lock sees all that others committed before it.
        var transaction = context.Database.BeginTransaction(IsolationLevel.ReadCommitted);
        Run(context,
            Invariant($"SET LOCAL lock_timeout = '{_patience}s'; SET LOCAL synchronous_commit = on; SELECT pg_advisory_xact_lock({LockNumber}); {ServerWatch.Tell}"));
        return transaction;
    }

    public override IDbContextTransaction BeginReading(RecordsContext context) =>
        context.Database.BeginTransaction(IsolationLevel.RepeatableRead);

    // The server counts numbers by itself and does not look at those that were given.
    public override void NumbersWereGiven(RecordsContext context)
    {
        foreach (var table in RecordsContext.Tables)
            Run(context,
                $"SELECT setval(pg_get_serial_sequence('\"{table}\"', 'Id'), (SELECT COALESCE(MAX(\"Id\"), "
                    + $"0) + 1 FROM \"{table}\"), false);");
    }
}
