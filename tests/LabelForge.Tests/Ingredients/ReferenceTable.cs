using CsvHelper;

namespace LabelForge.Tests.Ingredients;

/// <summary>An official table kept beside the repository for checks; tests that need one are skipped where it is not there.</summary>
internal static class ReferenceTable
{
    /// <summary>The rows of a table, its heading first.</summary>
    public static List<string[]> RowsOrSkip(string file)
    {
        for (var folder = new DirectoryInfo(AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
        {
            var path = Path.Combine(folder.FullName, "shared", "reference", file);
            if (File.Exists(path))
                return [.. Rows(path)];
        }
        Assert.Skip($"No folder shared/reference with {file} above {AppContext.BaseDirectory}.");
        return [];
    }

    private static IEnumerable<string[]> Rows(string path)
    {
        using var reader = CsvReader.Create(new StreamReader(path),
            new CsvReaderOptions { Separator = ',', HasHeader = false, FieldCountMismatch = CsvFieldCountHandling.Allow });
        while (reader.Read())
            yield return [.. Enumerable.Range(0, reader.FieldCount).Select(reader.GetString)];
    }
}
