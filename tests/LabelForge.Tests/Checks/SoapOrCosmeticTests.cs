using LabelForge.Checks;
using LabelForge.Markets;
using LabelForge.Recipes;

namespace LabelForge.Tests.Checks;

/// <summary>21 CFR 701.20: a soap that is labelled and sold only as soap needs no ingredient list; its own words may end that.</summary>
public sealed class SoapOrCosmeticTests
{
    private const string Plain =
        "Olive Oil Soap\nNet Wt 4 oz (113 g)\nExample Soapery, 5 Mill Rd, Fairport, ME 00000 555-0100\nLot 26R25-01E";
    private const string Promising =
        "Olive Oil Soap\nMoisturizes dry skin\nNet Wt 4 oz (113 g)\nExample Soapery, 5 Mill Rd, Fairport, ME 00000 "
            + "555-0100\nLot 26R25-01E";

    [Theory]
    [InlineData(Plain, null, "ingredients.missing should")]
    [InlineData(Plain, SoldAs.Soap, "")]
    [InlineData(Plain, SoldAs.Cosmetic, "ingredients.missing must")]
    [InlineData(Promising, null, "claim.makes-soap-a-cosmetic should, ingredients.missing must")]
    [InlineData(Promising, SoldAs.Soap, "claim.makes-soap-a-cosmetic must")]
    [InlineData(Promising, SoldAs.Cosmetic, "ingredients.missing must")]
    public void A_soap_that_promises_more_than_to_clean_needs_its_ingredients(string text, SoldAs? soldAs, string expected)
    {
        Assert.Equal(expected, string.Join(", ", CheckedLabel.Found(text, Market.Us, soldAs: soldAs, on: new(2026, 11, 25))
            .Where(f => f.Rule is "ingredients.missing" or "claim.makes-soap-a-cosmetic")
            .Select(f => $"{f.Rule} {f.Severity.ToString().ToLowerInvariant()}").Order()));
    }

    [Theory]
    [InlineData("Made from lard, lye and sodium lauryl sulfate.", true)]
    [InlineData("Never tested on animals, made with coco betaine.", true)]
    [InlineData("Not a drop of water, but a little coco glucoside.", true)]
    [InlineData("Unlike bars made of sodium lauryl sulfate, this is soap.", false)]
    [InlineData("We don't use sodium laureth sulfate.", false)]
    [InlineData("No dyes, sodium lauryl sulfate or parabens.", false)]
    [InlineData("Sodium lauryl sulfate free.", false)]
    [InlineData("Savon sans sodium laureth sulfate.", false)]
    [InlineData("Jabón libre de sodium laureth sulfate.", false)]
    public void A_sentence_names_another_cleanser_where_it_does_not_deny_it(string sentence, bool told) =>
        Assert.Equal(told, CheckedLabel.Found(Plain + "\n" + sentence, Market.Us, soldAs: SoldAs.Soap)
            .Any(f => f.Rule == "claim.soap-with-detergent"));

    [Fact]
    public void Other_ingredients_is_no_name_of_an_ingredient()
    {
        var text =
            "Face Cream\nNet Wt 4 oz (113 g)\nIngredients: Water, Glycerin, Phenoxyethanol, and other ingredients\nExample Co, 5 Mill Rd, "
                + "Fairport, ME 00000 555-0100\nLot 26R25-01E";
        Assert.Contains("trade secret",
            Assert.Single(CheckedLabel.Found(text, Market.Us, on: new(2026, 11, 25)), f => f.Rule == "ingredients.name-unknown").Message);
    }
}
