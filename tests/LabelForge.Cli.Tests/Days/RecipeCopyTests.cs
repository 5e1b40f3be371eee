using LabelForge.Copying;
using LabelForge.Measures;
using LabelForge.Recipes;

namespace LabelForge.Cli.Tests.Days;

/// <summary>A new product in one step: what was asked for changes, all else is the maker's own text as it was.</summary>
public sealed class RecipeCopyTests : IDisposable
{
    private readonly ExampleWorkshop _example = new();

    private Workshop Workshop => Workshop.Open(_example.Opened.Folder);

    public void Dispose() => _example.Dispose();

    private string Refusal(RecipeCopyWish wish) => Assert.Throws<InputException>(() => RecipeCopy.Write(Workshop, wish)).Message;

    public static TheoryData<string> Products =>
        ["bramble-bar", "hayloft-bar", "tideline-bar", "harbour-wall-bar", "sugar-scrub", "lip-balm", "bath-salt/Plain Soak",
            "meadow-bar/Salt Meadow", "meadow-bar/Winter Smoke"];

    [Theory]
    [MemberData(nameof(Products))]
    public void A_copy_is_the_same_in_all_but_its_name_and_item(string from)
    {
        if (Workshop.ProductsOf(from.Split('/')[0]).All(p => p.Name != from))
            from = Workshop.ProductsOf(from.Split('/')[0])[0].Name;
        var (name, _) = RecipeCopy.Write(Workshop, new RecipeCopyWish(from, "Fern & Stone"));
        var (old, copy) = (Workshop.ProductOf(from), Workshop.ProductOf(name));
        Assert.Equal(("Fern & Stone", null), (copy.Recipe.Name, copy.Recipe.Item));
        Assert.Equal(old.Batch.Lines.Select(l => (l.Material.Id, l.Mass)), copy.Batch.Lines.Select(l => (l.Material.Id, l.Mass)));
        Assert.Equal((old.Recipe.Identity, old.Recipe.Net, old.Recipe.Package?.Shape, old.Recipe.Price),
            (copy.Recipe.Identity, copy.Recipe.Net, copy.Recipe.Package?.Shape, copy.Recipe.Price));
        Assert.Equal(old.Recipe.Warnings, copy.Recipe.Warnings);
    }

    [Fact]
    public void Another_scent_takes_the_old_ones_amount_and_not_its_words()
    {
        var (name, _) = RecipeCopy.Write(Workshop, new RecipeCopyWish("bramble-bar", "Quince Row", "peach-fragrance", 60, Price: "7.50"));
        var copy = Workshop.ProductOf(name).Recipe;
        Assert.Equal("peach-fragrance", copy.Materials[2].Material);
        Assert.Equal(("60", null, 7.50m), (copy.Look.Hue?.Text, copy.Look.Line?.Text, copy.Price));
        var (other, _) = RecipeCopy.Write(Workshop,
            new RecipeCopyWish("meadow-bar/Salt Meadow", "Slate Quay", "rain-fragrance", 250, "wet slate, mint"));
        var variant = Workshop.ProductOf(other).Recipe;
        Assert.Equal(("250", "wet slate, mint"), (variant.Look.Hue?.Text, variant.Look.Line?.Text));
        Assert.Contains(variant.Materials, m => m.Material == "rain-fragrance");
        Assert.DoesNotContain(variant.Materials, m => m.Material == "salt-meadow-fragrance");
    }

    [Fact]
    public void The_old_product_and_its_comments_stay_as_they_were()
    {
        var path = Path.Combine(_example.Opened.Folder, "recipes", "meadow-bar.yaml");
        var before = File.ReadAllText(path);
        RecipeCopy.Write(Workshop, new RecipeCopyWish("meadow-bar/Moss Lane", "Fern Hollow", Hue: 150));
        var lines = File.ReadAllLines(path).ToList();
        lines.RemoveAt(lines.FindIndex(l => l.Contains("Fern Hollow", StringComparison.Ordinal)));
        Assert.Equal(before.TrimEnd().Split('\n'), lines);
    }

    [Theory]
    [InlineData("Tideline", "There is no material \"none\"")]
    [InlineData("castor", "is not a fragrance")]
    public void What_is_no_fragrance_is_no_scent(string name, string told) =>
        Assert.Contains(told, Refusal(new RecipeCopyWish("bramble-bar", name, name == "castor" ? "castor-oil" : "none")),
            StringComparison.Ordinal);

    [Fact]
    public void A_name_that_is_taken_is_refused_and_nothing_is_written()
    {
        Assert.Contains("already", Refusal(new RecipeCopyWish("hayloft-bar", "Bramble bar")), StringComparison.Ordinal);
        Assert.Contains("already", Refusal(new RecipeCopyWish("meadow-bar/Moss Lane", "rainy day")), StringComparison.Ordinal);
        Assert.Contains("is not a hue", Refusal(new RecipeCopyWish("hayloft-bar", "New", Hue: 400)), StringComparison.Ordinal);
        Assert.Contains("has no name", Refusal(new RecipeCopyWish("hayloft-bar", " ")), StringComparison.Ordinal);
    }
}
