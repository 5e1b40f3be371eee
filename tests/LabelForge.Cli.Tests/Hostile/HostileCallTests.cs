namespace LabelForge.Cli.Tests.Hostile;

/// <summary>Calls and workshops made to write or read where they should not, or to make a program of the reader run something.</summary>
public sealed class HostileCallTests : IDisposable
{
    private readonly ExampleWorkshop _example = new();

    private string Folder => _example.Opened.Folder;

    [Theory]
    [InlineData("../../outside")]
    [InlineData("/tmp/outside")]
    [InlineData("a/b")]
    [InlineData("CON")]
    public void A_material_is_written_into_its_folder_whatever_it_is_called(string name)
    {
        var before = Directory.EnumerateFiles(Path.GetDirectoryName(Folder)!, "*.yaml").Count();
        var run = CommandRun.Of("material", name, "--declaration", "Glycerin", "--workshop", Folder);
        Assert.Contains(run.ExitCode, (int[])[0, 2]);
        Assert.Equal(before, Directory.EnumerateFiles(Path.GetDirectoryName(Folder)!, "*.yaml").Count());
        Assert.False(File.Exists("/tmp/outside.yaml"));
    }

    [Theory]
    [InlineData("--design", "../../../etc/passwd")]
    [InlineData("--design", "/etc/passwd")]
    [InlineData("--lot", "../../x")]
    [InlineData("--lot", "26R25-02C; rm -rf /")]
    [InlineData("--workshop", "/nowhere/at/all")]
    [InlineData("--out", "no/such/folder/of/mine/../../../../../../../proc/nothing.pdf")]
    public void A_way_out_in_any_option_is_refused_and_nothing_is_written(string option, string value)
    {
        var target = Path.Combine(Folder, "label.pdf");
        var words = new Dictionary<string, string>
        {
            ["--workshop"] = Folder,
            ["--lot"] = "26R25-02C",
            ["--out"] = target,
            [option] = value,
        };
        var run = CommandRun.Of([.. new[] { "label", "bramble-bar" }.Concat(words.SelectMany(w => new[] { w.Key, w.Value }))]);
        Assert.Equal(2, run.ExitCode);
        Assert.NotEmpty(run.Messages);
        Assert.DoesNotContain("   at ", run.Messages);
        Assert.False(File.Exists(target));
    }

    [Fact]
    public void No_list_of_the_books_holds_a_cell_that_a_spreadsheet_runs()
    {
        const string Formula = "=HYPERLINK(\"http://example.com\")";
        foreach (var words in (string[][])
        [
            ["receive", "castor-oil", "1 kg", "--price", "9.50", "--supplier", Formula, "--lot", "+1+1", "--note", "@SUM(A1)", "--by",
                "-2+3"],
            ["complaint", "--from", Formula, "--what", "\t=1+1", "--note", "=1", "--by", "=1"],
            ["dispose", "M1", "10 g", "--reason", "=cmd|' /C calc'!A0", "--by", "=1"],
        ])
        {
            var run = CommandRun.Of([.. words, "--workshop", Folder]);
            Assert.True(run.ExitCode == 0, run.Messages);
        }
        var lists = Path.Combine(Folder, "lists");
        Assert.Equal(0, CommandRun.Of("books", "all", "--out", lists, "--workshop", Folder).ExitCode);
        Assert.Equal(0, CommandRun.Of("trace", "M1", "--out", Path.Combine(lists, "trace.csv"), "--workshop", Folder).ExitCode);
        var texts = Directory.EnumerateFiles(lists, "*.csv").Select(File.ReadAllText).ToList();
        Assert.Contains(texts, t => t.Contains("HYPERLINK", StringComparison.Ordinal));
        // A formula begins a cell: at the line's start, behind a comma, or behind the quotation mark that opens it.
        Assert.All(texts, t => Assert.DoesNotMatch(@"(?m)(?:^|,)""?[=@\t]", t));
        Assert.All(texts, t => Assert.DoesNotMatch(@"(?m)(?:^|,)""?[+-](?![0-9.]+(?:,|\r?$))", t));
    }

    [Theory]
    [InlineData("\\u202Eaehs", "U+202E")]
    [InlineData("\\u2066Shea", "U+2066")]
    [InlineData("\\aShea", "U+0007")]
    public void Signs_of_control_and_signs_that_turn_the_reading_direction_do_not_reach_a_label(string written, string sign)
    {
        var recipe = Path.Combine(Folder, "recipes", "bramble-bar.yaml");
        File.WriteAllText(recipe,
            File.ReadAllText(recipe).Replace("name: Bramble & Shea", $"name: \"Bramble {written}\"", StringComparison.Ordinal));
        var target = Path.Combine(Folder, "label.svg");
        var run = CommandRun.Of("label", "bramble-bar", "--lot", "26R25-02C", "--workshop", Folder, "--out", target);
        Assert.Equal(2, run.ExitCode);
        Assert.Contains(sign, run.Messages);
        Assert.False(File.Exists(target));
    }

    [Fact]
    public void A_word_that_begins_with_an_at_sign_is_that_word_and_no_file_is_read_for_it()
    {
        var secret = Path.Combine(Folder, "secret.txt");
        File.WriteAllText(secret, "kept to itself");
        var run = CommandRun.Of("quantity", "@" + secret);
        Assert.Equal(2, run.ExitCode);
        Assert.DoesNotContain("kept to itself", run.Messages);
        Assert.Contains("is not an amount", run.Messages);
    }

    public void Dispose() => _example.Dispose();
}
