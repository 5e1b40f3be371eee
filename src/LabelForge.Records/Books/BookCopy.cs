using LabelForge.Files;
using Microsoft.Data.Sqlite;

namespace LabelForge.Records.Books;

/// <summary>Copies of the books, always files: made while they are in use, and checked before they count.</summary>
/// <remarks>Of a file by SQLite's own online backup; of a server, entry by entry in one transaction.</remarks>
public static class BookCopy
{
    /// <summary>Copies the books into a file.</summary>
    /// <param name="workshopFolder">The workshop whose books they are.</param>
    /// <param name="target">The file to write; an older copy there is written over.</param>
    /// <param name="force">Write over a file that is no copy of books; never over a workshop's own.</param>
    /// <returns>How many entries the copy holds.</returns>
    /// <exception cref="InputException">The copy cannot be written, or does not pass its check.</exception>
    public static long Backup(string workshopFolder, string target, bool force = false)
    {
        if (!WholeProgram.IsThis)
            throw new NeedsWholeProgramException();
        if (!OpenBooks.Exists(workshopFolder))
            throw new InputException("backup.no-books", ("workshop-folder", workshopFolder));
        OutputPath.RefuseUnlessFree(target, [FileKind.Books], force);
        var book = OpenBooks.Open(workshopFolder);
        var full = Path.GetFullPath(target);
        if (book.Place.File is not { } file)
            return Whole(full, part => { Fill(OpenBooks.Open(BookPlace.InFile(part)), book.ReadWhole()); Settle(part); return 0; });
        return Whole(full, part => book.WithFile(source =>
        {
            using var copy = Open(part, SqliteOpenMode.ReadWriteCreate);
            source.BackupDatabase(copy);
            copy.Close();
            Settle(part);
            return 0;
        }));
    }

    /// <summary>Puts a copy in the place of the books; the books that were there are kept beside it.</summary>
    /// <returns>How many entries the restored books hold, and where the old ones lie.</returns>
    /// <exception cref="InputException">The copy is damaged or no copy of books.</exception>
    public static (long Entries, string? Kept) Restore(string workshopFolder, string source)
    {
        if (!WholeProgram.IsThis)
            throw new NeedsWholeProgramException();
        if (!File.Exists(source))
            throw new InputException(source, 0, "backup.no-such-file");
        Check(source);
        var place = BookPlace.Of(workshopFolder);
        KnownServers.RefuseUnknown(place);
        if (place.File is not { } target)
            return (Fill(OpenBooks.Open(place), OpenBooks.Open(BookPlace.InFile(source)).ReadWhole()), null);
        var fresh = target + ".restoring";
        var entries = Whole(fresh, part =>
        {
            // Not a plain copy: the log beside the source, where there is one, belongs to it.
            using var from = Open(source, SqliteOpenMode.ReadOnly);
            using var copy = Open(part, SqliteOpenMode.ReadWriteCreate);
            from.BackupDatabase(copy);
            copy.Close();
            Settle(part);
            return 0;
        });
        string? kept = null;
        if (File.Exists(target))
        {
            kept = Enumerable.Range(1, 10_000).Select(i => $"{target}.before-restore-{i}").First(p => !File.Exists(p));
            // Sound books take their log in first, so that the file alone is whole, whatever happens next. The log of damaged
            // ones belongs to the file it was written for.
            if (!TrySettle(target))
            {
                foreach (var ending in new[] { "-wal", "-shm" })
                    if (File.Exists(target + ending))
                        File.Move(target + ending, kept + ending, overwrite: true);
            }
            File.Copy(target, kept);
        }
        File.Move(fresh, target, overwrite: true);
        OpenBooks.Open(workshopFolder).ReadWhole();
        return (entries, kept);
    }

    // Puts all entries into books that have none.
    private static long Fill(OpenBooks into, BooksSnapshot from) => into.Take((snapshot, context) =>
    {
        if (BookLists.All.Any(l => Correcting.All(snapshot, l).Count > 0) || snapshot.Corrections.Count > 0)
            throw new InputException(into.Path, 0, "backup.books-hold-entries");
        BookEntry[] all = [.. BookLists.All.SelectMany(l => Correcting.All(from, l)), .. from.Corrections];
        context.AddRange(all);
        return (long)all.Length;
    });

    // One file without a log beside it: needs the books to itself for a moment.
    private static void Settle(string path)
    {
        using var connection = Open(path, SqliteOpenMode.ReadWrite);
        if (!Equals(Ask(connection, "PRAGMA journal_mode=DELETE"), "delete"))
            throw new SqliteException("busy", SQLitePCL.raw.SQLITE_BUSY);
    }

    private static bool TrySettle(string path)
    {
        try
        {
            Settle(path);
            return true;
        }
        catch (SqliteException e) when (e.SqliteErrorCode is SQLitePCL.raw.SQLITE_BUSY or SQLitePCL.raw.SQLITE_LOCKED)
        {
            throw new InputException(path, 0, "backup.books-open");
        }
        catch (SqliteException)
        {
            return false;
        }
    }

    private static long Whole(string target, Func<string, int> write)
    {
        var part = $"{target}.{Guid.NewGuid():N}.part";
        try
        {
            write(part);
            var entries = Check(part);
            using (var file = new FileStream(part, FileMode.Open, FileAccess.ReadWrite))
                file.Flush(flushToDisk: true);
            File.Move(part, target, overwrite: true);
            return entries;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw new InputException(target, 0, "backup.not-written", ("message", e.Message));
        }
        catch (SqliteException e)
        {
            throw new InputException(target, 0, "backup.not-written-because", ("message", e.Message));
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
            // A copy made by an older version lacks the lists that came later.
            var later = new HashSet<string> { "Printings", "PackingUses", "StockCounts", "Returns", "Takings", "Attachments" };
            var lists = RecordsContext.Tables
                .Where(t => !later.Contains(t) || (long)Ask(copy, $"SELECT COUNT(*) FROM sqlite_master WHERE name = '{t}'")! > 0);
            return lists.Sum(t => (long)Ask(copy, $"SELECT COUNT(*) FROM \"{t}\"")!);
        }
        catch (SqliteException)
        {
            throw Damaged(path);
        }
    }

    private static InputException Damaged(string path) => new(path, 0, "backup.unsound-books");

    private static object? Ask(SqliteConnection connection, string sql)
    {
        using var command = connection.CreateCommand();
        command.CommandText = sql;
        return command.ExecuteScalar();
    }

    private static SqliteConnection Open(string path, SqliteOpenMode mode)
    {
        var connection = new SqliteConnection(new SqliteConnectionStringBuilder { DataSource = path, Mode = mode, Pooling = false }
            .ToString());
        connection.Open();
        return connection;
    }
}
