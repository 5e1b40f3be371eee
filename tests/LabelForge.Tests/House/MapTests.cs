using System.Text.RegularExpressions;

namespace LabelForge.Tests.House;

/// <summary>DEVELOPERS.md is true to the tree.</summary>
public partial class MapTests
{
    private static readonly string Page = File.ReadAllText(Path.Combine(Repository.Folder, "DEVELOPERS.md"));

    [Fact]
    public void Every_room_is_on_the_map()
    {
        var src = Path.Combine(Repository.Folder, "src");
        var rooms = Directory.EnumerateFiles(src, "*", SearchOption.AllDirectories)
            .Where(f => f.EndsWith(".cs", StringComparison.Ordinal) || f.EndsWith(".razor", StringComparison.Ordinal))
            .Select(f => Path.GetRelativePath(src, Path.GetDirectoryName(f)!).Replace('\\', '/')
                .Replace("LabelForge.", "", StringComparison.Ordinal))
            .Where(r => r.Contains('/', StringComparison.Ordinal) && !r.Split('/').Any(p => p is "obj" or "bin"))
            .Distinct().Order(StringComparer.Ordinal).ToArray();
        Assert.NotEmpty(rooms);
        Assert.DoesNotContain(rooms, r => !Page.Contains($"`{r}`", StringComparison.Ordinal));
    }

    [Fact]
    public void Every_path_on_the_page_is_there()
    {
        var paths = PathInCode().Matches(Page).Select(m => m.Groups["path"].Value.TrimEnd('/'))
            .Where(p => !p.Contains('<', StringComparison.Ordinal)).Distinct().ToArray();
        Assert.True(paths.Length > 20);
        Assert.DoesNotContain(paths, p => !Path.Exists(Path.Combine(Repository.Folder, p)));
    }

    [Fact]
    public void Every_test_that_the_page_relies_on_is_there()
    {
        var tests = Directory.EnumerateFiles(Path.Combine(Repository.Folder, "tests"), "*Tests.cs", SearchOption.AllDirectories)
            .ToLookup(f => Path.GetFileNameWithoutExtension(f));
        var named = TestInCode().Matches(Page).Select(m => (Class: m.Groups["class"].Value, Test: m.Groups["test"].Value)).ToArray();
        Assert.True(named.Length > 20);
        Assert.DoesNotContain(named, n => !tests[n.Class].Any(f => File.ReadAllText(f).Contains($" {n.Test}(", StringComparison.Ordinal)));
    }

    // The rows of a table below its heading and the line under that.
    [Theory]
    [InlineData("| once | held by | since |", 10)]
    [InlineData("| one | is | held by |", 10)]
    public void Every_row_of_what_is_held_names_a_test(string heading, int rows)
    {
        var table = Page.Split('\n').SkipWhile(l => l != heading).Skip(2).TakeWhile(l => l.StartsWith('|')).ToArray();
        Assert.Equal(rows, table.Length);
        Assert.DoesNotContain(table, row => !TestInCode().IsMatch(row));
    }

    [Theory]
    [InlineData("src/LabelForge.Law/Markets/us/warnings.yaml", "foaming-bath")]
    [InlineData("src/LabelForge.Law/Markets/us/figures.yaml", "ingredients.one-percent-line")]
    [InlineData("templates/stock/us-letter-10-2x4in.yaml", "width")]
    [InlineData("src/LabelForge.Law/Markets/markets.yaml", "us")]
    public void A_walk_ends_where_the_page_says(string file, string holds)
    {
        Assert.Contains($"`{file}`", Page, StringComparison.Ordinal);
        Assert.Contains(holds, File.ReadAllText(Path.Combine(Repository.Folder, file)), StringComparison.Ordinal);
    }

    [GeneratedRegex(@"`(?<class>\w+Tests)\.(?<test>\w+)`")]
    private static partial Regex TestInCode();

    [GeneratedRegex(@"`(?<path>(?:src|tests|templates|ingredients|docs|build)/[^`\s]*)`")]
    private static partial Regex PathInCode();
}
