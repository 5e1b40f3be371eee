using LabelForge.Checks;
using LabelForge.Markets;

namespace LabelForge.Tests.Checks;

/// <summary>
/// What 21 CFR 700.14 and 700.16 forbid in an aerosol: of a product that shows that it is one it is a must, of one that does not, of vinyl
/// chloride a question, since it is a gas.
/// </summary>
public sealed class AerosolLawTests
{
    [Theory]
    [InlineData("Dry shampoo\nIngredients: Butane, Alcohol Denat., Vinyl Chloride", "must")]
    [InlineData("Hair spray\nContents under pressure.\nIngredients: Alcohol Denat., Vinyl Chloride", "must")]
    [InlineData("Nightfall\nFlammable aerosol.\nIngredients: Alcohol Denat., Vinyl Chloride", "must")]
    [InlineData("Nightfall\nContents under pressure.\nIngredients: Talc, Zirconium Chlorohydrate", "must")]
    [InlineData("Body lotion\nIngredients: Water, Glycerin, Vinyl Chloride", "should")]
    [InlineData("Body powder, no aerosol\nIngredients: Talc, Vinyl Chloride", "should")]
    [InlineData("Body lotion\nIngredients: Water, Glycerin, Zirconium Chlorohydrate", "")]
    [InlineData("Body lotion\nIngredients: Water, Propanediol, Zirconium Chlorohydrate", "")]
    public void What_no_aerosol_may_hold_is_told_once(string label, string severity)
    {
        var found = CheckedLabel.Found(label, Market.Us)
            .Where(f => f.Rule == "substance.prohibited").Select(f => f.Severity.ToString().ToLowerInvariant());
        Assert.Equal(severity.Length == 0 ? [] : [severity], found);
    }

    [Theory]
    [InlineData("Body spray\nPump, no propellant.", false)]
    [InlineData("Body spray\nPump spray, propellant free.", false)]
    [InlineData("Body spray\nA pump without any propellant.", false)]
    [InlineData("Body spray\nNever pierce an aerosol.", true)]
    [InlineData("Body spray\nNot tested on animals, aerosol.", true)]
    public void Words_that_deny_a_propellant_call_for_no_warning_of_one(string words, bool warned) =>
        Assert.Equal(warned, CheckedLabel.Found(words + "\nIngredients: Water, Glycerin", Market.Us)
            .Any(f => f.Rule == "warning.missing" && f.Message.Contains("under pressure", StringComparison.Ordinal)));

    [Theory]
    [InlineData("facts: { aerosol: yes }\n", "must")]
    [InlineData("", "should")]
    public void A_recipe_says_by_a_fact_that_it_is_one(string more, string severity)
    {
        using var recipe = new CheckedRecipe { Kind = "body-spray", More = more }.Add(500, "Alcohol Denat.").Add(1, "Vinyl Chloride");
        Assert.Equal($"substance.prohibited {severity}",
            recipe.Found(Market.Us, "substance.prohibited").Order(StringComparer.Ordinal).First());
    }
}
