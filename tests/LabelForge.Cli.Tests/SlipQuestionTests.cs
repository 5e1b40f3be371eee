namespace LabelForge.Cli.Tests;

/// <summary>What looks like a slip is asked about at once, and written only by one who is sure.</summary>
public sealed class SlipQuestionTests : IDisposable
{
    private readonly ExampleWorkshop _example = new();

    [Fact]
    public void Tonnes_and_a_day_to_come_are_asked_about_and_nothing_is_written_until_one_is_sure()
    {
        var asked = Run("receive", "castor-oil", "131 kg", "--price", "9.50", "--on", "2199-01-01");
        Assert.Equal(2, asked.ExitCode);
        Assert.Contains("yet to come?", asked.Messages);
        Assert.Contains("--sure", asked.Messages);
        Assert.Equal(2, Run("receive", "castor-oil", "131000 kg", "--price", "9.50").ExitCode);
        Assert.False(File.Exists(Path.Combine(_example.Opened.Folder, "records.db")));
        Assert.Equal(0, Run("receive", "castor-oil", "131000 kg", "--price", "9.50", "--sure").ExitCode);
    }

    [Fact]
    public void Ten_times_the_plan_on_the_scale_is_asked_about()
    {
        Assert.Equal(0, Run("batch", "start", "harbour-wall-bar", "--lot", "26R25-01E", "--on", "2026-11-25").ExitCode);
        var asked = Run("batch", "weigh", "26R25-01E", "castor-oil", "400 g", "--on", "2026-11-25");
        Assert.Equal(2, asked.ExitCode);
        Assert.Contains("400 g where 40 g was planned?", asked.Messages);
        Assert.DoesNotContain("400", Run("books", "weighing").Output);
    }

    [Fact]
    public void What_no_pack_is_known_of_is_named_before_anything_is_reckoned()
    {
        var file = Path.Combine(_example.Opened.Folder, "materials", "castor-oil.yaml");
        File.WriteAllLines(file, File.ReadAllLines(file).Where(l => !l.StartsWith("packs:", StringComparison.Ordinal)));
        var refused = Run("buy", "hayloft-bar:8");
        Assert.Equal(2, refused.ExitCode);
        Assert.Contains("castor-oil", refused.Messages);
        Assert.Contains("materials/castor-oil.yaml", refused.Messages);
    }

    [Fact]
    public void A_material_that_cannot_be_read_stops_only_what_uses_it()
    {
        File.WriteAllText(Path.Combine(_example.Opened.Folder, "materials", "old-notes.yaml"), "name: [");
        var declared = Run("declare", "harbour-wall-bar");
        Assert.Equal(0, declared.ExitCode);
        Assert.Contains("materials/old-notes.yaml", declared.Messages);
        File.WriteAllText(Path.Combine(_example.Opened.Folder, "materials", "castor-oil.yaml"), "name: [");
        var refused = Run("declare", "harbour-wall-bar");
        Assert.Equal(2, refused.ExitCode);
        Assert.Contains("materials/castor-oil.yaml", refused.Messages);
    }

    [Fact]
    public void A_recipe_that_cannot_be_read_is_named_where_the_day_and_the_range_leave_it_out()
    {
        File.WriteAllText(Path.Combine(_example.Opened.Folder, "recipes", "old-notes.yaml"), "name: [");
        var today = Run("today");
        Assert.Equal(0, today.ExitCode);
        Assert.Contains("recipes/old-notes.yaml", today.Messages);
        var range = Run("gallery", "--out", Path.Combine(_example.Opened.Folder, "range.pdf"));
        Assert.Equal(0, range.ExitCode);
        Assert.Contains("recipes/old-notes.yaml", range.Messages);
    }

    [Theory]
    [InlineData("labelforge batch close --help", "batch", "close", "26R25-01E", "--piece", "8")]
    [InlineData("labelforge sell --help", "sell", "26R25-01E", "2", "--price", "6")]
    public void A_wrong_word_is_answered_with_a_call_that_shows_the_right_ones(string see, params string[] words)
    {
        var refused = Run(words);
        Assert.Equal(2, refused.ExitCode);
        Assert.Contains(see, refused.Messages);
        Assert.Equal(0, CommandRun.Of(see.Split(' ')[1..]).ExitCode);
    }

    public void Dispose() => _example.Dispose();

    private CommandRun Run(params string[] words) => CommandRun.Of([.. words, "--workshop", _example.Opened.Folder]);
}
