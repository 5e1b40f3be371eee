using System.Text.Json;

namespace LabelForge.Cli.Tests;

public sealed class DeclareCommandTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("labelforge-").FullName;

    public DeclareCommandTests() => Copy("bath-salt", "bramble-bar");

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public void An_assortment_is_declared_product_by_product_and_the_fixed_JSON_stays()
    {
        var run = CommandRun.Of("declare", "bath-salt", "--workshop", _folder, "--market", "eu", "--on", "2026-11-25", "--format", "json");
        Assert.Equal((0, ""), (run.ExitCode, run.Messages));
        using var json = JsonDocument.Parse(run.Output);
        Assert.Equal("eu", json.RootElement.GetProperty("market").GetString());
        Assert.StartsWith("Ingredients: Magnesium Sulfate, ", json.RootElement.GetProperty("statement").GetString());
        var first = json.RootElement.GetProperty("ingredients")[0];
        Assert.Equal("main", first.GetProperty("part").GetString());
        Assert.True(first.GetProperty("percent").GetProperty("low").GetDecimal() > 1);
        Assert.Equal(0, json.RootElement.GetProperty("unproven").GetArrayLength());
        Assert.True(json.RootElement.GetProperty("findings").GetArrayLength() > 0);
        Assert.Equal(3, json.RootElement.GetProperty("variants").GetArrayLength());
        Assert.False(json.RootElement.GetProperty("common").GetProperty("lawful").GetBoolean());
    }

    [Fact]
    public void A_range_that_a_loss_leaves_wider_than_it_need_be_is_called_not_tight()
    {
        foreach (var milk in new[] { "milk-one", "milk-two" })
        {
            File.WriteAllText(Path.Combine(_folder, "materials", milk + ".yaml"),
                $"name: {milk}\nkind: base\ncontains: [ Glycerin: 20-60 %, Water: 10-60 %, Castor Oil: 10-60 % ]\n");
        }
        File.WriteAllText(Path.Combine(_folder, "recipes", "boiled.yaml"),
            "name: Boiled\nidentity: Butter\nproduct: body-butter\npieces: 1\nloss: 38 g water\nmaterials:\n"
            + "  - { use: milk-one, amount: 50 g }\n  - { use: milk-two, amount: 50 g }\n");
        using var json = JsonDocument.Parse(CommandRun.Of("declare", "boiled", "--workshop", _folder, "--format", "json").Output);
        var tight = json.RootElement.GetProperty("ingredients").EnumerateArray()
            .ToDictionary(i => i.GetProperty("name").GetString()!, i => i.GetProperty("tight").GetBoolean());
        Assert.Equal((false, true), (tight["Glycerin"], tight["Water"]));
        var explained = CommandRun.Of("declare", "boiled", "--workshop", _folder, "--explain").Output;
        Assert.Contains(", not tight", explained, StringComparison.Ordinal);
        Assert.Contains("Not tight: what was lost came from several materials", explained, StringComparison.Ordinal);
    }

    [Fact]
    public void The_scents_of_a_recipe_are_told_with_the_most_that_the_batch_can_take()
    {
        var run = CommandRun.Of("fragrance", "bramble-bar", "--workshop", _folder, "--market", "eu", "--format", "json");
        Assert.Equal((0, ""), (run.ExitCode, run.Messages));
        using var json = JsonDocument.Parse(run.Output);
        var most = json.RootElement.GetProperty("most")[0];
        Assert.True(most.GetProperty("grams").GetDecimal() > 0 && most.GetProperty("drops").GetInt32() > 0);
        Assert.True(json.RootElement.GetProperty("allergens")[0].GetProperty("named").GetBoolean());
    }

    [Fact]
    public void Of_each_ingredient_it_is_said_on_what_its_place_rests()
    {
        var run = CommandRun.Of("declare", "bramble-bar", "--workshop", _folder, "--on", "2026-11-25", "--format", "json");
        using var json = JsonDocument.Parse(run.Output);
        var ingredients = json.RootElement.GetProperty("ingredients").EnumerateArray()
            .ToDictionary(i => i.GetProperty("name").GetString()!, i => i);
        Assert.Equal("proved", ingredients["Glycerin"].GetProperty("placed").GetString());
        Assert.Equal("usual", ingredients["Ricinus Communis (Castor) Seed Oil"].GetProperty("placed").GetString());
        Assert.All(ingredients.Values,
            i => Assert.InRange(i.GetProperty("estimate").GetDecimal(), i.GetProperty("percent").GetProperty("low").GetDecimal(),
                i.GetProperty("percent").GetProperty("high").GetDecimal()));
        Assert.All(json.RootElement.GetProperty("unproven").EnumerateArray(),
            u => Assert.Contains(u.GetProperty("rests").GetString(), new[] { "usual", "guess" }));
        var explained = CommandRun.Of("declare", "bramble-bar", "--workshop", _folder, "--explain").Output;
        Assert.Contains("estimated by usual levels", explained, StringComparison.Ordinal);
        Assert.Contains("US patent 5529714", explained, StringComparison.Ordinal);
    }

    [Fact]
    public void A_supplier_gets_one_message_with_at_most_three_questions_and_the_place_of_each_answer()
    {
        var run = CommandRun.Of("ask", "--workshop", _folder, "--format", "json");
        Assert.Equal((0, ""), (run.ExitCode, run.Messages));
        using var json = JsonDocument.Parse(run.Output);
        var open = json.RootElement.GetProperty("open").GetInt32();
        Assert.True(open > 0);
        Assert.InRange(json.RootElement.GetProperty("settles").GetDouble(), 0.7 * open, open);
        Assert.All(json.RootElement.GetProperty("messages").EnumerateArray(), m =>
        {
            Assert.InRange(m.GetProperty("questions").GetArrayLength(), 1, 3);
            Assert.StartsWith("mailto:?subject=", m.GetProperty("mailto").GetString(), StringComparison.Ordinal);
            Assert.All(m.GetProperty("questions").EnumerateArray(), q =>
            {
                Assert.Contains(q.GetProperty("asked").GetString()!, m.GetProperty("text").GetString(), StringComparison.Ordinal);
                Assert.True(File.ReadAllLines(Path.Combine(_folder, q.GetProperty("file").GetString()!)).Length >= q.GetProperty("line")
                    .GetInt32());
            });
        });
        Assert.Contains("Where the answers go:", CommandRun.Of("declare", "bramble-bar", "--workshop", _folder).Output,
            StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("declare", "bath-salt", "--variant", "Rose Soak")]
    [InlineData("declare", "bath-salt", "--market", "fr")]
    [InlineData("declare", "bath-salt", "--names", "both")]
    [InlineData("declare", "bath-salt", "--since", "last year")]
    public void What_cannot_be_used_is_refused_in_one_message(params string[] words)
    {
        var run = CommandRun.Of([.. words, "--workshop", _folder]);
        Assert.Equal((2, ""), (run.ExitCode, run.Output));
        Assert.Single(run.Messages.Trim().Split('\n'));
    }

    // The example's workshop, as far as these recipes need it.
    private void Copy(params string[] recipes)
    {
        var shop = Path.Combine(_folder, "workshop.yaml");
        var assembly = System.Reflection.Assembly.LoadFrom(Path.Combine(AppContext.BaseDirectory, "LabelForge.Cli.dll"));
        foreach (var name in assembly.GetManifestResourceNames().Where(n => n.StartsWith("example/", StringComparison.Ordinal)))
        {
            var inside = name["example/".Length..].Replace('\\', '/');
            if (inside.StartsWith("recipes/", StringComparison.Ordinal) && !recipes.Contains(Path.GetFileNameWithoutExtension(inside)))
                continue;
            var path = Path.Combine(_folder, inside);
            Directory.CreateDirectory(Path.GetDirectoryName(path)!);
            using var shipped = assembly.GetManifestResourceStream(name)!;
            using var file = File.Create(path);
            shipped.CopyTo(file);
        }
        Assert.True(File.Exists(shop));
    }
}
