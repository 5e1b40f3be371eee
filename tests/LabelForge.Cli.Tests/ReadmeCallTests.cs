namespace LabelForge.Cli.Tests;

/// <summary>The calls that README shows on the workshop that <c>init</c> makes, as they stand there.</summary>
public sealed class ReadmeCallTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("labelforge-").FullName;

    [Fact]
    public void The_list_read_in_README_makes_a_material_that_a_new_workshop_does_not_have_yet()
    {
        var shop = Path.Combine(_folder, "my-workshop");
        Assert.Equal(0, CommandRun.Of("init", shop).ExitCode);
        var lines = File.ReadAllLines(Path.Combine(Repository.Folder, "README.md"));
        var call = Assert.Single(lines, l => l.StartsWith("    labelforge material ", StringComparison.Ordinal));
        var quoted = call.Split('"');
        var (name, declaration) = (quoted[1], quoted[3]);
        var run = CommandRun.Of("material", name, "--workshop", shop, "--declaration", declaration);
        Assert.True(run.ExitCode == 0, run.Messages);
        Assert.Contains("Wrote", run.Output);
    }

    public void Dispose() => Directory.Delete(_folder, recursive: true);
}
