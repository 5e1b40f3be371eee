using System.Text.RegularExpressions;

namespace LabelForge.Tests.House;

/// <summary>The books are asked by query. They are read whole where all of them is what is asked for, and nowhere else.</summary>
public sealed partial class WholeBooksTests
{
    // verify, backup and restore, import, the migration of balances; and what they stand on.
    private static readonly HashSet<string> ReadWhole =
    [
        "BookCopy.cs", "BooksCheck.cs", "BooksInvariants.cs", "BooksSnapshot.cs", "Correcting.cs", "FrozenFiles.cs", "ListImport.cs",
        "OpenBooks.cs", "Rebuild.cs",
    ];

    [Fact]
    public void Only_verify_backup_import_and_migration_read_the_books_whole()
    {
        string[] files = [.. Directory.EnumerateFiles(Path.Combine(Repository.Folder, "src"), "*.*", SearchOption.AllDirectories)
            .Where(f => Path.GetExtension(f) is ".cs" or ".razor" && !Built().IsMatch(f) && Whole().IsMatch(File.ReadAllText(f)))];
        Assert.Contains(files, f => Path.GetFileName(f) == "BooksCheck.cs");
        Assert.DoesNotContain(files,
            f => !f.Contains("LabelForge.Records", StringComparison.Ordinal) || !ReadWhole.Contains(Path.GetFileName(f)));
    }

    [GeneratedRegex(@"BooksSnapshot|(?:Book\(\w*\)|OpenBooks\.Open\([^)]*\)|\bbook)\.ReadWhole\(\)")]
    private static partial Regex Whole();

    [GeneratedRegex(@"[\\/](?:bin|obj)[\\/]")]
    private static partial Regex Built();
}
