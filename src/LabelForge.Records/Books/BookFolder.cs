using LabelForge.Print.Output;
using LabelForge.Records.Spreadsheets;

namespace LabelForge.Records.Books;

/// <summary>All lists of the books as CSV in a folder, and what batches froze beside them; read back by <see cref="ListImport"/>.</summary>
public static class BookFolder
{
    /// <summary>The lists' names.</summary>
    public static IReadOnlyList<string> Lists { get; } = [.. BookLists.All, BookLists.Correction];

    /// <summary>Writes all lists.</summary>
    public static void Write(BooksSnapshot snapshot, string folder)
    {
        Directory.CreateDirectory(folder);
        foreach (var list in Lists)
            Write(snapshot, list, Path.Combine(folder, $"{list}.csv"));
        foreach (var frozen in snapshot.AllBatches.DistinctBy(b => b.FrozenDigest))
        {
            var path = Path.Combine(folder, FrozenFiles.Folder, $"{frozen.FrozenDigest}.json");
            Directory.CreateDirectory(Path.GetDirectoryName(path)!);
            AtomicFile.Write(path, s => s.Write(System.Text.Encoding.UTF8.GetBytes(frozen.Frozen)));
        }
    }

    /// <summary>Writes one list.</summary>
    public static void Write(BooksSnapshot snapshot, string list, string path)
    {
        var (heading, rows) = BookTables.Of(snapshot, list);
        AtomicFile.Write(path, s => s.Write(SafeCsv.File(heading, rows)));
    }
}
