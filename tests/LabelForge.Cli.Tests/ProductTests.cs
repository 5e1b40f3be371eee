using System.Text.Json;
using System.Text.RegularExpressions;

namespace LabelForge.Cli.Tests;

/// <summary>A recipe with variants stands for all its products, in every verb; one is named behind a solidus.</summary>
public sealed partial class ProductTests(ExampleWorkshop example) : IClassFixture<ExampleWorkshop>, IDisposable
{
    private static readonly string[] Soaks = ["bath-salt/Hayloft Soak", "bath-salt/Tideline Soak", "bath-salt/Plain Soak"];
    private readonly string _out = Directory.CreateTempSubdirectory("labelforge-").FullName;

    public void Dispose() => Directory.Delete(_out, recursive: true);

    [Theory]
    [InlineData("declare")]
    [InlineData("check")]
    [InlineData("fragrance")]
    [InlineData("cost")]
    public void A_recipe_answers_for_each_of_its_products(string verb)
    {
        var run = Run(verb, "bath-salt", "--format", "json");
        Assert.Equal((0, ""), (run.ExitCode, run.Messages));
        using var json = JsonDocument.Parse(run.Output);
        var products = json.RootElement.GetProperty("products");
        Assert.Equal(Soaks, products.EnumerateArray().Select(p => p.GetProperty("name").GetString()));
        Assert.All(json.RootElement.EnumerateObject().Where(p => p.Name is not ("products" or "variants" or "common")),
            p => Assert.Equal(Squeezed(p.Value),
                Squeezed(products[0].GetProperty(p.Name))
                    .Replace(",\"product\":\"bath-salt/HayloftSoak\"", "", StringComparison.Ordinal)));
        Assert.Equal(3, products.EnumerateArray().Select(p => p.GetRawText()).Distinct().Count());
        Assert.All(Soaks, s => Assert.Contains($"== {s}", Run(verb, "bath-salt").Output, StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("bath-salt/Plain Soak")]
    [InlineData("bath-salt/plain soak")]
    public void One_product_is_named_behind_a_solidus(string name)
    {
        var run = Run("declare", name);
        Assert.StartsWith("Ingredients: Magnesium Sulfate, Sea Salt, Sodium Bicarbonate, Simmondsia", run.Output,
            StringComparison.Ordinal);
        Assert.Equal(run.Output, Run("declare", "bath-salt", "--variant", "Plain Soak").Output);
        Assert.Equal(run.Output,
            CommandRun.Of("declare", Path.Combine(example.Opened.Folder, "recipes", "bath-salt.yaml") + "/Plain Soak", "--on",
                "2026-11-25").Output);
    }

    [Theory]
    [InlineData("bath-salt/Rose Soak", "Hayloft Soak, Tideline Soak, Plain Soak")]
    [InlineData("bath-slt/Plain Soak", "bath-salt")]
    [InlineData("bramble-bar/Plain", "It has none")]
    public void A_product_that_is_not_there_is_refused_with_those_that_are(string name, string told)
    {
        var run = Run("check", name);
        Assert.Equal((2, ""), (run.ExitCode, run.Output));
        Assert.Contains(told, Assert.Single(run.Messages.Trim().Split('\n')), StringComparison.Ordinal);
    }

    [Fact]
    public void What_is_wrong_with_the_last_product_alone_is_found()
    {
        var shop = Copy();
        var recipe = Path.Combine(shop, "recipes", "bath-salt.yaml");
        File.WriteAllText(recipe,
            File.ReadAllText(recipe)
                .Replace("leave out: [ hayloft-fragrance, red-iron-oxide ]",
                    "replace: { hayloft-fragrance: { use: hayloft-fragrance, amount: 20 % of batch } }", StringComparison.Ordinal));
        var run = CommandRun.Of("check", "bath-salt", "--workshop", shop, "--on", "2026-11-25", "--format", "json");
        Assert.Equal(1, run.ExitCode);
        using var json = JsonDocument.Parse(run.Output);
        var over = json.RootElement.GetProperty("products").EnumerateArray().SelectMany(p => p.GetProperty("findings").EnumerateArray())
            .Where(f => f.GetProperty("severity").GetString() == "must").ToArray();
        Assert.NotEmpty(over);
        Assert.All(over, f => Assert.Equal("bath-salt/Plain Soak", f.GetProperty("product").GetString()));
        Assert.Contains(over, f => f.GetProperty("rule").GetString() == "fragrance.over-limit");
    }

    [Fact]
    public void Labels_and_batch_sheets_of_all_products_stand_in_one_document()
    {
        foreach (var verb in new[] { "label", "batch" })
        {
            var path = Path.Combine(_out, verb + ".pdf");
            Assert.Equal(0, Run(verb, "bath-salt", "--lot", "26R25-02C", "--out", path).ExitCode);
            using var document = UglyToad.PdfPig.PdfDocument.Open(path);
            Assert.Equal(3, document.NumberOfPages);
            Assert.Equal(Soaks.Select(s => s.Split('/')[1]),
                document.GetPages()
                    .Select(p => Soaks.Select(s => s.Split('/')[1])
                        .Single(s => Squeezed(p.Text).Contains(Squeezed(s), StringComparison.OrdinalIgnoreCase))));
        }
        var picture = Run("label", "bath-salt", "--lot", "26R25-02C", "--out", Path.Combine(_out, "label.png"));
        Assert.Equal(2, picture.ExitCode);
        Assert.Contains("RECIPE/VARIANT", picture.Messages, StringComparison.Ordinal);
        Assert.Equal(0, Run("label", "bath-salt/Plain Soak", "--lot", "26R25-02C", "--out", Path.Combine(_out, "label.png")).ExitCode);
    }

    [Fact]
    public void A_sheet_is_shared_out_among_the_products_and_filled_by_name()
    {
        var shared = Run("sheet", "bath-salt", "--lot", "26R25-02C", "--stock", "us-letter-6-3.333x4in", "--out",
            Path.Combine(_out, "a.pdf"));
        Assert.Contains("6 labels on 1 sheet", shared.Output, StringComparison.Ordinal);
        var filled = Run("sheet", "--fill", "bath-salt/Plain Soak:2,bath-salt/Hayloft Soak@26R25-02C:3", "--lot", "26R25-01E", "--stock",
            "us-letter-6-3.333x4in", "--out", Path.Combine(_out, "b.pdf"));
        Assert.Contains("5 labels on 1 sheet", filled.Output, StringComparison.Ordinal);
        var each = Run("sheet", "bath-salt", "--count", "4", "--lot", "26R25-02C", "--stock", "us-letter-6-3.333x4in", "--out",
            Path.Combine(_out, "c.pdf"));
        Assert.Contains("12 labels on 2 sheets", each.Output, StringComparison.Ordinal);
    }

    [Fact]
    public void What_to_buy_is_for_so_many_of_each_product()
    {
        var run = Run("buy", "bath-salt:6");
        Assert.Contains("Makes 6 of bath-salt/Hayloft Soak, 6 of bath-salt/Tideline Soak, 6 of bath-salt/Plain Soak.", run.Output,
            StringComparison.Ordinal);
        Assert.Contains("Makes 6 of bath-salt/Plain Soak.", Run("buy", "bath-salt/Plain Soak:6").Output, StringComparison.Ordinal);
    }

    [Fact]
    public void A_batch_is_of_one_product_and_says_which_there_are()
    {
        var shop = Copy();
        var several = CommandRun.Of("batch", "start", "bath-salt", "--workshop", shop, "--on", "2026-11-25");
        Assert.Equal(2, several.ExitCode);
        Assert.All(Soaks, s => Assert.Contains($"\"{s}\"", several.Messages, StringComparison.Ordinal));
        var one = CommandRun.Of("batch", "start", "bath-salt/Tideline Soak", "--workshop", shop, "--on", "2026-11-25");
        var lot = Lot().Match(one.Output).Value;
        // The lot knows its product: the recipe's name is enough for its label and its check.
        using var json = JsonDocument.Parse(CommandRun.Of("check", "bath-salt", "--lot", lot, "--workshop", shop, "--on", "2026-11-25",
            "--format", "json").Output);
        Assert.Equal("bath-salt/Tideline Soak",
            Assert.Single(json.RootElement.GetProperty("products").EnumerateArray()).GetProperty("name").GetString());
        Assert.Contains("\"bath-salt/Tideline Soak\"",
            CommandRun.Of("check", "bath-salt/Plain Soak", "--lot", lot, "--workshop", shop).Messages, StringComparison.Ordinal);
    }

    private CommandRun Run(string verb, params string[] words) =>
        CommandRun.Of([verb, .. words, "--workshop", example.Opened.Folder, .. verb == "cost" ? [] : new[] { "--on", "2026-11-25" }]);

    private string Copy()
    {
        var shop = Path.Combine(_out, "shop");
        foreach (var file in Directory.EnumerateFiles(example.Opened.Folder, "*.yaml", SearchOption.AllDirectories))
        {
            var to = Path.Combine(shop, Path.GetRelativePath(example.Opened.Folder, file));
            Directory.CreateDirectory(Path.GetDirectoryName(to)!);
            File.Copy(file, to);
        }
        return shop;
    }

    private static string Squeezed(JsonElement json) => Squeezed(json.GetRawText()).Replace("\n", "", StringComparison.Ordinal);

    private static string Squeezed(string text) => text.Replace(" ", "", StringComparison.Ordinal);

    [GeneratedRegex(@"\b\d\dR\d\d-\w+")]
    private static partial Regex Lot();
}
