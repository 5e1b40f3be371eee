using System.Data.Common;
using LabelForge.Measures;
using Microsoft.Data.Sqlite;
using Npgsql;

namespace LabelForge.Records.Books;

/// <summary>What went wrong with the place of the books, in words, and what to do.</summary>
internal static class BookTrouble
{
    private const string Nothing = "Nothing was written. Add a correction where an entry is wrong.";

    public static InputException Of(DbException e, string shown) => new(e switch
    {
        SqliteException file => OfFile(file, shown),
        PostgresException server => OfServer(server, shown),
        _ => Silent(e.InnerException?.Message ?? e.Message, shown),
    });

    // Result codes of SQLite: sqlite.org/rescode.html.
    private static Problem OfFile(SqliteException e, string path) => e.SqliteErrorCode switch
    {
        5 or 6 => new Problem(path, 0, "Another program is writing to the books and does not finish.", "Close it and do this again; nothing was written."),
        8 or 14 => new Problem(path, 0, "The books cannot be written: the file or its folder is read-only, or not there.", "Choose a workshop folder that you may write to, or change its permissions; nothing was written."),
        10 => new Problem(path, 0, $"The disk did not take or give the data ({e.Message}).", "Check the disk and the room on it, then do this again; what was acknowledged before stands."),
        11 or 26 => new Problem(path, 0, "The books are damaged and cannot be read.", "Keep the file as it is, and put the last backup in its place: labelforge restore BACKUP") { Code = "books.damaged" },
        13 => new Problem(path, 0, "The disk is full.", "Make room, then do this again; nothing was written, and what was acknowledged before stands."),
        _ => new Problem(path, 0, $"The books refused this: {e.Message}", Nothing),
    };

    private static Problem Silent(string why, string shown) => new(shown, 0, $"The server that keeps the books does not answer ({why}).",
        "Start it, check the network and records: in workshop.yaml. If it broke off in the middle, look whether the last entry stands before you write it again: labelforge books LIST")
    { Code = "server.silent" };

    // Error codes of PostgreSQL: its manual, appendix A.
    private static Problem OfServer(PostgresException e, string shown) => e.SqlState switch
    {
        PostgresErrorCodes.LockNotAvailable or PostgresErrorCodes.DeadlockDetected => new Problem(shown, 0, "Another program is writing to the books and does not finish.", "Close it and do this again; nothing was written."),
        PostgresErrorCodes.AdminShutdown or PostgresErrorCodes.CrashShutdown or PostgresErrorCodes.CannotConnectNow => Silent(e.MessageText, shown),
        PostgresErrorCodes.TooManyConnections => new Problem(shown, 0, "The server has no room for another connection.", "Wait a moment and do this again, or raise max_connections on it; nothing was written."),
        PostgresErrorCodes.DiskFull => new Problem(shown, 0, "The server's disk is full.", "Make room on it, then do this again; nothing was written, and what was acknowledged before stands."),
        PostgresErrorCodes.InvalidPassword or PostgresErrorCodes.InvalidAuthorizationSpecification => new Problem(shown, 0, "The server does not let this user in.", "Check Username in records: of workshop.yaml, and the password in PGPASSWORD or .pgpass."),
        PostgresErrorCodes.InvalidCatalogName => new Problem(shown, 0, "The server has no such database.", "Make it (createdb), or correct Database in records: of workshop.yaml."),
        PostgresErrorCodes.InsufficientPrivilege or PostgresErrorCodes.ReadOnlySqlTransaction => new Problem(shown, 0, $"The books cannot be written: {e.MessageText}.", "Let the server's keeper grant this user the right to make and add to tables; nothing was written."),
        _ => new Problem(shown, 0, $"The books refused this: {e.MessageText}", Nothing),
    };
}
