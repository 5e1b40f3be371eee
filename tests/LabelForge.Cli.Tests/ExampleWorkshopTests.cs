using LabelForge.Ingredients;
using LabelForge.Recipes;

namespace LabelForge.Cli.Tests;

public sealed class ExampleWorkshopTests(ExampleWorkshop example) : IClassFixture<ExampleWorkshop>
{
    private Workshop Shop => example.Opened;

    // Worked with 1 lb = 453.59237 g, 1 oz = 28.349523125 g, 1 US fl oz = 29.5735295625 mL (NIST Handbook 44, Appendix C),
    // 2 tbsp and 6 tsp to the fl oz, and the densities that stand in the materials. The first, line by line:
    // 1.6 lb = 725.748 g; 1 tbsp of 0.96 g/mL = 14.195 g; 2 % of 725.748 g = 14.515 g; 1/2 tsp of 0.35 g/mL = 0.863 g.
    [Theory]
    [InlineData("hayloft-bar", 755.321)]
    [InlineData("tideline-bar", 755.560)]
    [InlineData("bramble-bar", 756.561)]
    [InlineData("sugar-scrub", 1259.415)]
    [InlineData("lip-balm", 118.495)]
    [InlineData("bath-salt", 2069.753)]
    // 450 + 220 + 60 + 40 g of oils, 30 % of them water (231 g); they take up 159.840 g of KOH, 95 % of it as NaOH of 99 %:
    // 159.840 / 56.105 * 39.997 * 0.95 / 0.99 = 109.345 g.
    [InlineData("harbour-wall-bar", 1110.345)]
    public void A_batch_weighs_what_its_lines_come_to_by_hand(string recipe, double grams) =>
        Assert.Equal((decimal)grams, decimal.Round(example.Batch(recipe).Total.Grams, 3));

    [Fact]
    public void Four_trays_of_six_give_twenty_four_bars()
    {
        var bars = Shop.RecipeIds.Select(id => Shop.Recipe(id)).Where(r => r.Product == "soap-bar" && r.Superfat is null).ToArray();
        Assert.Equal([6, 6, 6, 6], bars.Select(b => b.Pieces));
    }

    [Fact]
    public void No_recipe_declares_more_than_its_batch_gives()
    {
        foreach (var batch in Shop.RecipeIds.Select(example.Batch))
            Assert.True(batch.Recipe.Net!.Mass!.Value.Grams * batch.Recipe.Pieces <= batch.Yield.Grams, batch.Recipe.Id);
    }

    // Half of a limit is no rule: it is what this example means by "well inside".
    [Fact]
    public void Fragrance_stays_under_half_of_its_certificate()
    {
        var seen = 0;
        foreach (var batch in Shop.RecipeIds.Select(example.Batch))
        {
            var category = ProductKindOf.Recipe(batch.Recipe).IfraCategory;
            foreach (var line in batch.Lines.Where(l => l.Material.Kind == MaterialKind.Fragrance))
            {
                var limit = line.Material.Limits.Single(l => l.Category == category).Highest;
                Assert.True(line.Mass.Grams / batch.Total.Grams <= limit.Fraction / 2, $"{batch.Recipe.Id}: {line.Material.Name}");
                seen++;
            }
        }
        Assert.Equal(6, seen);
    }

    [Fact]
    public void Every_constituent_is_in_the_dictionary()
    {
        var names = Shop.Materials.Values.SelectMany(m => m.Contains).Select(c => c.Name).ToArray();
        Assert.NotEmpty(names);
        Assert.DoesNotContain(names, n => IngredientDictionary.Shipped.Find(n) is null);
    }

    [Fact]
    public void A_base_names_eight_to_fifteen_constituents()
    {
        var bases = Shop.Materials.Values.Where(m => m.Kind == MaterialKind.Base).ToArray();
        Assert.True(bases.Length >= 2);
        Assert.All(bases, b => Assert.InRange(b.Contains.Length, 8, 15));
    }

    // ".example" is kept for examples (RFC 2606, section 2); GS1 prefix 952 likewise (GS1 General Specifications, prefixes).
    [Fact]
    public void Nobody_real_is_reached_by_the_example()
    {
        Assert.EndsWith(".example", Shop.Business.Web, StringComparison.Ordinal);
        Assert.StartsWith("555-01", Shop.Business.Phone, StringComparison.Ordinal);
        Assert.StartsWith("952", Shop.Business.GtinPrefix, StringComparison.Ordinal);
        Assert.Equal("00000", Shop.Business.Place.Postcode);
    }
}
