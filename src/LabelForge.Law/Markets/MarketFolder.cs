using LabelForge.Recipes.Files;

namespace LabelForge.Markets;

/// <summary>The files of a market: those embedded in the program, or those of a folder on disk.</summary>
public sealed class MarketFolder
{
    private readonly Func<string, Node> open;

    private MarketFolder(string id, ImmutableArray<string> files, Func<string, Node> open) => (Id, Files, this.open) = (id, files, open);

    /// <summary>The folder's name, which is the market's id.</summary>
    public string Id { get; }

    /// <summary>The names of its files.</summary>
    public ImmutableArray<string> Files { get; }

    /// <summary>The shipped folder whose words in other languages its rules have; null for a folder on disk.</summary>
    internal string? WordsOf { get; private init; }

    /// <summary>A folder of the program's own.</summary>
    public static MarketFolder Embedded(string id)
    {
        var prefix = $"markets/{id}/";
        return new(id,
            [.. LawData.Names(prefix).Select(n => n[prefix.Length..])],
            file => LawData.Tree(prefix + file))
        { WordsOf = id };
    }

    /// <summary>A folder on disk; its name is the market's id.</summary>
    /// <exception cref="InputException">There is no such folder.</exception>
    public static MarketFolder At(string path)
    {
        if (!Directory.Exists(path))
            throw new InputException(path, 0, "market.no-such-folder");
        return new(Path.GetFileName(Path.TrimEndingDirectorySeparator(Path.GetFullPath(path))),
            [.. Directory.EnumerateFiles(path, "*.yaml").Select(f => Path.GetFileName(f)).Order(StringComparer.Ordinal)],
            file => YamlFile.Root(File.ReadAllText(Path.Combine(path, file)), Path.Combine(path, file)));
    }

    /// <summary>The files whose names begin so: <c>rules</c> for rules.yaml and rules-label.yaml.
    /// A name stands for a file as messages show it.</summary>
    internal IEnumerable<(string Name, Node Root)> Read(string kind) =>
        Files.Where(f => f.StartsWith(kind, StringComparison.Ordinal) && f.EndsWith(".yaml", StringComparison.Ordinal))
            .Select(f => ($"{Id}/{f}", open(f)));
}
