namespace LabelForge.Cli.Tests;

/// <summary>How high letters must be follows from the package; a recipe that does not say what it is, is asked.</summary>
public sealed class PackageAskedTests : IDisposable
{
    private readonly ExampleWorkshop _example = new();

    [Fact]
    public void A_recipe_without_a_package_is_told_so_by_check_and_by_label_with_the_usual_one_proposed()
    {
        var file = Path.Combine(_example.Opened.Folder, "recipes", "tideline-bar.yaml");
        File.WriteAllLines(file, File.ReadAllLines(file).Where(l => !l.StartsWith("package:", StringComparison.Ordinal)));
        var check = CommandRun.Of("check", file, "--lot", "26R25-01E", "--on", "2026-11-25");
        Assert.Contains("package.missing", check.Output);
        Assert.Contains("package: { shape: bar, size: 3.25x2.25x1 in }", check.Output);
        var label = CommandRun.Of("label", file, "--lot", "26R25-01E", "--on", "2026-11-25", "--out",
            Path.Combine(_example.Opened.Folder, "label.pdf"));
        Assert.Contains("package: { shape: bar, size: 3.25x2.25x1 in }", label.Messages);
    }

    [Fact]
    public void The_example_and_a_new_workshop_say_what_their_packages_are()
    {
        foreach (var recipe in Directory.GetFiles(Path.Combine(_example.Opened.Folder, "recipes")))
            Assert.Contains("\npackage:", File.ReadAllText(recipe));
        var folder = Path.Combine(_example.Opened.Folder, "new");
        Assert.Equal(0, CommandRun.Of("init", folder).ExitCode);
        Assert.DoesNotContain("package.missing", CommandRun.Of("check", Path.Combine(folder, "recipes", "first-bar.yaml")).Output);
    }

    public void Dispose() => _example.Dispose();
}
