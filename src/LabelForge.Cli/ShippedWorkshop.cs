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
    /// <exception cref="InputException">A file of one of the names is there and says something
    /// else: it may be somebody's work. Nothing is written then.</exception>
    public static IReadOnlyList<string> Write(string which, string folder, bool force = false)
    {
        var assembly = typeof(ShippedWorkshop).Assembly;
        var names = assembly.GetManifestResourceNames().Where(n => n.StartsWith(which, StringComparison.Ordinal))
            .Order(StringComparer.Ordinal).ToArray();
        if (!force
            && names.Select(n => (Name: n, Path: Path.Combine(folder, Inside(which, n))))
                .FirstOrDefault(f => File.Exists(f.Path) && !Same(f.Path, f.Name)) is { Path: { } other })
            throw new InputException(other, 0, "call.file-would-be-lost");
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

    // Line ends aside, which version control may change.
    private static bool Same(string path, string name)
    {
        using var shipped = new StreamReader(typeof(ShippedWorkshop).Assembly.GetManifestResourceStream(name)!);
        return File.ReadAllText(path).ReplaceLineEndings() == shipped.ReadToEnd().ReplaceLineEndings();
    }

    private static string Inside(string which, string name) => name[which.Length..].Replace('\\', '/');
}
