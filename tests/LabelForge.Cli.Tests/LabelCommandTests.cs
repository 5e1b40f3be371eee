namespace LabelForge.Cli.Tests;

public sealed class LabelCommandTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("labelforge-").FullName;
    private readonly string _bar;

    public LabelCommandTests()
    {
        CommandRun.Of("init", _folder);
        _bar = Path.Combine(_folder, "recipes", "first-bar.yaml");
    }

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public void What_a_design_has_no_place_for_is_told_and_the_label_is_still_drawn()
    {
        var run = Label("--design", "carton-4x6");
        Assert.Equal(0, run.ExitCode);
        Assert.Contains("Note: The design carton-4x6 has no place for the ingredients.", run.Messages);
        Assert.True(File.Exists(Drawn));
    }

    [Fact]
    public void A_label_for_several_markets_names_water_both_ways()
    {
        Assert.Equal(0, Label("--names", "dual").ExitCode);
        Assert.Contains("Aqua (Water)", UglyToad.PdfPig.PdfDocument.Open(Drawn).GetPage(1).Text);
    }

    [Fact]
    public void A_design_of_ones_own_is_listed_and_used_and_its_mistakes_are_told_by_line()
    {
        var own = Path.Combine(_folder, "designs", "mine.yaml");
        Directory.CreateDirectory(Path.GetDirectoryName(own)!);
        File.WriteAllText(own, """
            name: Mine
            width: 4 in
            height: 2 in
            with: [bar-2x4]
            panels:
              front:
                width: 4 in
                height: 2 in
                padding: 3 mm
                elements:
                  - { role: name, place: middle, most: 3 mm }
            """);
        Assert.Contains("(your own)", CommandRun.Of("design", "--workshop", _folder).Output);
        Assert.Equal(0, Label("--design", "mine").ExitCode);
        File.WriteAllText(own, File.ReadAllText(own).Replace("role: name", "role: nme"));
        var wrong = Label("--design", "mine");
        Assert.Equal(2, wrong.ExitCode);
        Assert.StartsWith("designs/mine.yaml, line 11:", wrong.Messages);
    }

    private string Drawn => Path.Combine(_folder, "label.pdf");

    private CommandRun Label(params string[] more) => CommandRun.Of(["label", _bar, "--lot", "26R25-01E", "--out", Drawn, .. more]);
}
