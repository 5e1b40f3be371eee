using System.Text.Json;

namespace LabelForge.Cli.Tests;

public sealed class MaterialVerbTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("labelforge-").FullName;

    public MaterialVerbTests() => CommandRun.Of("init", _folder);

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public void A_suppliers_paper_becomes_a_material_that_a_recipe_can_use()
    {
        var run = CommandRun.Of("material", "New base", "--id", "clear-base", "--replace", "--workshop", _folder,
            "--declaration",
            "INGREDIENTS: WATER (AQUA), SORBITOL, GLYCERIN (15-25%), Sodium Stearate 10 - 20 %, Tetra-\nsodium EDTA <1%. May "
                + "contain: CI 77891.");
        Assert.Equal((0, ""), (run.ExitCode, run.Messages));
        Assert.Contains("taken as", run.Output, StringComparison.Ordinal);
        var declared = CommandRun.Of("declare", Path.Combine(_folder, "recipes", "first-bar.yaml"));
        Assert.Equal(0, declared.ExitCode);
        Assert.Contains("Tetrasodium EDTA", declared.Output, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("Glycerin >= 20 %", "Glycerin: at least 20 %")]
    [InlineData("Glycerin at least 20 %", "Glycerin: at least 20 %")]
    [InlineData("Glycerin > 20 %", "Glycerin: at least 20 %")]
    [InlineData("Glycerin max. 20 %", "Glycerin: <= 20 %")]
    [InlineData("Glycerin 10-20 %", "Glycerin: 10-20 %")]
    public void A_bound_is_written_as_the_reader_takes_it_back(string paper, string line)
    {
        var run = CommandRun.Of("material", "Bound base", "--workshop", _folder, "--declaration", $"Water, {paper}, Sodium Stearate");
        Assert.Equal((0, ""), (run.ExitCode, run.Messages));
        Assert.Contains(line, File.ReadAllText(Path.Combine(_folder, "materials", "bound-base.yaml")), StringComparison.Ordinal);
        Assert.Equal(0, CommandRun.Of("declare", Path.Combine(_folder, "recipes", "first-bar.yaml")).ExitCode);
    }

    [Fact]
    public void A_wrapper_and_a_safety_data_sheet_become_one_material()
    {
        var (paper, sheet) = (Path.Combine(_folder, "wrapper.txt"), Path.Combine(_folder, "sheet.txt"));
        File.WriteAllText(paper,
            "New base\nIngredients: Water, Glycerin, Sodium Stearate, Sodium Laureth Sulfate. Contains less than 1% of: Sodium Chloride, "
                + "Tetrasodium EDTA.");
        File.WriteAllText(sheet,
            "SECTION 3: Composition/information on ingredients\nSodium laureth sulfate 9004-82-4 5 - 10 % Eye Irrit. 2, "
                + "H319\nPhenoxyethanol 122-99-6 < 1 %\nSECTION 4: First aid measures\n");
        var run = CommandRun.Of("material", "New base", "--workshop", _folder, "--paper", paper, "--sheet", sheet);
        Assert.Equal((0, ""), (run.ExitCode, run.Messages));
        var yaml = File.ReadAllText(Path.Combine(_folder, "materials", "new-base.yaml"));
        Assert.Contains("- Sodium Laureth Sulfate: 5-10 %", yaml, StringComparison.Ordinal);
        Assert.Contains("- Sodium Chloride: <= 1 %", yaml, StringComparison.Ordinal);
        Assert.Contains("#   The safety data sheet names Phenoxyethanol", yaml, StringComparison.Ordinal);
    }

    [Fact]
    public void A_lone_mica_is_written_as_a_colourant_and_the_paper_says_on_what_that_rests()
    {
        var run = CommandRun.Of("material", "Moss mica", "--workshop", _folder, "--declaration", "Mica, CI 77288, CI 77891");
        Assert.Equal((0, ""), (run.ExitCode, run.Messages));
        Assert.Contains("told from its names; --kind says otherwise", run.Output, StringComparison.Ordinal);
        Assert.Contains("kind: colourant", File.ReadAllText(Path.Combine(_folder, "materials", "moss-mica.yaml")),
            StringComparison.Ordinal);
    }

    [Fact]
    public void A_material_that_is_there_is_not_written_over()
    {
        var file = Path.Combine(_folder, "materials", "clear-base.yaml");
        var before = File.ReadAllText(file);
        var run = CommandRun.Of("material", "Clear base", "--workshop", _folder, "--declaration", "Glycerin");
        Assert.Equal((2, ""), (run.ExitCode, run.Output));
        Assert.Contains("--replace", run.Messages, StringComparison.Ordinal);
        Assert.Equal(before, File.ReadAllText(file));
    }

    [Fact]
    public void The_JSON_names_what_was_written_and_what_it_was_taken_as()
    {
        var run = CommandRun.Of("material", "Odd base", "--workshop", _folder, "--dry-run", "--format", "json", "--declaration",
            "Aqua, Sodium Stearatte 5%");
        using var json = JsonDocument.Parse(run.Output);
        var names = json.RootElement.GetProperty("names");
        Assert.Equal(("Water", "exact"), (names[0].GetProperty("ingredient").GetString(), names[0].GetProperty("match").GetString()));
        Assert.Equal(("unknown", 5m),
            (names[1].GetProperty("match").GetString(), names[1].GetProperty("share").GetProperty("low").GetDecimal()));
        Assert.Equal("Sodium Stearate", names[1].GetProperty("nearest")[0].GetString());
        Assert.False(File.Exists(Path.Combine(_folder, "materials", "odd-base.yaml")));
    }

    [Fact]
    public void The_explanation_shows_ranges_reasons_questions_and_sources()
    {
        var run = CommandRun.Of("declare", Path.Combine(_folder, "recipes", "first-bar.yaml"), "--explain");
        Assert.Equal((0, ""), (run.ExitCode, run.Messages));
        foreach (var heading in new[] { "HOW MUCH OF EACH", "WHAT IS PROVED", "WHAT TO ASK", "WHERE EACH RANGE COMES FROM" })
            Assert.Contains(heading, run.Output, StringComparison.Ordinal);
        Assert.Contains("of the batch x", run.Output, StringComparison.Ordinal);
        Assert.All(run.Output.Split('\n'), line => Assert.InRange(line.Length, 0, 100));
    }
}
