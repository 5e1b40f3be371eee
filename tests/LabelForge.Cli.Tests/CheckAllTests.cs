using System.Text.Json;
using LabelForge.Checks;
using LabelForge.Cli.Verbs;
using LabelForge.Markets;
using LabelForge.UseCases;

namespace LabelForge.Cli.Tests;

public sealed class CheckAllTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("labelforge-").FullName;

    public CheckAllTests() => Assert.Equal(0, CommandRun.Of("init", _folder).ExitCode);

    private string Recipe => Path.Combine(_folder, "recipes", "first-bar.yaml");

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public void A_workshop_is_judged_product_by_product_and_market_by_market()
    {
        var run = CommandRun.Of("check", "--all", "--workshop", _folder, "--market", "us,ca", "--format", "json");
        using var json = JsonDocument.Parse(run.Output);
        Assert.Equal([("first-bar", "us"), ("first-bar", "ca")],
            json.RootElement.GetProperty("products").EnumerateArray()
                .Select(p => (p.GetProperty("name").GetString(), p.GetProperty("market").GetString())));
        var table = CommandRun.Of("check", "--all", "--workshop", _folder, "--market", "us,ca").Output;
        Assert.Contains("first-bar", table, StringComparison.Ordinal);
    }

    [Fact]
    public void Its_exit_code_is_the_worst_of_its_products()
    {
        Assert.Equal(0, CommandRun.Of("check", "--all", "--workshop", _folder).ExitCode);
        File.Copy(Recipe, Path.Combine(_folder, "recipes", "other-bar.yaml"));
        File.WriteAllText(Recipe, File.ReadAllText(Recipe).Replace("identity: ", "identity: \" \" # ", StringComparison.Ordinal));
        var run = CommandRun.Of("check", "--all", "--workshop", _folder);
        Assert.Equal(1, run.ExitCode);
        Assert.Contains("MUST first-bar (us) identity.missing", run.Output, StringComparison.Ordinal);
    }

    [Fact]
    public void A_recipe_that_cannot_be_read_is_said_and_stops_no_other()
    {
        File.WriteAllText(Path.Combine(_folder, "recipes", "broken.yaml"), "name: [");
        var run = CommandRun.Of("check", "--all", "--workshop", _folder);
        Assert.Equal(2, run.ExitCode);
        Assert.Contains("not judged", run.Output, StringComparison.Ordinal);
        Assert.Contains("first-bar", run.Output, StringComparison.Ordinal);
    }

    [Fact]
    public void Two_products_of_one_GTIN_are_told_of_each_other_whatever_zeros_stand_before_the_number()
    {
        string Told() => string.Join('\n', CommandRun.Json("check", "--all", "--workshop", _folder).GetProperty("products").EnumerateArray()
            .SelectMany(p => p.GetProperty("findings").EnumerateArray()
                .Where(f => f.GetProperty("rule").GetString() == "gtin.shared")
                .Select(f => $"{p.GetProperty("name")}: {f.GetProperty("message")}")));
        var recipe = File.ReadAllText(Recipe);
        File.WriteAllText(Path.Combine(_folder, "recipes", "other-bar.yaml"), recipe + "item: \"007\"\n");
        File.WriteAllText(Recipe, recipe + "item: \"7\"\n");
        Assert.Empty(Told());
        File.AppendAllText(Path.Combine(_folder, "workshop.yaml"), "\ngtin prefix: \"9521321\"\n");
        Assert.StartsWith("first-bar: The item number 7 is that of other-bar as well", Told(), StringComparison.Ordinal);
        Assert.Contains("other-bar: The item number 007 is that of first-bar as well", Told(), StringComparison.Ordinal);
        File.WriteAllText(Path.Combine(_folder, "recipes", "other-bar.yaml"), recipe + "item: \"70\"\n");
        Assert.Empty(Told());
    }

    [Fact]
    public void A_folder_of_labels_is_judged_label_by_label()
    {
        var labels = Directory.CreateDirectory(Path.Combine(_folder, "old")).FullName;
        Assert.Equal(0,
            CommandRun.Of("label", "first-bar", "--workshop", _folder, "--lot", "26R26-024", "--out",
                Path.Combine(labels, "a.pdf")).ExitCode);
        File.WriteAllText(Path.Combine(labels, "b.txt"), "Harbour soap\nHeals eczema\n");
        var run = CommandRun.Of("check", labels);
        Assert.Equal(1, run.ExitCode);
        Assert.Contains("a.pdf", run.Output, StringComparison.Ordinal);
        Assert.Contains("MUST b.txt (us) claim.drug", run.Output, StringComparison.Ordinal);
    }

    [Fact]
    public void A_folder_of_labels_ends_with_its_worst_and_a_file_that_cannot_be_read_stops_no_other()
    {
        var labels = Directory.CreateDirectory(Path.Combine(_folder, "old")).FullName;
        File.WriteAllText(Path.Combine(labels, "right.txt"), RightLabel);
        var run = CommandRun.Of("check", labels);
        Assert.Equal(0, run.ExitCode);
        Assert.Contains("1 looked at, 0 with something that a rule requires, 0 not judged", run.Output, StringComparison.Ordinal);
        File.WriteAllText(Path.Combine(labels, "wrong.txt"), RightLabel.Replace("Net Wt 4 oz (113 g)", "", StringComparison.Ordinal));
        Assert.Equal(1, CommandRun.Of("check", labels).ExitCode);
        File.WriteAllText(Path.Combine(labels, "broken.pdf"), "%PDF-1.4 and nothing after it");
        var worst = CommandRun.Of("check", labels);
        Assert.Equal(2, worst.ExitCode);
        Assert.Matches(@"broken\.pdf\s+us\s+not judged", worst.Output);
        Assert.Matches(@"right\.txt\s+us\s+-\s", worst.Output);
        Assert.Matches(@"wrong\.txt\s+us\s+[1-9]", worst.Output);
        Assert.Contains("3 looked at, 1 with something that a rule requires, 1 not judged", worst.Output, StringComparison.Ordinal);
        var json = CommandRun.Of("check", labels, "--format", "json");
        Assert.Equal(2, json.ExitCode);
        Assert.Contains("broken.pdf", json.Messages, StringComparison.Ordinal);
        using var read = JsonDocument.Parse(json.Output);
        Assert.Equal(["right.txt", "wrong.txt"],
            read.RootElement.GetProperty("products").EnumerateArray().Select(p => p.GetProperty("name").GetString()));
    }

    [Fact]
    public void A_folder_without_labels_is_said() =>
        Assert.Equal(2, CommandRun.Of("check", Directory.CreateDirectory(Path.Combine(_folder, "empty")).FullName).ExitCode);

    // The same judgement as the page and other programs ask for it.
    [Fact]
    public void Each_product_has_a_row_for_each_market_with_its_counts()
    {
        File.WriteAllText(Path.Combine(_folder, "recipes", "broken.yaml"), "name: [");
        File.WriteAllText(Recipe, File.ReadAllText(Recipe).Replace("identity: ", "identity: \" \" # ", StringComparison.Ordinal));
        var judged = WorkshopJudgement.Of(Shared.OpenFolder(_folder), [Market.Us, Market.Named("ca")], new DateOnly(2026, 11, 26));
        Assert.Equal([("broken", "us"), ("broken", "ca"), ("first-bar", "us"), ("first-bar", "ca")],
            judged.Select(j => (j.Product, j.Market.Id)));
        Assert.All(judged.Take(2), j => Assert.True(j is { Report: null, Problem: not null }));
        Assert.All(judged.Skip(2), j => Assert.Equal(j.Report!.Findings.Count(f => f.Severity == Severity.Must), j.Count(Severity.Must)));
        Assert.True(judged[2].Count(Severity.Must) > 0);
    }

    private const string RightLabel = """
        Tern & Thistle
        Bar soap
        Net Wt 4 oz (113 g)
        Ingredients: Sodium Olivate, Sodium Cocoate, Water, Glycerin, Fragrance
        Lot TT-26
        Tern & Thistle LLC
        12 Example Street, Fairport, ME 00000
        ternandthistle.example
        """;

    [Theory]
    [InlineData("label")]
    [InlineData("sheet")]
    [InlineData("batch")]
    public void What_breaks_a_rule_is_not_printed_unless_the_rule_is_named(string verb)
    {
        File.WriteAllText(Recipe, File.ReadAllText(Recipe).Replace("identity: ", "identity: \" \" # ", StringComparison.Ordinal));
        var file = Path.Combine(_folder, "out.pdf");
        string[] call = [verb, "first-bar", "--workshop", _folder, "--lot", "26R26-024", "--out", file,
            .. verb == "sheet" ? new[] { "--stock", "us-letter-10-2x4in" } : []];
        var stopped = CommandRun.Of(call);
        Assert.Equal((1, ""), (stopped.ExitCode, stopped.Output));
        Assert.Contains("identity.missing", stopped.Messages, StringComparison.Ordinal);
        Assert.False(File.Exists(file));
        Assert.Equal(1, CommandRun.Of([.. call, "--despite", "net-quantity.missing"]).ExitCode);
        Assert.Equal(0, CommandRun.Of([.. call, "--despite", "identity.missing"]).ExitCode);
        Assert.True(File.Exists(file));
    }

    [Fact]
    public void A_proof_is_always_printed()
    {
        File.WriteAllText(Recipe, File.ReadAllText(Recipe).Replace("identity: ", "identity: \" \" # ", StringComparison.Ordinal));
        Assert.Equal(0,
            CommandRun.Of("label", "first-bar", "--workshop", _folder, "--lot", "26R26-024", "--proof", "--out",
                Path.Combine(_folder, "proof.pdf")).ExitCode);
    }
}
