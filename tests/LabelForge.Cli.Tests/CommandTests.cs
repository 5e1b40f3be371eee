using System.Text.Json;

namespace LabelForge.Cli.Tests;

public sealed class CommandTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("labelforge-").FullName;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public void The_demo_does_the_whole_job()
    {
        var run = CommandRun.Of("demo", "--out", _folder);
        Assert.Equal((0, ""), (run.ExitCode, run.Messages));
        foreach (var recipe in Directory.GetFiles(Path.Combine(_folder, "workshop", "recipes")).Select(Path.GetFileNameWithoutExtension))
        {
            foreach (var file in new[] { "label.pdf", "label.svg", "label.png", "sheet.pdf", "batch-sheet.pdf" })
                Assert.True(new FileInfo(Path.Combine(_folder, recipe!, file)).Length > 1000, $"{recipe}/{file}");
        }
    }

    [Fact]
    public void From_an_empty_folder_to_a_printed_label()
    {
        var shop = Path.Combine(_folder, "shop");
        var bar = Path.Combine(shop, "recipes", "first-bar.yaml");
        Assert.Equal(0, CommandRun.Of("init", shop).ExitCode);
        Assert.StartsWith("Ingredients: ", CommandRun.Of("declare", bar).Output);
        Assert.Equal(0, CommandRun.Of("check", bar, "--lot", "26R25-01E").ExitCode);
        Assert.Equal(0, CommandRun.Of("label", bar, "--lot", "26R25-01E", "--out", Path.Combine(shop, "label.pdf")).ExitCode);
        Assert.StartsWith("%PDF", File.ReadAllText(Path.Combine(shop, "label.pdf")));
    }

    [Fact]
    public void The_JSON_of_quantity_is_the_fixed_one()
    {
        var run = CommandRun.Of("quantity", "4 oz", "--panel", "2.5x3.5in", "--format", "json");
        using var json = JsonDocument.Parse(run.Output);
        Assert.Equal("Net Wt 4 oz (113 g)", json.RootElement.GetProperty("statement").GetString());
        Assert.Equal("4 oz", json.RootElement.GetProperty("customary").GetString());
        Assert.Equal("113 g", json.RootElement.GetProperty("metric").GetString());
        Assert.Equal(0.125m, json.RootElement.GetProperty("letterHeight").GetProperty("inches").GetDecimal());
        Assert.Equal(3.175m, json.RootElement.GetProperty("letterHeight").GetProperty("mm").GetDecimal());
    }

    [Theory]
    [InlineData("declare", "no-such-bar")]
    [InlineData("quantity", "4 cups")]
    [InlineData("lot", "read", "26R25-01X")]
    [InlineData("nonsense")]
    public void What_cannot_be_used_ends_with_two_and_one_clear_message(params string[] words)
    {
        var run = CommandRun.Of(words);
        Assert.Equal((2, ""), (run.ExitCode, run.Output));
        Assert.Single(run.Messages.Trim().Split('\n'));
    }

    [Fact]
    public void A_label_that_cannot_be_made_leaves_no_file()
    {
        CommandRun.Of("init", _folder);
        var recipe = Path.Combine(_folder, "recipes", "first-bar.yaml");
        File.WriteAllText(recipe, File.ReadAllText(recipe).Replace("1.5 % of batch", "1.5 %"));
        var run = CommandRun.Of("label", recipe, "--lot", "26R25-01E", "--out", Path.Combine(_folder, "label.pdf"));
        Assert.Equal(2, run.ExitCode);
        Assert.Contains("recipes/first-bar.yaml, line 8", run.Messages);
        Assert.Empty(Directory.GetFiles(_folder, "*label*"));
    }
}
