using System.Text.Json;
using LabelForge.Checks;
using LabelForge.Markets;
using LabelForge.Measures;
using LabelForge.Print.Drawing;
using LabelForge.Print.Fitting;
using LabelForge.Print.Jobs;
using LabelForge.Recipes;

namespace LabelForge.Cli.Tests.Days;

/// <summary>A gift set's label: said, judged, printed and refused as any label is.</summary>
public sealed class GiftSetTests : IDisposable
{
    private static readonly DateOnly Day = new(2026, 11, 28);
    private const string Lot = "26R25-01E";

    private readonly ExampleWorkshop _example = new();

    public GiftSetTests() =>
        Write("three",
            "name: Three from the hedge\nholds:\n  - { use: bramble-bar }\n  - { use: meadow-bar/Moss Lane, count: 2 }\nprice: "
                + "20.00\npackage: { shape: box, size: 7x3x2 in }\n");

    private string Folder => _example.Opened.Folder;

    public void Dispose() => _example.Dispose();

    private void Write(string id, string text)
    {
        Directory.CreateDirectory(Path.Combine(Folder, GiftSet.Folder));
        File.WriteAllText(Path.Combine(Folder, GiftSet.Folder, $"{id}.yaml"), text);
    }

    private LabelJob Job(string market = "us")
    {
        var workshop = Workshop.Open(Folder);
        return SetLabel.Prepare(workshop, GiftSet.Named(workshop, "three")!, MarketBook.Shipped.Find(market).Value!, null, Day);
    }

    private (int Code, JsonElement Answer) Check(string named, params string[] more)
    {
        var run = CommandRun.Of(["check", named, "--workshop", Folder, "--on", "2026-11-28", "--format", "json", .. more]);
        return (run.ExitCode, JsonDocument.Parse(run.Output).RootElement);
    }

    [Theory]
    [InlineData("three")]
    [InlineData("sets/three")]
    public void A_set_is_named_where_a_recipe_is(string named)
    {
        var (code, answer) = Check(named, "--lot", Lot);
        Assert.Equal(0, code);
        Assert.Equal("1 Bramble & Shea, 2 Moss Lane, Net Wt 4 oz (113 g) each; Total: 3 pieces, Net Wt 12 oz (340 g)",
            answer.GetProperty("found").GetProperty("netQuantity").GetString());
        Assert.Contains(answer.GetProperty("found").GetProperty("ingredients").EnumerateArray(),
            i => i.GetString()!.Contains("; Moss Lane: ", StringComparison.Ordinal));
    }

    // What is wrong with one product in it is wrong on the set's label, and says which product it is.
    [Fact]
    public void An_overdose_in_one_product_stops_the_set_and_names_that_product()
    {
        var path = Path.Combine(Folder, "recipes/bramble-bar.yaml");
        File.WriteAllText(path, File.ReadAllText(path).Replace("1.8 % of batch", "30 % of batch", StringComparison.Ordinal));
        var (code, answer) = Check("three", "--lot", Lot);
        Assert.Equal(1, code);
        var must = answer.GetProperty("findings").EnumerateArray().First(f => f.GetProperty("rule").GetString() == "fragrance.over-limit");
        Assert.StartsWith("bramble-bar: ", must.GetProperty("where").GetString(), StringComparison.Ordinal);
        var pdf = Path.Combine(Folder, "set.pdf");
        foreach (var call in (string[][])[["sheet", "three", "--lot", Lot, "--stock", "us-letter-4-4.25x5.5in", "--count", "1", "--out",
            pdf], ["label", "three", "--lot", Lot, "--out", pdf], ["table", "gift-set", "three", "--out", pdf]])
        {
            var run = CommandRun.Of([.. call, "--workshop", Folder, "--on", "2026-11-28"]);
            Assert.Equal(1, run.ExitCode);
            Assert.Contains("fragrance.over-limit", run.Messages, StringComparison.Ordinal);
            Assert.False(File.Exists(pdf));
        }
        Assert.Equal(0, CommandRun.Of([.. Despite("table", "gift-set", "three"), "--out", pdf]).ExitCode);
        Assert.True(File.Exists(pdf));
    }

    private string[] Despite(params string[] call) =>
        [.. call, "--despite", "fragrance.over-limit", "--workshop", Folder, "--on", "2026-11-28"];

    [Fact]
    public void What_the_sets_own_name_promises_is_judged()
    {
        Write("three", "name: Eczema cure box\nholds:\n  - { use: bramble-bar }\n  - { use: meadow-bar/Moss Lane }\n");
        Assert.Contains(Job().Check().Findings, f => f.Rule.StartsWith("claim.drug", StringComparison.Ordinal));
    }

    [Fact]
    public void What_is_so_of_all_of_them_is_said_once()
    {
        var yaml = Path.Combine(Folder, "workshop.yaml");
        File.WriteAllText(yaml, File.ReadAllText(yaml).Replace("city: Lower Wendle", "city: \"\"", StringComparison.Ordinal));
        var findings = Job().Check().Findings;
        Assert.Single(findings, f => f.Rule == "business-place.missing");
        Assert.Single(findings, f => f.Rule == "lot.missing");
    }

    [Fact]
    public void The_letters_of_its_weight_are_measured_by_its_own_front()
    {
        var job = Job();
        // A box of 7 by 3 in has 21 square inches in front: 1/8 inch (21 CFR 701.13(i)); a bar of 2.2 in square has less than 5.
        Assert.Equal(3.175m, job.Content.Floors.NetQuantity.Height.Millimetres);
        Assert.DoesNotContain(job.Check().Findings, f => f.Rule == "net-quantity.type-too-small");
    }

    [Fact]
    public void A_bar_and_a_scrub_are_dissimilar_and_each_states_its_own()
    {
        // 16 CFR 500.29(a): an expression for each, those of identical pieces put together; it asks for no total.
        Write("three", "name: Shore box\nholds:\n  - { use: bramble-bar, count: 2 }\n  - { use: sugar-scrub }\n");
        Assert.Equal("2 Bramble & Shea, Net Wt 4 oz (113 g) each; 1 Tideline Polish, Net Wt 8 oz (226 g)", Job().Content.NetQuantity);
        Assert.DoesNotContain(Job().Check().Findings, f => f.Severity == Severity.Must);
    }

    // 16 CFR 500.28(a): similar and not identical, so the number of each and its figure, and the total last, with the count.
    [Fact]
    public void Bars_of_two_sizes_state_each_and_the_total_last()
    {
        var path = Path.Combine(Folder, "recipes/bramble-bar.yaml");
        File.WriteAllText(path, File.ReadAllText(path).Replace("net: 4 oz", "net: 3 oz", StringComparison.Ordinal));
        var job = Job();
        Assert.Equal("1 Bramble & Shea, Net Wt 3 oz (85 g); 2 Moss Lane, Net Wt 4 oz (113 g) each; Total: 3 pieces, Net Wt 11 oz (311 g)",
            job.Content.NetQuantity);
        Assert.DoesNotContain(job.Check().Findings, f => f.Severity == Severity.Must);
    }

    [Fact]
    public void Pieces_of_one_product_are_identical_and_say_their_number_first()
    {
        Write("three", "name: Three of one\nholds:\n  - { use: bramble-bar, count: 3 }\n");
        Assert.Equal("3 pieces, Net Wt 4 oz (113 g) each, Total Net Wt 12 oz (340 g)", Job().Content.NetQuantity);
    }

    [Fact]
    public void It_looks_as_its_file_says_and_else_as_is_proposed_for_its_name()
    {
        LabelLayout Laid() => Job().Fit.OrRefuse();
        Assert.Equal("colour-block", Laid().Design.Look?.Arrangement);
        File.AppendAllText(Path.Combine(Folder, GiftSet.Folder, "three.yaml"), "look: { palette: 200, types: round }\n");
        Assert.Equal((200, "round"), (Math.Round(Laid().Design.Look?.Palette.Hue ?? 0), Laid().Design.Look?.Types));
        File.WriteAllText(Path.Combine(Folder, GiftSet.Folder, "three.yaml"),
            "name: Three\nholds: [ { use: bramble-bar, count: 2 } ]\nlook: { arrangement: heap }\n");
        Assert.Contains("heap", Assert.Throws<InputException>(() => Laid()).Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("eu")]
    [InlineData("uk")]
    [InlineData("ca")]
    public void Elsewhere_it_is_stated_and_judged_by_the_law_there(string market)
    {
        var job = Job(market);
        Assert.Contains("total", job.Content.NetQuantity, StringComparison.OrdinalIgnoreCase);
        Assert.NotEmpty(job.Check().Findings);
    }

    [Fact]
    public void Its_labels_are_laid_on_sheets_and_bind_no_lot_to_one_of_its_products()
    {
        var pdf = Path.Combine(Folder, "set.pdf");
        CommandRun.Of("batch", "start", "bramble-bar", "--workshop", Folder, "--on", "2026-11-25");
        var run = CommandRun.Of("sheet", "three", "--lot", new Lots.LotCode(Day, 9).ToString(), "--stock", "us-letter-4-4.25x5.5in",
            "--count", "4", "--workshop", Folder, "--on", "2026-11-28", "--out", pdf);
        Assert.True(run.ExitCode == 0, run.Messages);
        Assert.Empty(Records.Books.OpenBooks.Open(Folder).Read().Printings);
    }

    [Theory]
    [InlineData("name: One\nholds: [ { use: bramble-bar } ]\n", "at least two pieces")]
    [InlineData("name: Two\nholds: [ bramble-bar ]\n", "not a product and its number")]
    [InlineData("name: Two\nholds: [ { use: bramble-bar, count: many } ]\n", "not how many are in it")]
    [InlineData("name: Two\nholds: [ { use: meadow-bar, count: 2 } ]\n", "makes 6 products")]
    [InlineData("name: Two\nholds: [ { use: nobody, count: 2 } ]\n", "nobody")]
    public void A_file_that_cannot_be_used_says_why(string text, string says)
    {
        Write("three", text);
        Assert.Contains(says, Assert.Throws<InputException>(() => Job()).Message, StringComparison.Ordinal);
    }
}
