namespace LabelForge.Cli.Tests;

/// <summary>Help is of the program alone: it opens no workshop and no books, whatever stands in the folder.</summary>
public class HelpOpensNothingTests
{
    [Theory]
    [InlineData("--help")]
    [InlineData("help")]
    [InlineData("help", "batch")]
    [InlineData("help", "--all")]
    [InlineData("books", "--help")]
    [InlineData("stock-in-hand", "--help")]
    [InlineData("--version")]
    public void Help_opens_no_books_and_makes_none(params string[] words)
    {
        var folder = Directory.CreateTempSubdirectory("labelforge-test-").FullName;
        try
        {
            // A workshop that cannot be read and books that are none: whoever opened either would say so.
            File.WriteAllText(Path.Combine(folder, "workshop.yaml"), "business: [");
            File.WriteAllText(Path.Combine(folder, "records.db"), "no books");
            var before = File.GetLastWriteTimeUtc(Path.Combine(folder, "records.db"));
            var run = CommandRun.OfProgram(folder, words);
            Assert.Equal((0, ""), (run.ExitCode, run.Messages));
            Assert.NotEmpty(run.Output);
            Assert.Equal(["records.db", "workshop.yaml"],
                Directory.EnumerateFileSystemEntries(folder).Select(Path.GetFileName).Order(StringComparer.Ordinal));
            Assert.Equal(("no books", before),
                (File.ReadAllText(Path.Combine(folder, "records.db")), File.GetLastWriteTimeUtc(Path.Combine(folder, "records.db"))));
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }
}
