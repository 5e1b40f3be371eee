using System.Collections.Concurrent;

namespace LabelForge.Records.Books;

/// <summary>
/// Books in a folder that may only be read: a backup on a disk, a workshop that somebody shares. SQLite writes beside a file even
/// to read it, so what is read is a copy, log and all; it goes when the program ends. Nothing can be written to it.
/// </summary>
internal static class ReadOnlyCopy
{
    private static readonly ConcurrentDictionary<string, Lazy<string>> Copies = new(StringComparer.Ordinal);

    static ReadOnlyCopy() => AppDomain.CurrentDomain.ProcessExit += (_, _) =>
    {
        foreach (var copy in Copies.Values.Where(c => c.IsValueCreated))
            Remove(Path.GetDirectoryName(copy.Value)!);
    };

    /// <summary>A copy of the books as they stand; the same one for as long as they do not change.</summary>
    /// <exception cref="IOException">They cannot be read.</exception>
    /// <exception cref="UnauthorizedAccessException">They cannot be read.</exception>
    public static string Of(string books)
    {
        var stands = string.Join('|',
            new[] { books, books + "-wal" }.Select(f => new FileInfo(f))
                .Select(f => f.Exists ? Invariant($"{f.FullName}:{f.Length}:{f.LastWriteTimeUtc.Ticks}") : ""));
        return Copies.GetOrAdd(stands, _ => new Lazy<string>(() => Make(books))).Value;
    }

    private static string Make(string books)
    {
        var copy = Path.Combine(Directory.CreateTempSubdirectory("labelforge-read-").FullName, OpenBooks.FileName);
        foreach (var ending in (string[])["", "-wal"])
        {
            if (!File.Exists(books + ending))
                continue;
            // Not a copy of the file, which would take over that it may not be written.
            using var from = new FileStream(books + ending, FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete);
            using var to = new FileStream(copy + ending, FileMode.CreateNew, FileAccess.Write);
            from.CopyTo(to);
        }
        return copy;
    }

    private static void Remove(string folder)
    {
        try
        {
            Directory.Delete(folder, recursive: true);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            // It lies in the folder of temporary files, which the machine clears.
        }
    }
}
