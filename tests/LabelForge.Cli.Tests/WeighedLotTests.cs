using System.Text.Json;

namespace LabelForge.Cli.Tests;

/// <summary>An overdose at the bench breaks the same limits as one in the recipe: at weighing, at
/// closing, in the check and before printing.</summary>
public sealed class WeighedLotTests : IDisposable
{
    private const string On = "2026-11-25";
    private const string Lot = "26R25-01E";
    private readonly string _shop = Directory.CreateTempSubdirectory("labelforge-").FullName;

    public WeighedLotTests()
    {
        Write("workshop.yaml",
            "business: Rooksedge Bodycare\nplace: { street: 1 Example Lane, city: Fairport, region: ME, postcode: \"00000\", country: US "
                + "}\ncontact: { phone: \"555-0100\" }\nmarket: us\n");
        Write("materials/base.yaml", "name: Base\nkind: base\ncontains:\n  - Glycerin: 60 %\n  - Water: 40 %\n");
        Write("materials/scent.yaml",
            "name: Scent\nkind: fragrance\ncontains: Fragrance\nlimits: { category 9: 5 % }\nallergens: { Linalool: 0.3 % }\n");
        Write("recipes/bar.yaml",
            "name: Bar\nidentity: Glycerin bar soap\nproduct: soap-bar\nmaterials:\n  - { use: base, amount: 980 g }\n  - { use: scent, "
                + "amount: 20 g }\npieces: 8\nnet: 113 g\n");
        Assert.Equal(0, Run("batch", "start", "bar", "--lot", Lot).ExitCode);
    }

    public void Dispose() => Directory.Delete(_shop, recursive: true);

    [Fact]
    public void What_is_weighed_in_parts_and_as_planned_breaks_nothing()
    {
        Assert.DoesNotContain("MUST", Run("batch", "weigh", Lot, "base", "200 g").Output, StringComparison.Ordinal);
        Assert.DoesNotContain("MUST", Run("batch", "weigh", Lot, "scent", "20 g").Output, StringComparison.Ordinal);
        Assert.DoesNotContain("MUST", Run("batch", "weigh", Lot, "base", "780 g").Output, StringComparison.Ordinal);
        Assert.Equal(0, Run("batch", "close", Lot, "--made", "8").ExitCode);
        Assert.Equal(0, Run("check", "bar", "--lot", Lot).ExitCode);
        Assert.Equal(0, Run("label", "bar", "--lot", Lot, "--out", Path.Combine(_shop, "label.pdf")).ExitCode);
    }

    [Fact]
    public void An_overdose_breaks_its_limit_from_the_bench_to_the_printer()
    {
        Run("batch", "weigh", Lot, "base", "980 g");
        var weighed = Run("batch", "weigh", Lot, "scent", "60 g", "--sure");
        Assert.Equal(1, weighed.ExitCode);
        Assert.Contains("fragrance.over-limit", weighed.Output, StringComparison.Ordinal);

        var closed = Run("batch", "close", Lot, "--made", "8", "--format", "json");
        Assert.Equal(1, closed.ExitCode);
        using (var json = JsonDocument.Parse(closed.Output))
            Assert.Contains(json.RootElement.GetProperty("findings").EnumerateArray(),
                f => f.GetProperty("rule").GetString() == "fragrance.over-limit");

        var check = Run("check", "bar", "--lot", Lot);
        Assert.Equal(1, check.ExitCode);
        Assert.Contains("fragrance.over-limit", check.Output, StringComparison.Ordinal);
        Assert.Equal(0, Run("check", "bar").ExitCode);

        foreach (var (verb, more) in new (string, string[])[] { ("label", []), ("sheet", ["--stock", "us-letter-10-2x4in"]) })
        {
            var file = Path.Combine(_shop, verb + ".pdf");
            var stopped = Run([verb, "bar", "--lot", Lot, "--out", file, .. more]);
            Assert.Equal((1, "", false), (stopped.ExitCode, stopped.Output, File.Exists(file)));
            Assert.Contains("--despite fragrance.over-limit", stopped.Messages, StringComparison.Ordinal);
            Assert.Equal(0, Run([verb, "bar", "--lot", Lot, "--out", file, "--despite", "fragrance.over-limit", .. more]).ExitCode);
            Assert.True(File.Exists(file));
        }
        Assert.Equal(0, Run("label", "bar", "--lot", Lot, "--proof", "--out", Path.Combine(_shop, "proof.pdf")).ExitCode);
    }

    private CommandRun Run(params string[] words) => CommandRun.Of([.. words, "--workshop", _shop, "--on", On]);

    private void Write(string file, string text)
    {
        var path = Path.Combine(_shop, file);
        Directory.CreateDirectory(Path.GetDirectoryName(path)!);
        File.WriteAllText(path, text);
    }
}
