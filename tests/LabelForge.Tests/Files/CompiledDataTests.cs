using System.Reflection;
using CsvHelper;
using LabelForge.Ingredients;
using LabelForge.Markets;
using LabelForge.Recipes.Files;

namespace LabelForge.Tests.Files;

/// <summary>What ships compiled says what its source says, line for line.</summary>
public class CompiledDataTests
{
    private static readonly Assembly Law = typeof(LawData).Assembly;
    private static readonly Assembly Products = typeof(IngredientDictionary).Assembly;

    [Fact]
    public void Every_tree_that_ships_is_the_tree_of_its_file()
    {
        var files = Sources("src/LabelForge.Law/Markets", "*.yaml");
        Assert.NotEmpty(files);
        Assert.All(files, f => Assert.Equal(
            Written(YamlFile.Root(File.ReadAllText(f.Path), f.Path)),
            Written(CompiledData.ReadTree(Law, $"markets/{f.Name}"))));
    }

    [Fact]
    public void Every_table_that_ships_has_the_rows_of_its_file()
    {
        var files = Sources("ingredients", "*.csv");
        Assert.NotEmpty(files);
        Assert.All(files, f => Assert.Equal(
            Rows(f.Path),
            CompiledData.ReadTable(Products, $"ingredients/{f.Name}").Select(r => $"{r.Line}: {string.Join('|', r.Cells)}")));
    }

    [Fact]
    public void What_does_not_ship_is_a_mistake_of_the_build() =>
        Assert.Throws<InvalidOperationException>(() => CompiledData.ReadTree(Law, "markets/nowhere.yaml"));

    [Fact]
    public void A_table_is_not_read_as_a_tree() =>
        Assert.Throws<InvalidOperationException>(() => CompiledData.ReadTree(Products, "ingredients/tables/counted-as.csv"));

    private static (string Path, string Name)[] Sources(string folder, string pattern)
    {
        var root = Path.Combine(Repository.Folder, folder);
        return [.. Directory.EnumerateFiles(root, pattern, SearchOption.AllDirectories).Order(StringComparer.Ordinal)
            .Select(f => (f, Path.GetRelativePath(root, f).Replace(Path.DirectorySeparatorChar, '/')))];
    }

    // With the library alone: its own heading reader, and lines counted by it.
    private static IEnumerable<string> Rows(string path)
    {
        using var csv = CsvReader.Create(new StreamReader(path),
            new CsvReaderOptions { Separator = ',', HasHeader = false, TrackLineNumbers = true });
        while (csv.Read())
            yield return $"{csv.LineNumber}: {string.Join('|', Enumerable.Range(0, csv.FieldCount).Select(i => csv.GetString(i).Trim()))}";
    }

    private static string Written(Node node) => node switch
    {
        TextNode text => $"{text.Line}\"{text.Text}\"",
        ListNode list => $"{list.Line}[{string.Join(',', list.Items.Select(Written))}]",
        MapNode map => $"{map.Line}{{{string.Join(',', map.Entries.Select(e => $"{e.Line}{e.Key}={Written(e.Value)}"))}}}",
        _ => throw new ArgumentException("Of no kind known."),
    };
}
