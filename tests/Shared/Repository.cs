using System.Runtime.CompilerServices;

namespace LabelForge.Tests.Shared;

/// <summary>The files of the project, as the tests were built from them.</summary>
internal static class Repository
{
    /// <summary>Where it lies.</summary>
    public static string Folder { get; } = Root();

    /// <summary>The text of a page of the documentation, with plain line ends.</summary>
    public static string Page(string name) => File.ReadAllText(Path.Combine(Folder, "docs", name)).ReplaceLineEndings("\n");

    /// <summary>Holds the figures of a page, between its marks, to those of this run; with
    /// <c>LABELFORGE_APPROVE=1</c> writes them.</summary>
    /// <param name="name">The page.</param>
    /// <param name="mark">What the marks say.</param>
    /// <param name="table">The figures.</param>
    public static void Table(string name, string mark, string table)
    {
        var page = Page(name);
        var begin = $"<!-- begin {mark} -->\n";
        var (from, to) = (page.IndexOf(begin, StringComparison.Ordinal) + begin.Length,
            page.IndexOf($"<!-- end {mark} -->", StringComparison.Ordinal));
        if (Environment.GetEnvironmentVariable("LABELFORGE_APPROVE") == "1")
            File.WriteAllText(Path.Combine(Folder, "docs", name), page[..from] + table + page[to..]);
        else
            Assert.Equal(table, page[from..to]);
    }

    /// <summary>The text that was approved; with <c>LABELFORGE_APPROVE=1</c> what it is now is approved first.</summary>
    /// <param name="name">Its file among the approved ones.</param>
    /// <param name="now">What it is now.</param>
    public static string Approved(string name, string now)
    {
        var file = Path.Combine(Folder, "tests", "approved", name);
        if (Environment.GetEnvironmentVariable("LABELFORGE_APPROVE") == "1")
        {
            Directory.CreateDirectory(Path.GetDirectoryName(file)!);
            File.WriteAllText(file, now);
        }
        return File.ReadAllText(file).ReplaceLineEndings("\n");
    }

    private static string Root([CallerFilePath] string here = "") =>
        Path.GetFullPath(Path.Combine(Path.GetDirectoryName(here)!, "..", ".."));
}
