using System.Text.Json;

namespace LabelForge.Cli.Tests;

/// <summary>A label made elsewhere is held to the rules of the market that the workshop sells in, a maker's own among
/// them.</summary>
public sealed class WorkshopMarketTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("labelforge-").FullName;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Theory]
    [InlineData("", "tv")]
    [InlineData("--market tv", "tv")]
    [InlineData("--market eu", "eu")]
    public void A_label_made_elsewhere_is_held_to_the_rules_of_the_workshop_s_market(string more, string market)
    {
        Assert.Equal(0, CommandRun.Of("init", _folder).ExitCode);
        var own = Directory.CreateDirectory(Path.Combine(_folder, "markets", "tv")).FullName;
        var made = Path.Combine(Repository.Folder, "tests", "LabelForge.Tests", "Markets", "tv");
        foreach (var file in Directory.EnumerateFiles(made))
            File.Copy(file, Path.Combine(own, Path.GetFileName(file)));
        var business = Path.Combine(_folder, "workshop.yaml");
        File.WriteAllText(business, File.ReadAllText(business).Replace("market: us", "market: tv", StringComparison.Ordinal));
        var label = Path.Combine(_folder, "label.txt");
        File.WriteAllText(label, "Tideline\nIngredients: Aqua, Glycerin\n");
        using var told = JsonDocument.Parse(CommandRun.Of(["check", label, "--workshop", _folder, "--on", "2026-11-26", "--format", "json",
            .. more.Split(' ', StringSplitOptions.RemoveEmptyEntries)]).Output);
        Assert.Equal(market, told.RootElement.GetProperty("market").GetString());
    }
}
