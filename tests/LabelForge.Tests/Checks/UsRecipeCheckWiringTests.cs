using LabelForge.Checks;
using LabelForge.Declarations;
using LabelForge.Markets;
using LabelForge.Quantities;
using LabelForge.Recipes;
using LabelForge.Tests.Declarations;

namespace LabelForge.Tests.Checks;

public class UsRecipeCheckWiringTests
{
    [Fact]
    public void A_check_of_a_recipe_finds_what_is_wrong_with_its_colours_and_its_scents()
    {
        // Ultramarines on the lips (21 CFR 73.2725); two scents at 0.8 and 0.7 of their limits.
        using var bench = new MakerBench()
            .Material("oil", "oil", "Castor Oil")
            .Material("blue", "colourant", "CI 77007")
            .Material("one", "fragrance", "Fragrance", "limits: { category 1: 1 % }\n")
            .Material("two", "fragrance", "Fragrance", "limits: { category 1: 1 % }\n")
            .Recipe("lip-balm", "", ("oil", "975 g"), ("blue", "10 g"), ("one", "8 g"), ("two", "7 g"));
        var workshop = bench.Workshop;
        var recipe = workshop.Recipe("bar");
        var (batch, kind, on) = (BatchFormula.Of(workshop, recipe), ProductKindOf.Recipe(recipe), new DateOnly(2026, 11, 25));
        var declaration = DeclarationBuilder.Build(workshop, batch, kind, Market.Us, on);
        var content = LabelContentBuilder.Build(workshop, batch, kind, declaration, Panel.Parse("2x4in").Value!, null, on);
        var rules = RecipeCheck.Run(new RecipeFacts(workshop, batch, kind, declaration, content, []) { On = on }).Findings
            .Select(f => f.Rule).ToArray();
        Assert.Contains("colour.not-permitted", rules);
        Assert.Contains("fragrance.over-together", rules);
        Assert.DoesNotContain("fragrance.over-limit", rules);
    }
}
