using System.Text.Json;

namespace LabelForge.Cli.Tests;

public sealed class SoapVerbTests(ExampleWorkshop example) : IClassFixture<ExampleWorkshop>
{
    private string Bar => Path.Combine(example.Opened.Folder, "recipes", "harbour-wall-bar.yaml");

    [Fact]
    public void The_soap_of_the_example_comes_out_as_heavy_as_its_oils_and_lye_went_in()
    {
        var run = CommandRun.Of("soap", Bar, "--format", "json");
        Assert.Equal((0, ""), (run.ExitCode, run.Messages));
        using var json = JsonDocument.Parse(run.Output);
        var root = json.RootElement;
        // 770 g of oils and 109.345 g of lye: 60 g of shea at 177.5 mg KOH/g, the middle of 160 to 195.
        Assert.Equal(879.345m,
            decimal.Round(root.GetProperty("made").EnumerateArray().Sum(s => s.GetProperty("grams").GetProperty("middle").GetDecimal()),
                3));
        Assert.Equal(5m, decimal.Round(root.GetProperty("superfatPercent").GetProperty("middle").GetDecimal(), 9));
        Assert.Equal(985m, root.GetProperty("finishedGrams").GetDecimal());
    }

    [Theory]
    [InlineData("soap")]
    [InlineData("declare")]
    public void The_screen_shows_the_cautions_of_lye(string verb)
    {
        var run = CommandRun.Of(verb, Bar);
        Assert.Equal((0, ""), (run.ExitCode, run.Messages));
        Assert.Contains("lye into water", run.Output);
        Assert.Contains("Goggles", run.Output);
    }

    [Fact]
    public void The_declaration_of_the_example_names_what_came_out() => Assert.StartsWith(
        "Ingredients: Sodium Olivate, Sodium Cocoate, Water, Glycerin, Sodium Shea Butterate, Sodium Castorate, Olea Europaea (Olive) "
            + "Fruit Oil, Cocos Nucifera (Coconut) Oil",
        CommandRun.Of("declare", Bar).Output);

    [Fact]
    public void Lye_that_could_be_left_over_ends_with_one()
    {
        var lean = Path.Combine(Path.GetDirectoryName(Bar)!, "lean-bar.yaml");
        File.WriteAllText(lean, File.ReadAllText(Bar).Replace("superfat: 5 %", "superfat: 1 %", StringComparison.Ordinal));
        try
        {
            foreach (var verb in new[] { "soap", "declare", "check" })
            {
                var run = CommandRun.Of(verb, lean);
                Assert.Equal(1, run.ExitCode);
                Assert.Contains("lye.excess", run.Output);
            }
        }
        finally
        {
            File.Delete(lean);
        }
    }

    [Fact]
    public void A_bar_of_bought_base_is_told_where_to_go()
    {
        var run = CommandRun.Of("soap", Path.Combine(example.Opened.Folder, "recipes", "hayloft-bar.yaml"));
        Assert.Equal((2, ""), (run.ExitCode, run.Output));
        Assert.Contains("labelforge declare", run.Messages);
    }
}
