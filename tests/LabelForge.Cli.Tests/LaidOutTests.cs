namespace LabelForge.Cli.Tests;

/// <summary>What is judged is the label that would be printed: what its design has no place for
/// is missing on it, whatever the recipe says.</summary>
public sealed class LaidOutTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("labelforge-").FullName;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Theory]
    [InlineData("bar-2x4", true)]
    [InlineData("bar-band", false)]
    public void The_mark_of_the_open_jar_is_missed_where_the_design_does_not_draw_it(string design, bool missed)
    {
        Assert.Equal(0, CommandRun.Of("init", _folder).ExitCode);
        File.AppendAllText(Path.Combine(_folder, "recipes", "first-bar.yaml"), "period after opening: 12 months\n");
        var told = CommandRun.Of("check", "first-bar", "--workshop", _folder, "--market", "eu", "--lot", "26R25-01E", "--on", "2026-11-25",
            "--design", design).Output;
        Assert.Equal(missed, told.Contains("durability.missing", StringComparison.Ordinal));
    }
}
