using System.Text.Json;

namespace LabelForge.Cli.Tests;

/// <summary>What <c>check</c> finds when one thing of a lawful workshop is taken away or made wrong.</summary>
public sealed class CheckFindingTests : IDisposable
{
    private const string Lot = "26R25-01E";
    private readonly string _folder = Directory.CreateTempSubdirectory("labelforge-").FullName;

    public CheckFindingTests() => CommandRun.Of("init", _folder);

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    private string Recipe => Path.Combine(_folder, "recipes", "first-bar.yaml");

    [Fact]
    public void The_workshop_to_start_from_has_nothing_that_must_be_mended()
    {
        var (exit, rules) = Check("--lot", Lot);
        Assert.Equal(0, exit);
        Assert.DoesNotContain(rules, r => r.EndsWith("must", StringComparison.Ordinal));
    }

    [Fact]
    public void Two_dozen_open_pairs_take_a_few_lines_and_say_what_settles_them()
    {
        CommandRun.Of("material", "Clear base", "--replace", "--workshop", _folder,
            "--declaration",
            "Glycerin, Water, Sodium Stearate, Propylene Glycol, Sorbitol, Sodium Laurate, Sodium Laureth Sulfate, Sodium Lauryl Sulfate, "
                + "Sodium Chloride, Pentasodium Pentetate, Tetrasodium Etidronate");
        var text = CommandRun.Of("check", Recipe, "--lot", Lot).Output;
        var (_, rules) = Check("--lot", Lot);
        var all = rules.Count(r => r.StartsWith("ingredients.order", StringComparison.Ordinal));
        Assert.InRange(all, 12, 60);
        Assert.Equal(1, text.Split("ingredients.order [").Length - 1);
        Assert.Contains($"And {all - 2} more like these; --format json lists each. labelforge ask writes", text, StringComparison.Ordinal);
    }

    // Sources: 21 CFR 701.11(a) identity; 701.13(a) net quantity; 701.12(a) name and place; FD&C Act section 609(a) contact.
    [Theory]
    [InlineData("recipes/first-bar.yaml", "identity: Glycerin bar soap\n", "", "identity.missing must", 1)]
    [InlineData("recipes/first-bar.yaml", "net: 4 oz", "net: 4.6 oz", "net-quantity.overstated must", 1)]
    [InlineData("recipes/first-bar.yaml", "1.5 % of batch", "4.6 % of batch", "fragrance.over-limit must", 1)]
    [InlineData("recipes/first-bar.yaml", "1.5 % of batch", "4.5 % of batch", "lot.missing should", 0)]
    [InlineData("workshop.yaml", "  city: Exampleton\n", "", "business-place.missing must", 1)]
    [InlineData("materials/orchard-fragrance.yaml", "category 9", "category 4", "fragrance.limit-unknown should", 0)]
    [InlineData("materials/clear-base.yaml", "- Sodium Laurate", "- Sodium Laurrate", "ingredients.name-unknown must", 1)]
    public void One_thing_wrong_is_found(string file, string text, string instead, string finding, int exitCode)
    {
        Change(file, text, instead);
        var (exit, rules) = Check();
        Assert.Contains(finding, rules);
        Assert.Equal(exitCode, exit);
    }

    [Fact]
    public void A_fragrance_just_inside_its_limit_passes()
    {
        Change("recipes/first-bar.yaml", "1.5 % of batch", "4.5 % of batch");
        Assert.DoesNotContain(Check().Rules, r => r.StartsWith("fragrance.over-limit", StringComparison.Ordinal));
    }

    [Fact]
    public void Without_a_street_and_any_contact_nobody_can_report_a_bad_reaction()
    {
        Change("workshop.yaml", "  street: 1 Example Lane\n", "");
        Change("workshop.yaml", "contact:\n  phone: \"555-0142\"\n  web: workbench.example\n", "");
        Assert.Contains("contact.missing must", Check().Rules);
    }

    // Regulation (EC) No 1223/2009, Annex II, 1721; Articles 4 and 19(1)(a): the starter workshop is in the United States.
    // The entry came with (EU) 2023/1490, which Great Britain has not taken over.
    [Theory]
    [InlineData("eu", true)]
    [InlineData("uk", false)]
    public void A_chelator_prohibited_in_the_union_is_found_in_a_base_that_may_be_sold_at_home(string market, bool prohibited)
    {
        Change("materials/clear-base.yaml", "- Sodium Laurate", "- Pentasodium Pentetate");
        Assert.DoesNotContain("substance.prohibited must", Check().Rules);
        var (exit, rules) = Check("--market", market, "--lot", Lot);
        Assert.Equal(1, exit);
        Assert.Equal(prohibited, rules.Contains("substance.prohibited must"));
        Assert.Contains("responsible-person.missing must", rules);
    }

    private void Change(string file, string text, string instead)
    {
        var path = Path.Combine(_folder, file);
        var before = File.ReadAllText(path);
        Assert.Contains(text, before);
        File.WriteAllText(path, before.Replace(text, instead));
    }

    private (int Exit, IReadOnlyList<string> Rules) Check(params string[] more)
    {
        var run = CommandRun.Of(["check", Recipe, "--format", "json", .. more]);
        using var json = JsonDocument.Parse(run.Output);
        return (run.ExitCode, [.. json.RootElement.GetProperty("findings").EnumerateArray()
            .Select(f => $"{f.GetProperty("rule").GetString()} {f.GetProperty("severity").GetString()}")]);
    }
}
