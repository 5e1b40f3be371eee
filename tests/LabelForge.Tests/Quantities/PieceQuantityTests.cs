using LabelForge.Measures;
using LabelForge.Quantities;
using LabelForge.Recipes;
using LabelForge.Tests.Recipes;

namespace LabelForge.Tests.Quantities;

/// <summary>What a piece declares where the recipe only says how many pieces a batch gives: two here.</summary>
public class PieceQuantityTests
{
    [Theory]
    [InlineData("226.9 g", "113 g")]   // 113.45 g: a kitchen scale shows whole grams
    [InlineData("227.9 g", "113 g")]   // 113.95 g is not 114
    [InlineData("41.9 g", "20 g")]     // 20.95 g
    [InlineData("40 g", "20 g")]
    [InlineData("39.9 g", "19.9 g")]   // 19.95 g: below 20 g a tenth counts
    [InlineData("9 g", "4.5 g")]
    [InlineData("0.3 g", "0.1 g")]     // 0.15 g
    public void A_piece_declares_no_more_than_its_share_of_the_batch(string batch, string net) =>
        Assert.Equal(net, Of(batch, "soap-bar").Mass.ToString());

    [Fact]
    public void A_piece_that_no_scale_would_show_is_refused_at_the_recipe()
    {
        var problem = Assert.Throws<InputException>(() => Of("0.19 g", "soap-bar")).Problem;
        Assert.Equal("recipes/bar.yaml", problem.File);
        Assert.Contains("less than a tenth of a gram", problem.Wrong);
        Assert.Contains("fewer pieces", problem.Write);
    }

    // 21 CFR 701.13(a): a liquid is declared by volume, which no scale gives.
    [Fact]
    public void What_is_sold_by_volume_must_be_measured_and_written()
    {
        var problem = Assert.Throws<InputException>(() => Of("400 g", "body-wash")).Problem;
        Assert.Equal("recipes/bar.yaml", problem.File);
        Assert.Contains("A body wash is sold by volume", problem.Wrong);
        Assert.Contains("net: 8 fl oz", problem.Write);
    }

    private static NetAmount Of(string amount, string product)
    {
        using var bench = new BenchFolder().Recipe($"{{ use: base, amount: {amount} }}");
        bench.Write("recipes/bar.yaml",
            File.ReadAllText(Path.Combine(bench.Path, "recipes/bar.yaml"))
                .Replace("product: soap-bar", $"product: {product}", StringComparison.Ordinal));
        var workshop = Workshop.Open(bench.Path);
        var batch = BatchFormula.Of(workshop, workshop.Recipe("bar"));
        return PieceQuantity.Of(batch, ProductKindOf.Recipe(batch.Recipe));
    }
}
