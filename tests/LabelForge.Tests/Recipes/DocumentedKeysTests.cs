using LabelForge.Recipes;

namespace LabelForge.Tests.Recipes;

/// <summary>Every key that a file may have stands in the table that tells makers about it.</summary>
public sealed class DocumentedKeysTests
{
    [Fact]
    public void Every_key_of_a_recipe_is_written_down_for_makers() => AllStandIn(RecipeFile.KnownKeys, "## recipes/ID.yaml");

    [Fact]
    public void Every_key_of_a_material_is_written_down_for_makers() => AllStandIn(MaterialFile.KnownKeys, "## materials/ID.yaml");

    private static void AllStandIn(IEnumerable<string> keys, string heading)
    {
        var page = Repository.Page("files.md");
        var from = page.IndexOf(heading, StringComparison.Ordinal);
        Assert.True(from >= 0, heading);
        var end = page.IndexOf("\n## ", from + 1, StringComparison.Ordinal);
        var told = page[from..(end < 0 ? page.Length : end)].Split('\n').Where(l => l.StartsWith('|')).Select(l => l.Split('|')[1])
            .ToList();
        Assert.All(keys, key => Assert.Contains(told, cell => cell.Contains($"`{key}`", StringComparison.Ordinal)));
    }
}
