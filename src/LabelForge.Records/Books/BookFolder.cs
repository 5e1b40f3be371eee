using LabelForge.Print.Output;
using LabelForge.Records.Spreadsheets;

namespace LabelForge.Records.Books;

/// <summary>All lists of the books as CSV in a folder, and what batches froze beside them; read
/// back by <see cref="ListImport"/>.</summary>
public static class BookFolder
{
    /// <summary>The lists' names.</summary>
    public static IReadOnlyList<string> Lists { get; } = [.. BookLists.All, BookLists.Correction];

    /// <summary>Writes all lists, each row by row as it is read.</summary>
    public static void Write(IBooks books, string folder)
    {
        Directory.CreateDirectory(folder);
        foreach (var list in Lists)
            Write(books, list, Path.Combine(folder, $"{list}.csv"));
        foreach (var (digest, json) in books.FrozenTexts())
        {
            var path = Path.Combine(folder, FrozenFiles.Folder, $"{digest}.json");
            Directory.CreateDirectory(Path.GetDirectoryName(path)!);
            AtomicFile.Write(path, json);
        }
    }

    /// <summary>Writes one list.</summary>
    public static void Write(IBooks books, string list, string path) =>
        AtomicFile.Write(path, s => SafeCsv.WriteFile(s, BookTables.Of(books, list, []).Heading, BookTables.InPages(books, list)));
}
