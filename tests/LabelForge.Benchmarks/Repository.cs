namespace LabelForge.Benchmarks;

/// <summary>The checkout that this program runs in.</summary>
internal static class Repository
{
    /// <summary>Its root.</summary>
    public static string Root { get; } = Find();

    /// <summary>A file by its path from the root.</summary>
    public static string File(string path) => Path.Combine(Root, path);

    private static string Find()
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (folder is not null && !System.IO.File.Exists(Path.Combine(folder.FullName, "LabelForge.sln")))
            folder = folder.Parent;
        return folder?.FullName ?? throw new InvalidOperationException("There is no LabelForge.sln above this program.");
    }
}
