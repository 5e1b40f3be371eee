using LabelForge.Print.Output;

namespace LabelForge.Cli;

/// <summary>The workshops shipped with the tool: the invented example, and the small one to start from.</summary>
internal static class ShippedWorkshop
{
    /// <summary>The whole invented example.</summary>
    public const string Example = "example/";

    /// <summary>A few files to start from.</summary>
    public const string Starter = "starter/";

    /// <summary>Writes a shipped workshop's files into a folder and returns their names.</summary>
    public static IReadOnlyList<string> Write(string which, string folder)
    {
        var assembly = typeof(ShippedWorkshop).Assembly;
        var names = assembly.GetManifestResourceNames().Where(n => n.StartsWith(which, StringComparison.Ordinal)).Order(StringComparer.Ordinal).ToArray();
        foreach (var name in names)
        {
            var path = Path.Combine(folder, Inside(which, name));
            Directory.CreateDirectory(Path.GetDirectoryName(Path.GetFullPath(path))!);
            AtomicFile.Write(path, stream =>
            {
                using var shipped = assembly.GetManifestResourceStream(name)!;
                shipped.CopyTo(stream);
            });
        }
        return [.. names.Select(n => Inside(which, n))];
    }

    private static string Inside(string which, string name) => name[which.Length..].Replace('\\', '/');
}
