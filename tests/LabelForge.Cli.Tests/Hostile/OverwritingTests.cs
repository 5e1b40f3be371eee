namespace LabelForge.Cli.Tests.Hostile;

/// <summary>A slip in the name of the file to write costs nobody's work.</summary>
public sealed class OverwritingTests : IDisposable
{
    private const string Lot = "26R25-02C";
    private readonly ExampleWorkshop _example = new();

    private string Folder => _example.Opened.Folder;

    private string[] Sheet => ["sheet", "bramble-bar", "--lot", Lot, "--stock", "us-letter-10-2x4in"];

    [Fact]
    public void No_verb_writes_over_the_books()
    {
        // What else is refused: OutputPathTests, for all verbs alike.
        Receive();
        var target = Path.Combine(Folder, "records.db");
        var before = File.ReadAllBytes(target);
        foreach (var call in (string[][])[Sheet, ["batch", "bramble-bar", "--lot", Lot], ["calibrate", "--stock", "us-letter-10-2x4in"],
            ["books", "receipt"], ["trace", "M1"], ["label", "bramble-bar", "--lot", Lot]])
        {
            var run = CommandRun.Of([.. call, "--out", target, "--workshop", Folder]);
            Assert.True(run.ExitCode == 2, $"{call[0]}: {run.ExitCode}, {run.Messages}{run.Output}");
            Assert.Single(run.Messages.Trim().Split('\n'));
            Assert.Equal(before, File.ReadAllBytes(target));
        }
        Assert.Equal(2, CommandRun.Of("check", "bramble-bar", "--report", target, "--workshop", Folder).ExitCode);
        Assert.Equal(2, CommandRun.Of("backup", target, "--force", "--workshop", Folder).ExitCode);
        Assert.Equal(before, File.ReadAllBytes(target));
    }

    [Fact]
    public void A_file_of_another_kind_under_the_right_name_is_kept_unless_forced_and_a_former_print_is_written_over()
    {
        var target = Path.Combine(Folder, "notes.pdf");
        File.WriteAllText(target, "My notes, under a name I slipped in.");
        var refused = CommandRun.Of([.. Sheet, "--out", target, "--workshop", Folder]);
        Assert.Equal(2, refused.ExitCode);
        Assert.Contains("not a PDF", refused.Messages);
        Assert.StartsWith("My notes", File.ReadAllText(target), StringComparison.Ordinal);
        Assert.Equal(0, CommandRun.Of([.. Sheet, "--out", target, "--force", "--workshop", Folder]).ExitCode);
        Assert.Equal(0, CommandRun.Of([.. Sheet, "--out", target, "--workshop", Folder]).ExitCode);
    }

    [Fact]
    public void A_copy_of_the_books_is_written_over_an_older_copy_and_over_nothing_else()
    {
        Receive();
        var copy = Path.Combine(Folder, "copy.db");
        Assert.Equal(0, CommandRun.Of("backup", copy, "--workshop", Folder).ExitCode);
        Assert.Equal(0, CommandRun.Of("backup", copy, "--workshop", Folder).ExitCode);
        File.WriteAllText(copy, "a letter");
        Assert.Equal(2, CommandRun.Of("backup", copy, "--workshop", Folder).ExitCode);
        Assert.Equal("a letter", File.ReadAllText(copy));
    }

    [Fact]
    public void Neither_the_example_nor_a_new_workshop_is_written_over_files_that_say_something_else()
    {
        var folder = Directory.CreateTempSubdirectory("labelforge-").FullName;
        try
        {
            Directory.CreateDirectory(Path.Combine(folder, "materials"));
            var mine = Path.Combine(folder, "materials",
                Directory.GetFiles(NewWorkshop(Path.Combine(folder, "made")), "*.yaml").Select(Path.GetFileName).First()!);
            File.WriteAllText(mine, "name: Mine");
            Assert.Equal(2, CommandRun.Of("init", folder).ExitCode);
            Assert.Equal("name: Mine", File.ReadAllText(mine));
            Assert.False(File.Exists(Path.Combine(folder, "workshop.yaml")));

            var demo = Path.Combine(folder, "demo");
            Assert.Equal(0, CommandRun.Of("demo", "--out", demo, "--on", "2026-11-25").ExitCode);
            var changed = Path.Combine(demo, "workshop", "recipes", "bramble-bar.yaml");
            File.AppendAllText(changed, "# tried on Tuesday\n");
            Assert.Equal(2, CommandRun.Of("demo", "--out", demo, "--on", "2026-11-25").ExitCode);
            Assert.EndsWith("# tried on Tuesday\n", File.ReadAllText(changed), StringComparison.Ordinal);
            Assert.Equal(0, CommandRun.Of("demo", "--out", demo, "--on", "2026-11-25", "--force").ExitCode);
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    public void Dispose() => _example.Dispose();

    private static string NewWorkshop(string folder)
    {
        Assert.Equal(0, CommandRun.Of("init", folder).ExitCode);
        return Path.Combine(folder, "materials");
    }

    private void Receive() =>
        Assert.Equal(0, CommandRun.Of("receive", "castor-oil", "1 kg", "--price", "9.50", "--workshop", Folder).ExitCode);
}
