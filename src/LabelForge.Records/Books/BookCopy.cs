using LabelForge.Measures;
using Microsoft.Data.Sqlite;

namespace LabelForge.Records.Books;

/// <summary>Copies of the books: made while they are in use by SQLite's own online backup, and checked before they count.</summary>
public static class BookCopy
{
    /// <summary>Copies the books into a file.</summary>
    /// <returns>How many entries the copy holds.</returns>
    /// <exception cref="InputException">The copy cannot be written, or does not pass its check.</exception>
    public static long Backup(string workshopFolder, string target)
    {
        if (!RecordBook.Exists(workshopFolder))
            throw new InputException(new Problem(null, 0, $"There are no books in {workshopFolder}.", "Name the workshop's folder with --workshop."));
        var book = RecordBook.Open(workshopFolder);
        var full = Path.GetFullPath(target);
        if (string.Equals(full, Path.GetFullPath(book.Path), StringComparison.Ordinal))
            throw new InputException(new Problem(target, 0, "The copy would be the books themselves.", "Name another file, best on another disk."));
        return Whole(full, part => book.WithConnection(source =>
        {
            using var copy = Open(part, SqliteOpenMode.ReadWriteCreate);
            source.BackupDatabase(copy);
            return 0;
        }));
    }

    /// <summary>Puts a copy in the place of the books; the books that were there are kept beside it.</summary>
    /// <returns>How many entries the restored books hold, and where the old ones lie.</returns>
    /// <exception cref="InputException">The copy is damaged or no copy of books.</exception>
    public static (long Entries, string? Kept) Restore(string workshopFolder, string source)
    {
        if (!File.Exists(source))
            throw new InputException(new Problem(source, 0, "There is no such file.", "Name a copy made by labelforge backup."));
        Check(source);
        var target = Path.Combine(workshopFolder, RecordBook.FileName);
        var fresh = target + ".restoring";
        var entries = Whole(fresh, part => { File.Copy(source, part); return 0; });
        string? kept = null;
        if (File.Exists(target))
        {
            kept = Enumerable.Range(1, 10_000).Select(i => $"{target}.before-restore-{i}").First(p => !File.Exists(p));
            // The log belongs to the file it was written for.
            foreach (var ending in new[] { "-wal", "-shm" })
                if (File.Exists(target + ending))
                    File.Move(target + ending, kept + ending, overwrite: true);
            File.Move(target, kept);
        }
        File.Move(fresh, target);
        RecordBook.Open(workshopFolder).Read();
        return (entries, kept);
    }

    private static long Whole(string target, Func<string, int> write)
    {
        var part = $"{target}.{Guid.NewGuid():N}.part";
        try
        {
            write(part);
            var entries = Check(part);
            File.Move(part, target, overwrite: true);
            return entries;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw new InputException(new Problem(target, 0, "The copy cannot be written.", $"Check that its folder is there and that you may write in it ({e.Message})"));
        }
        catch (SqliteException e)
        {
            throw new InputException(new Problem(target, 0, $"The copy cannot be written ({e.Message}).", "Check that its folder is there, that you may write in it, and that the disk has room."));
        }
        finally
        {
            File.Delete(part);
        }
    }

    // Reads every page, and counts what is in the lists.
    private static long Check(string path)
    {
        try
        {
            using var copy = Open(path, SqliteOpenMode.ReadOnly);
            if (!Equals(Ask(copy, "PRAGMA integrity_check"), "ok"))
                throw Damaged(path);
            return (long)Ask(copy, "SELECT (SELECT COUNT(*) FROM Receipts) + (SELECT COUNT(*) FROM Batches) + (SELECT COUNT(*) FROM Weighings) + (SELECT COUNT(*) FROM Deviations) + (SELECT COUNT(*) FROM Closings) + (SELECT COUNT(*) FROM Sales) + (SELECT COUNT(*) FROM Complaints) + (SELECT COUNT(*) FROM Disposals) + (SELECT COUNT(*) FROM Corrections)")!;
        }
        catch (SqliteException)
        {
            throw Damaged(path);
        }
    }

    private static InputException Damaged(string path) => new(new Problem(path, 0, "This is not a sound copy of the books.", "Use an older copy; this file and the books were left as they are."));

    private static object? Ask(SqliteConnection connection, string sql)
    {
        using var command = connection.CreateCommand();
        command.CommandText = sql;
        return command.ExecuteScalar();
    }

    private static SqliteConnection Open(string path, SqliteOpenMode mode)
    {
        var connection = new SqliteConnection(new SqliteConnectionStringBuilder { DataSource = path, Mode = mode, Pooling = false }.ToString());
        connection.Open();
        return connection;
    }
}
