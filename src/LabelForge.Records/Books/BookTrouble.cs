using LabelForge.Measures;
using Microsoft.Data.Sqlite;

namespace LabelForge.Records.Books;

/// <summary>What went wrong with the file of the books, in words, and what to do.</summary>
internal static class BookTrouble
{
    // Result codes of SQLite: sqlite.org/rescode.html.
    public static InputException Of(SqliteException e, string path) => new(e.SqliteErrorCode switch
    {
        5 or 6 => new Problem(path, 0, "Another program is writing to the books and does not finish.", "Close it and do this again; nothing was written."),
        8 or 14 => new Problem(path, 0, "The books cannot be written: the file or its folder is read-only, or not there.", "Choose a workshop folder that you may write to, or change its permissions; nothing was written."),
        10 => new Problem(path, 0, $"The disk did not take or give the data ({e.Message}).", "Check the disk, then do this again; what was acknowledged before stands."),
        11 or 26 => new Problem(path, 0, "The books are damaged and cannot be read.", "Keep the file as it is, and put the last backup in its place: labelforge restore BACKUP"),
        13 => new Problem(path, 0, "The disk is full.", "Make room, then do this again; nothing was written, and what was acknowledged before stands."),
        _ => new Problem(path, 0, $"The books refused this: {e.Message}", "Nothing was written. Add a correction where an entry is wrong."),
    });
}
