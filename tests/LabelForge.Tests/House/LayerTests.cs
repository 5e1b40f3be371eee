using System.Text.RegularExpressions;
using System.Xml.Linq;

namespace LabelForge.Tests.House;

/// <summary>One assembly a layer, each using only those above it; and no folder of an assembly uses one that uses it.</summary>
public partial class LayerTests
{
    // From the bottom up: a project may name only what stands before it.
    private static readonly string[] Layers =
        ["Core", "Composition", "Law", "Products", "Labels", "Checks", "Print", "Records", "App", "Web", "Cli"];

    [Fact]
    public void Every_assembly_is_a_layer() =>
        Assert.Equal(Layers.Order(StringComparer.Ordinal), Projects().Select(p => p.Name).Order(StringComparer.Ordinal));

    [Fact]
    public void An_assembly_uses_only_those_below_it()
    {
        foreach (var (name, file) in Projects())
        {
            var used = XDocument.Load(file).Descendants("ProjectReference")
                .Select(r => Path.GetFileNameWithoutExtension(r.Attribute("Include")!.Value.Replace('\\', '/'))["LabelForge.".Length..]);
            Assert.All(used,
                u => Assert.True(Array.IndexOf(Layers, u) is >= 0 and var at && at < Array.IndexOf(Layers, name), $"{name} uses {u}."));
        }
    }

    [Theory]
    [InlineData("Core")]
    [InlineData("Law")]
    [InlineData("Products")]
    [InlineData("Labels")]
    [InlineData("Checks")]
    [InlineData("Records")]
    [InlineData("Print")]
    [InlineData("App")]
    [InlineData("Web")]
    [InlineData("Cli")]
    public void No_two_folders_of_an_assembly_use_one_another(string layer)
    {
        var files = Sources(layer);
        var folders = files.GroupBy(f => f.Room).ToDictionary(g => g.Key, g => g.SelectMany(f => f.Namespaces).ToHashSet());
        var uses = folders.Keys.ToDictionary(r => r, r => files.Where(f => f.Room == r)
            .SelectMany(f => folders.Where(o => o.Key != r && f.Used.Any(o.Value.Contains)).Select(o => (Room: o.Key, f.Name)))
            .GroupBy(u => u.Room).ToDictionary(g => g.Key, g => g.First().Name));
        Assert.NotEmpty(uses);
        Assert.All(uses.Keys, r => Assert.True(Circle(uses, r, r, []) is not { } circle, Circle(uses, r, r, [])));
    }

    private static string? Circle(Dictionary<string, Dictionary<string, string>> uses, string from, string at, HashSet<string> seen)
    {
        foreach (var (next, file) in uses[at])
        {
            if (next == from)
                return $"{at} uses {next} in {file}";
            if (seen.Add(next) && Circle(uses, from, next, seen) is { } further)
                return $"{at} uses {next} in {file}; {further}";
        }
        return null;
    }

    private static IEnumerable<(string Name, string File)> Projects() =>
        Directory.EnumerateFiles(Path.Combine(Repository.Folder, "src"), "*.csproj", SearchOption.AllDirectories)
            .Select(f => (Path.GetFileNameWithoutExtension(f)["LabelForge.".Length..], f));

    private static List<Source> Sources(string layer)
    {
        var root = Path.Combine(Repository.Folder, "src", $"LabelForge.{layer}");
        return [.. Directory.EnumerateFiles(root, "*.cs", SearchOption.AllDirectories)
            .Select(f => (Path: f, Parts: Path.GetRelativePath(root, f).Split(Path.DirectorySeparatorChar)))
            // The page is put together in one file, which names every room of it as the command's own tree does.
            .Where(f => f.Parts[0] is not ("obj" or "bin") && f.Parts.Length > 1 && f.Parts[^1] != "PageServer.cs")
            .Select(f =>
            {
                var text = File.ReadAllText(f.Path);
                var own = Declared().Match(text).Groups["name"].Value;
                return new Source(f.Parts[0], f.Parts[^1], [own],
                    [.. Using().Matches(text).Select(m => m.Groups["name"].Value).Where(u => u != own)]);
            })];
    }

    private sealed record Source(string Room, string Name, string[] Namespaces, string[] Used);

    [GeneratedRegex(@"^namespace (?<name>[\w.]+)", RegexOptions.Multiline)]
    private static partial Regex Declared();

    [GeneratedRegex(@"^using (?:static )?(?<name>LabelForge[\w.]*);", RegexOptions.Multiline)]
    private static partial Regex Using();
}
