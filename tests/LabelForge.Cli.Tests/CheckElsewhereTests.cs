using System.Text.Json;

namespace LabelForge.Cli.Tests;

/// <summary><c>check</c> on labels made elsewhere, as a person runs it. The labels are invented.</summary>
public sealed class CheckElsewhereTests : IDisposable
{
    private const string Lawful = """
        ROOKSEDGE BODYCARE
        Fen Meadow
        Glycerin Bar Soap
        Net Wt 4 oz (113 g)
        Ingredients: Water, Glycerin, Sodium Stearate, Sorbitol, Sodium Laurate, Fragrance, Titanium Dioxide.
        Rooksedge Bodycare, 1 Example Lane, Fairport, ME 00000
        Lot 26R25-01E
        """;

    private readonly string _folder = Directory.CreateTempSubdirectory("labelforge-").FullName;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public void A_lawful_label_passes_and_what_was_read_is_told()
    {
        var run = CommandRun.Of("check", Written("label.txt", Lawful), "--format", "json");
        Assert.Equal(0, run.ExitCode);
        using var json = JsonDocument.Parse(run.Output);
        var found = json.RootElement.GetProperty("found");
        Assert.Equal("Net Wt 4 oz (113 g)", found.GetProperty("netQuantity").GetString());
        Assert.Equal(7, found.GetProperty("ingredients").GetArrayLength());
        Assert.Equal("26R25-01E", found.GetProperty("lot").GetString());
    }

    [Fact]
    public void A_must_that_stands_gives_exit_code_one_and_names_its_paragraph()
    {
        var run = CommandRun.Of("check", Written("label.txt", Lawful.Replace("(113 g)", "(133 g)")));
        Assert.Equal(1, run.ExitCode);
        Assert.Contains("net-quantity.systems-disagree", run.Output);
        Assert.Contains("21 CFR 701.13", run.Output);
    }

    [Fact]
    public void How_it_is_sold_decides_what_a_soap_must_say()
    {
        var label = Written("label.txt",
            Lawful.Replace("Ingredients: Water, Glycerin, Sodium Stearate, Sorbitol, Sodium Laurate, Fragrance, Titanium Dioxide.\n", ""));
        Assert.Equal(0, CommandRun.Of("check", label, "--sold-as", "soap").ExitCode);
        var cosmetic = CommandRun.Of("check", label, "--sold-as", "cosmetic");
        Assert.Equal(1, cosmetic.ExitCode);
        Assert.Contains("ingredients.missing", cosmetic.Output);
    }

    [Fact]
    public void What_is_no_label_is_refused_with_one_message()
    {
        var large = Path.Combine(_folder, "large.txt");
        File.WriteAllText(large, string.Concat(Enumerable.Repeat("a soap, ", 50_000_000 / 8)));
        var noise = new byte[4096];
        new Random(1).NextBytes(noise);
        File.WriteAllBytes(Path.Combine(_folder, "noise.txt"), noise);
        File.WriteAllBytes(Path.Combine(_folder, "noise.pdf"), noise);
        foreach (var file in new[] { large, Path.Combine(_folder, "noise.txt"), Path.Combine(_folder, "noise.pdf"),
            Path.Combine(_folder, "none.txt"), Written("empty.txt", "") })
        {
            var run = CommandRun.Of("check", file);
            Assert.Equal(2, run.ExitCode);
            Assert.Empty(run.Output);
            Assert.Single(run.Messages.Trim().Split('\n'));
        }
    }

    [Fact]
    public void The_rules_are_listed_with_their_sources()
    {
        var run = CommandRun.Of("rules", "--format", "json");
        using var json = JsonDocument.Parse(run.Output);
        Assert.True(json.RootElement.GetArrayLength() > 50);
        Assert.All(json.RootElement.EnumerateArray(), r => Assert.NotEqual("", r.GetProperty("source").GetString()));
    }

    private string Written(string name, string text)
    {
        var path = Path.Combine(_folder, name);
        File.WriteAllText(path, text);
        return path;
    }
}
