namespace LabelForge.Cli.Tests;

/// <summary>A market that no code knows, from a folder alone, through the command: declared,
/// drawn, laid on sheets, read back and judged.</summary>
public sealed class FifthMarketCommandTests : IDisposable
{
    private static readonly string Testovia = Path.Combine(AppContext.BaseDirectory, "tv");
    private readonly string _folder = Directory.CreateTempSubdirectory("labelforge-").FullName;

    public FifthMarketCommandTests() => Assert.Equal(0, CommandRun.Of("init", _folder).ExitCode);

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    private CommandRun Run(params string[] words) => CommandRun.Of([.. words, "--market", Testovia, "--on", "2026-11-26"]);

    private string Made(string file) => Path.Combine(_folder, file);

    [Fact]
    public void Its_label_is_drawn_by_its_own_figures_and_words_and_judged_by_its_own_rules()
    {
        var declared = Run("declare", "first-bar", "--workshop", _folder);
        Assert.StartsWith("Contents of the thing: ", declared.Output, StringComparison.Ordinal);
        foreach (var ending in new[] { "pdf", "svg", "png" })
            Assert.Equal(0,
                Run("label", "first-bar", "--workshop", _folder, "--lot", "26R26-024", "--out", Made($"label.{ending}")).ExitCode);
        // Read back: a metric quantity alone, the heading of its folder, and none of its rules broken.
        var read = Run("check", Made("label.pdf"), "--format", "json");
        Assert.Equal(0, read.ExitCode);
        using var json = System.Text.Json.JsonDocument.Parse(read.Output);
        Assert.Equal("tv", json.RootElement.GetProperty("market").GetString());
        Assert.Matches("^[0-9]+ g$", json.RootElement.GetProperty("found").GetProperty("netQuantity").GetString());
        Assert.NotEqual(0, json.RootElement.GetProperty("found").GetProperty("ingredients").GetArrayLength());
        // Without a lot its own rule of the lot is broken.
        File.WriteAllText(Made("words.txt"), "First Bar\nContents of the thing: Aqua, Glycerin\n100 g");
        Assert.Contains("lot.missing", Run("check", Made("words.txt")).Output, StringComparison.Ordinal);
    }

    [Fact]
    public void Its_labels_are_laid_on_sheets_and_a_proof_measures_its_rules()
    {
        Assert.Equal(0,
            Run("sheet", "first-bar", "--workshop", _folder, "--lot", "26R26-024", "--stock", "us-letter-10-2x4in", "--out",
                Made("sheet.pdf")).ExitCode);
        Assert.Equal(0,
            Run("label", "first-bar", "--workshop", _folder, "--lot", "26R26-024", "--proof", "--out", Made("proof.pdf")).ExitCode);
        Assert.Contains("250 ml", CommandRun.Of("quantity", "250 mL", "--market", Testovia).Output, StringComparison.Ordinal);
    }

    // A market that the workshop keeps itself is named in workshop.yaml as any other, and needs no option.
    [Fact]
    public void A_workshop_may_keep_a_market_of_its_own_and_sell_in_it_first()
    {
        Directory.CreateDirectory(Made("markets/tv"));
        foreach (var file in Directory.EnumerateFiles(Testovia))
            File.Copy(file, Made($"markets/tv/{Path.GetFileName(file)}"));
        File.WriteAllText(Made("workshop.yaml"),
            File.ReadAllText(Made("workshop.yaml")).Replace("market: us", "market: tv", StringComparison.Ordinal));
        string[] here = ["--workshop", _folder, "--on", "2026-11-26"];
        Assert.StartsWith("Contents of the thing: ", CommandRun.Of(["declare", "first-bar", .. here]).Output, StringComparison.Ordinal);
        Assert.Equal(0, CommandRun.Of(["batch", "begin", "first-bar=6", .. here]).ExitCode);
        Assert.Equal(0, CommandRun.Of(["label", "first-bar", "--lot", "26R26-016", "--out", Made("label.pdf"), .. here]).ExitCode);
        Assert.Matches("first-bar +tv ", CommandRun.Of(["check", "--all", "--market", "all", .. here]).Output);
        // Its name may not be that of a market that ships.
        Directory.Move(Made("markets/tv"), Made("markets/uk"));
        Assert.Contains("markets/uk/market.yaml", CommandRun.Of(["declare", "first-bar", .. here]).Messages.Replace('\\', '/'),
            StringComparison.Ordinal);
    }

    [Fact]
    public void A_figure_that_its_folder_lacks_is_named()
    {
        Directory.CreateDirectory(Made("nordia"));
        File.Copy(Path.Combine(Testovia, "market.yaml"), Made("nordia/market.yaml"));
        var refused = CommandRun.Of("declare", "first-bar", "--workshop", _folder, "--market", Made("nordia"));
        Assert.Equal(2, refused.ExitCode);
        Assert.Contains("nordia/figures.yaml: Testovia has no figure ingredients.heading.", refused.Messages, StringComparison.Ordinal);
    }
}
