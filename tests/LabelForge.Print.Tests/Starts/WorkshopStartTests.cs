using LabelForge.Checks;
using LabelForge.Ingredients;
using LabelForge.Markets;
using LabelForge.Measures;
using LabelForge.Print.Drawing;
using LabelForge.Print.Jobs;
using LabelForge.Recipes;
using LabelForge.Starts;

namespace LabelForge.Print.Tests.Starts;

/// <summary>From four answers to a workshop; and nothing in it that nobody answered.</summary>
public class WorkshopStartTests
{
    private static readonly DateOnly On = new(2026, 11, 25);

    private static readonly StartAnswers Three = new()
    {
        Shop = "Thistlepond Bench",
        Address = "14 Sample Mill Road\nLower Wendle ME 00000",
        Contact = "555-0127",
        Goods = ["white-base", "castor-oil"],
        Scents = "Moss Wall, oakmoss fragrance, green mica\nSalt Meadow, sea lavender fragrance, blue\nPlain Day",
        Amounts = System.Collections.Immutable.ImmutableDictionary<string, string>.Empty
            .Add("white-base", "1.5 lb").Add("castor-oil", "1 tsp").Add(WorkshopStart.Fragrance, "1.5 % of batch")
            .Add(WorkshopStart.Colour, "0.6 g"),
        Pieces = "6",
        Net = "4 oz",
    };

    [Fact]
    public void A_range_of_scents_is_one_recipe_with_a_product_for_each_line()
    {
        using var made = new Made(Three);
        var products = made.Workshop.ProductsOf("moss-wall-and-others");
        Assert.Equal(["Moss Wall", "Salt Meadow", "Plain Day"], products.Select(p => p.Recipe.Name));
        Assert.Equal(["castor-oil", "green-mica", "oakmoss-fragrance", "white-base"],
            products[0].Batch.Lines.Select(l => l.Material.Id).Order(StringComparer.Ordinal));
        Assert.Equal(["blue-mica", "castor-oil", "sea-lavender-fragrance", "white-base"],
            products[1].Batch.Lines.Select(l => l.Material.Id).Order(StringComparer.Ordinal));
        Assert.Equal(["castor-oil", "white-base"], products[2].Batch.Lines.Select(l => l.Material.Id).Order(StringComparer.Ordinal));
        Assert.Equal("US", made.Workshop.Business.Place.Country);
        Assert.Equal("Lower Wendle", made.Workshop.Business.Place.City);
    }

    [Fact]
    public void No_price_and_no_package_is_written_that_nobody_answered()
    {
        var text = string.Concat(WorkshopStart.Files(Three, Shipped.Dictionary, Shipped.Markets).Select(f => f.Text));
        Assert.DoesNotContain("packs:", text, StringComparison.Ordinal);
        Assert.DoesNotContain("package:", text, StringComparison.Ordinal);
        Assert.DoesNotContain("net:", string.Concat(WorkshopStart.Files(Three with { Net = "" }, Shipped.Dictionary, Shipped.Markets).Select(f => f.Text)),
            StringComparison.Ordinal);
    }

    [Fact]
    public void A_list_of_ours_is_never_trusted_in_silence_and_no_order_of_it_is_called_proved()
    {
        using var made = new Made(Three);
        var job = LabelJob.Prepare(made.Workshop.ProductsOf("moss-wall-and-others")[0], Market.Us, null, null, On);
        var open = RecipeCheck.Run(job.Facts).Findings.Where(f => f.Rule == "ingredients.unconfirmed").ToArray();
        Assert.Equal(["materials/castor-oil.yaml", "materials/green-mica.yaml", "materials/white-base.yaml"],
            open.Select(f => f.Where).Order(StringComparer.Ordinal));
        Assert.All(open, f => Assert.Equal(Severity.Should, f.Severity));
        Assert.False(job.Declaration.IsProved);
        var path = Path.Combine(made.Folder, "materials", "castor-oil.yaml");
        File.WriteAllLines(path, File.ReadAllLines(path).Where(l => !l.StartsWith(MaterialFile.ConfirmKey, StringComparison.Ordinal)));
        job = LabelJob.Prepare(Workshop.Open(made.Folder).ProductsOf("moss-wall-and-others")[0], Market.Us, null, null, On);
        Assert.DoesNotContain(RecipeCheck.Run(job.Facts).Findings,
            f => f.Rule == "ingredients.unconfirmed" && f.Where == "materials/castor-oil.yaml");
    }

    [Fact]
    public void What_is_not_answered_stands_on_the_label_as_its_question()
    {
        var two = Three with { Amounts = [], Pieces = "", Net = "" };
        var labels = StartPreview.Of(two, new("their order follows", "weight: later"), Shipped.Dictionary, Shipped.Markets, On);
        Assert.Equal(["Moss Wall", "Salt Meadow", "Plain Day"], labels.Select(l => l.Name));
        var words = Words(labels[0].Layout);
        Assert.Contains("their order follows", words, StringComparison.Ordinal);
        Assert.Contains("weight: later", words, StringComparison.Ordinal);
        Assert.DoesNotContain("Glycerin", words, StringComparison.Ordinal);
        Assert.DoesNotContain("oz", words, StringComparison.Ordinal);
        var whole = Words(StartPreview.Of(Three, new("their order follows", "weight: later"), Shipped.Dictionary, Shipped.Markets,
            On)[0].Layout);
        Assert.Contains("Glycerin", whole, StringComparison.Ordinal);
        Assert.Contains("4 oz (113 g)", whole, StringComparison.Ordinal);
        Assert.DoesNotContain("later", whole, StringComparison.Ordinal);
    }

    [Fact]
    public void What_cannot_be_read_yet_waits_as_if_it_were_not_there()
    {
        var wrong = Three with
        {
            Contact = "bench@thistlepond",
            Scents = "Moss, oak, green\nMoss, sea, glowing\nSea, salt, glowing",
            Pieces = "six",
            Net = "4",
            Amounts = Three.Amounts.SetItem("castor-oil", "1.5"),
        };
        var labels = StartPreview.Of(wrong, new("their order follows", "weight: later"), Shipped.Dictionary, Shipped.Markets, On);
        Assert.Equal(["Moss", "Sea"], labels.Select(l => l.Name));
        Assert.Contains("their order follows", Words(labels[0].Layout), StringComparison.Ordinal);
    }

    [Fact]
    public void A_wrappers_words_make_the_base_with_their_order()
    {
        using var made = new Made(Three with
        {
            Goods = [],
            Wrapper = "Glycerin 40%, Water (Aqua), Sodium Stearate 15%",
            Scents = "",
            Amounts = Three.Amounts.Add(WorkshopStart.OwnBase, "900 g"),
        });
        var material = made.Workshop.Materials[WorkshopStart.OwnBase];
        Assert.Equal(["Glycerin", "Water", "Sodium Stearate"], material.Contains.Select(c => c.Name));
        Assert.Null(material.ToConfirm);
    }

    [Fact]
    public void A_missing_amount_is_asked_for_by_name()
    {
        var refused =
            Assert.Throws<InputException>(() =>
                WorkshopStart.Files(Three with { Amounts = Three.Amounts.Remove("castor-oil") }, Shipped.Dictionary, Shipped.Markets));
        Assert.Equal("How much goes in of Castor oil?", refused.Problem.Wrong);
    }

    [Theory]
    [InlineData("Moss, oak, green\nMoss, sea, blue", "\"Moss\" stands twice.")]
    [InlineData("Moss, oak, glowing", "What colour is \"glowing\"?")]
    [InlineData("Moss, oak, green and blue", "What colour is \"green and blue\"?")]
    public void Scents_that_are_not_clear_are_asked_about(string scents, string asked) =>
        Assert.StartsWith(asked, ScentLine.Wrong(ScentLine.Read(scents))!.ToString(), StringComparison.Ordinal);

    [Theory]
    [InlineData("US", "us")]
    [InlineData("CA", "ca")]
    [InlineData("GB", "uk")]
    [InlineData("FR", "eu")]
    [InlineData("PL", "eu")]
    [InlineData("NZ", "us")]
    public void A_shop_sells_first_where_it_is(string country, string market) =>
        Assert.Equal(market, WorkshopStart.MarketOf(Country.Find(country), Shipped.Markets));

    [Fact]
    public void Every_usual_good_says_where_it_is_from_names_what_is_known_and_waits_for_its_wrapper()
    {
        Assert.True(UsualGood.All.Length >= 20);
        Assert.All(UsualGood.All, good =>
        {
            Assert.Contains("# Source:", good.Text, StringComparison.Ordinal);
            Assert.NotNull(good.Material.ToConfirm);
            Assert.Empty(good.Material.Packs);
            Assert.All(good.Material.Contains, c => Assert.NotNull(IngredientDictionary.Shipped.Find(c.Name)));
            Assert.All(good.Material.Contains, c => Assert.Equal(ShareRange.Unknown, c.Share));
            Assert.True(good.Material.Contains.Length == 1 || good.Material.Listed == Composition.ListedOrder.None, good.Id);
        });
    }

    private static string Words(LabelLayout layout) => string.Join(' ', layout.Texts.Select(t => t.Text));

    private sealed class Made : IDisposable
    {
        public Made(StartAnswers answers) =>
            WorkshopStart.WriteTo(Folder, WorkshopStart.Files(answers, Shipped.Dictionary, Shipped.Markets));

        public string Folder { get; } = Directory.CreateTempSubdirectory("labelforge-").FullName;

        public Workshop Workshop => Workshop.Open(Folder);

        public void Dispose() => Directory.Delete(Folder, recursive: true);
    }
}
