using LabelForge.Checks;
using LabelForge.Declarations;
using LabelForge.Markets;
using LabelForge.Quantities;
using LabelForge.Recipes;
using LabelForge.Tests.Declarations;

namespace LabelForge.Tests.Checks;

public class ColourCheckTests
{
    // 21 CFR 73.2725: ultramarines, external use and the eye area, not the lips. 73.2250: iron oxides generally.
    // 74.2336: Red 36, generally but not for the eye. 73.2327: chromium oxide greens, external and eye. CI 42051 is not listed.
    [Theory]
    [InlineData("CI 77007", "soap-bar", null)]
    [InlineData("CI 77007", "lip-balm", "21 CFR 73.2725")]
    [InlineData("CI 77007", "eye-cream", null)]
    [InlineData("CI 77491", "lip-balm", null)]
    [InlineData("Red 36", "eye-cream", "21 CFR 74.2336")]
    [InlineData("CI 77288", "lip-balm", "21 CFR 73.2327")]
    [InlineData("Mica", "lip-balm", null)]
    [InlineData("Curcumin", "soap-bar", "do not list it")]
    public void A_colour_may_be_used_where_its_listing_says(string colour, string product, string? source)
    {
        var finding = Find(colour, product).SingleOrDefault(f => f.Rule == "colour.not-permitted");
        Assert.Equal(source is null, finding is null);
        if (finding is null)
            return;
        Assert.Equal(Severity.Must, finding.Severity);
        Assert.Contains(source!, finding.Source, StringComparison.Ordinal);
    }

    [Fact]
    public void A_listing_with_a_limit_on_the_lips_is_told() =>
        Assert.Contains("3.0 percent", Find("Red 36", "lip-balm").Single(f => f.Rule == "colour.condition").Message,
            StringComparison.Ordinal);

    [Fact]
    public void A_plant_powder_bought_as_a_colourant_is_no_listed_colour() =>
        Assert.Equal("colour.not-listed", Assert.Single(Find("Spirulina", "soap-bar")).Rule);

    [Fact]
    public void Two_colourants_of_one_listed_colour_hold_one_each()
    {
        using var bench = new MakerBench()
            .Material("oil", "oil", "Castor Oil")
            .Material("fine", "colourant", "Red 36")
            .Material("coarse", "colourant", "Red 36")
            .Recipe("soap-bar", "", ("oil", "98 g"), ("fine", "1 g"), ("coarse", "1 g"));
        Assert.DoesNotContain(Find(bench.Workshop), f => f.Rule == "colour.not-listed");
    }

    [Fact]
    public void True_soap_is_no_cosmetic_so_the_listings_do_not_bind_it() => Assert.Empty(Find("Curcumin", "soap-bar", "sold as: soap\n"));

    private static Finding[] Find(string colour, string product, string more = "")
    {
        using var bench = new MakerBench()
            .Material("oil", "oil", "Castor Oil")
            .Material("colour", "colourant", colour)
            .Recipe(product, more, ("oil", "99 g"), ("colour", "1 g"));
        return Find(bench.Workshop);
    }

    private static Finding[] Find(Workshop workshop)
    {
        var recipe = workshop.Recipe("bar");
        var (batch, kind, on) = (BatchFormula.Of(workshop, recipe), ProductKindOf.Recipe(recipe), new DateOnly(2026, 11, 25));
        var declaration = DeclarationBuilder.Build(workshop, batch, kind, Market.Us, on);
        var content = LabelContentBuilder.Build(workshop, batch, kind, declaration, Panel.Parse("2x4in").Value!, null, on);
        return [.. RecipeCheck.Run(new RecipeFacts(workshop, batch, kind, declaration, content, []) { On = on }).Findings
            .Where(f => f.Rule.StartsWith("colour.", StringComparison.Ordinal))];
    }
}
