using System.Runtime.CompilerServices;

namespace LabelForge.Tests;

/// <summary>The files of the project, as the tests were built from them.</summary>
internal static class Repository
{
    /// <summary>Where it lies.</summary>
    public static string Folder { get; } = Root();

    /// <summary>The text of a page of the documentation, with plain line ends.</summary>
    public static string Page(string name) => File.ReadAllText(Path.Combine(Folder, "docs", name)).ReplaceLineEndings("\n");

    private static string Root([CallerFilePath] string here = "") => Path.GetFullPath(Path.Combine(Path.GetDirectoryName(here)!, "..", ".."));
}
