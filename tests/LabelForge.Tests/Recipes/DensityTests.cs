using LabelForge.Ingredients;
using LabelForge.Measures;
using LabelForge.Recipes;

namespace LabelForge.Tests.Recipes;

/// <summary>A volume without a density is not reckoned with a figure from nowhere: a published
/// one is proposed, or how to measure it.</summary>
public sealed class DensityTests
{
    // USDA National Nutrient Database SR28: 4.6 g in 1 tsp of baking soda is 0.933 g/mL.
    [Theory]
    [InlineData("Sodium Bicarbonate", "density: 0.933 g/mL", "as spooned")]
    [InlineData("Castor Oil", "density: 0.959 g/mL", "as a liquid")]
    [InlineData("Sodium Chloride", "density: 1.2", "as spooned")]
    public void What_is_published_is_proposed_with_its_source(string contains, string density, string lying)
    {
        var write = Refusal(contains);
        Assert.Contains(density, write, StringComparison.Ordinal);
        Assert.Contains(lying, write, StringComparison.Ordinal);
        Assert.Contains("4.93", write, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("Mica")]
    [InlineData("Elixir of Nothing")]
    public void Where_nothing_is_published_the_spoon_is_weighed_and_no_figure_is_offered(string contains)
    {
        var write = Refusal(contains);
        Assert.Contains("weigh a level teaspoon", write, StringComparison.Ordinal);
        Assert.DoesNotContain("0.95", write, StringComparison.Ordinal);
    }

    [Fact]
    public void Every_published_density_lies_between_the_least_and_the_most_that_was_read()
    {
        var found = IngredientDictionary.Shipped.Entries.SelectMany(e => Densities.Of(e.Us, IngredientDictionary.Shipped)).ToArray();
        Assert.True(found.Length > 50);
        Assert.All(found, d => Assert.InRange(d.GramsPerMillilitre, d.Least, d.Most));
        Assert.All(found, d => Assert.NotEmpty(d.Source));
    }

    private static string Refusal(string contains)
    {
        using var bench = new BenchFolder().Write("materials/thing.yaml", $"name: Thing\nkind: additive\ncontains: {contains}\n")
            .Recipe("{ use: base, amount: 900 g }", "{ use: thing, amount: 0.5 tsp }");
        var workshop = Workshop.Open(bench.Path);
        return Assert.Throws<InputException>(() => BatchFormula.Of(workshop, workshop.Recipe("bar"))).Problem.Write;
    }
}
