using LabelForge.Checks;
using LabelForge.Markets;
using LabelForge.Recipes;

namespace LabelForge.Tests.Checks;

/// <summary>What a recipe is told of water that nothing preserves, its label read as words is told too, as far as words show it.</summary>
public sealed class PreservedLabelTests
{
    private static readonly DateOnly On = new(2026, 11, 25);

    [Theory]
    [InlineData("Body lotion", "Water, Olea Europaea (Olive) Fruit Oil, Cetearyl Alcohol, Glycerin", true)]
    [InlineData("Body lotion", "Water, Olea Europaea (Olive) Fruit Oil, Cetearyl Alcohol, Phenoxyethanol", false)]
    [InlineData("Body lotion", "Water, Olea Europaea (Olive) Fruit Oil, Cetearyl Alcohol, Caprylyl Glycol", false)]
    [InlineData("Body lotion", "Water, Olea Europaea (Olive) Fruit Oil, Cetearyl Alcohol, Zorbinate", false)]        // who knows what it does
    [InlineData("Body mist", "Alcohol Denat., Water, Fragrance", false)]
    [InlineData("Liquid soap", "Water, Potassium Olivate, Glycerin", false)]
    [InlineData("Bar soap", "Water, Sodium Olivate, Glycerin", false)]
    [InlineData("Body butter", "Butyrospermum Parkii (Shea) Butter, Olea Europaea (Olive) Fruit Oil", false)]
    public void Water_among_the_first_names_wants_something_that_preserves(string identity, string list, bool told)
    {
        var text = $"Ferry Lane\n{identity}\n\nIngredients: {list}";
        foreach (var market in Market.All)
        {
            var found = CheckedLabel.Found(text, market, soldAs: SoldAs.Cosmetic, on: On);
            Assert.Equal(told, found.Any(f => f is { Rule: "preservative.missing", Severity: Severity.Should }));
        }
    }
}
