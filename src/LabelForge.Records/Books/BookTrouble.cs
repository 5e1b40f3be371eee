using System.Data.Common;
using Microsoft.Data.Sqlite;
using Npgsql;

namespace LabelForge.Records.Books;

/// <summary>What went wrong with the place of the books, in words, and what to do.</summary>
internal static class BookTrouble
{
    public static InputException Of(DbException e, string shown) => new(e switch
    {
        SqliteException file => OfFile(file, shown),
        PostgresException server => OfServer(server, shown),
        _ => Silent(e.InnerException?.Message ?? e.Message, shown),
    });

    // Result codes of SQLite: sqlite.org/rescode.html.
    private static Problem OfFile(SqliteException e, string path) => e.SqliteErrorCode switch
    {
        5 or 6 => new Problem(path, 0, "books.busy"),
        8 or 14 => new Problem(path, 0, "books.read-only"),
        10 => new Problem(path, 0, "books.disk-error", ("message", e.Message)),
        11 or 26 => new Problem(path, 0, "books.damaged"),
        13 => new Problem(path, 0, "books.disk-full"),
        _ => new Problem(path, 0, "books.refused", ("message", e.Message)),
    };

    private static Problem Silent(string why, string shown) => new(shown, 0, "server.silent", ("why", why));

    // Error codes of PostgreSQL: its manual, appendix A.
    private static Problem OfServer(PostgresException e, string shown) => e.SqlState switch
    {
        PostgresErrorCodes.LockNotAvailable or PostgresErrorCodes.DeadlockDetected => new Problem(shown, 0, "books.busy"),
        PostgresErrorCodes.AdminShutdown or PostgresErrorCodes.CrashShutdown or PostgresErrorCodes.CannotConnectNow =>
            Silent(e.MessageText, shown),
        PostgresErrorCodes.TooManyConnections => new Problem(shown, 0, "server.no-room"),
        PostgresErrorCodes.DiskFull => new Problem(shown, 0, "server.disk-full"),
        PostgresErrorCodes.InvalidPassword or PostgresErrorCodes.InvalidAuthorizationSpecification =>
            new Problem(shown, 0, "server.user-refused"),
        PostgresErrorCodes.InvalidCatalogName => new Problem(shown, 0, "server.no-database"),
        PostgresErrorCodes.InsufficientPrivilege or PostgresErrorCodes.ReadOnlySqlTransaction =>
            new Problem(shown, 0, "books.not-written", ("message-text", e.MessageText)),
        _ => new Problem(shown, 0, "books.refused-by-server", ("message-text", e.MessageText)),
    };
}
