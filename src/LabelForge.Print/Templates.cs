using LabelForge.Recipes.Files;

namespace LabelForge.Print;

/// <summary>The files under templates/ that ship inside the program.</summary>
public static class Templates
{
    private const string Root = "templates/";

    /// <summary>A file's bytes.</summary>
    /// <exception cref="FileNotFoundException">There is no such file.</exception>
    public static byte[] Bytes(string path)
    {
        using var stream = typeof(Templates).Assembly.GetManifestResourceStream(Root + path)
            ?? throw new FileNotFoundException($"No template is named {path}.", path);
        using var copy = new MemoryStream();
        stream.CopyTo(copy);
        return copy.ToArray();
    }

    /// <summary>A file's text.</summary>
    public static string Text(string path)
    {
        using var reader = new StreamReader(new MemoryStream(Bytes(path)));
        return reader.ReadToEnd();
    }

    /// <summary>What a YAML file says.</summary>
    public static MapNode Tree(string path) => (MapNode)CompiledData.ReadTree(typeof(Templates).Assembly, "compiled/" + path);

    /// <summary>The ids of the YAML files in a folder, in order.</summary>
    public static IReadOnlyList<string> Ids(string folder) => Listed.Of(folder, () =>
    [
        .. typeof(Templates).Assembly.GetManifestResourceNames()
            .Where(n => n.StartsWith(Root + folder + "/", StringComparison.Ordinal) && n.EndsWith(".yaml", StringComparison.Ordinal))
            .Select(n => n[(Root.Length + folder.Length + 1)..^5])
            .Order(StringComparer.Ordinal),
    ]);

    // What ships with the program does not change while it runs.
    private static readonly FoundBefore<string, IReadOnlyList<string>> Listed = new(100);

    /// <summary>Refuses an id that is not known, naming those that are.</summary>
    public static InputException Unknown(string what, string id, IEnumerable<string> known) =>
        new(null, 0, "design.unknown", ("what", what), ("id", id), ("list", string.Join(", ", known)));
}
