using LabelForge.Checks.Reading;
using LabelForge.Ingredients;
using LabelForge.Measures;

namespace LabelForge.Tests.Checks;

/// <summary>What is read off a label before anything is judged. All labels are invented.</summary>
public sealed class LabelReadingTests
{
    private static LabelStatement Read(string text) => LabelStatement.Read(LabelText.Of(text, "label.txt"), IngredientDictionary.Shipped);

    [Theory]
    [InlineData("Ingredients: Water, Glycerin, Fragrance.", "Water|Glycerin|Fragrance")]
    [InlineData("INGREDIENTS\nWater\nGlycerin\nFragrance\n\nDirections: lather.", "Water|Glycerin|Fragrance")]
    [InlineData("Ingredients: Water, Glycerin, Titanium\nDioxide, FD&C Red\nNo. 40.\nMade by Pond Cottage",
        "Water|Glycerin|Titanium Dioxide|FD&C Red No. 40")]
    [InlineData("Water, Glycerin, Sodium Stearate, Fragrance", "Water|Glycerin|Sodium Stearate|Fragrance")]
    [InlineData("Ingredients: Water • Glycerin • 1,2-Hexanediol", "Water|Glycerin|1,2-Hexanediol")]
    [InlineData("INCI: Aqua, Glycerin and Parfum", "Aqua|Glycerin|Parfum")]
    [InlineData("Contains: Organic Olive Oil*, Water, Sodium Hydroxide\n*certified organic", "Olive Oil|Water|Sodium Hydroxide")]
    [InlineData("Ingredients: Sucrose, Glycerin, Water (Aqua). May contain: Mica, Iron Oxides",
        "Sucrose|Glycerin|Water (Aqua)|Mica|Iron Oxides")]
    [InlineData("Lavender soap. Ingredients: Water, Glycerin. Lot 12. Net Wt 4 oz (113 g)", "Water|Glycerin")]
    public void An_ingredient_list_is_read_in_the_forms_it_takes(string text, string names) =>
        Assert.Equal(names.Split('|'), Read(text).Names.Select(n => n.Name));

    [Theory]
    [InlineData("Pond Cottage\n12 Mill Road\nExampleton, VT 05000", "Pond Cottage", "12 Mill Road, Exampleton, VT 05000")]
    [InlineData("Handmade by Pond Cottage, 12 Mill Road, Exampleton, VT 05000", "Pond Cottage", "12 Mill Road, Exampleton, VT 05000")]
    [InlineData("Distributed by Bramble & Finch LLC\nP.O. Box 12\nTown Hill, Ohio 44000-1234", "Bramble & Finch LLC",
        "P.O. Box 12, Town Hill, Ohio 44000-1234")]
    [InlineData("Marsh Lane Soap Co. | Fairport ME 00000", "Marsh Lane Soap Co", "Fairport, ME 00000")]
    [InlineData("Marsh Lane Soap Co.\nPortland, OR", "Marsh Lane Soap Co", "Portland, OR")]
    [InlineData("Marsh Lane Goods\nGeneral Delivery\nPortland, OR 97000", "Marsh Lane Goods", "General Delivery, Portland, OR 97000")]
    [InlineData("Filled by Marsh Lane Goods • General Delivery, 5 Sample Sq • Marfa TX 79800", "Marsh Lane Goods",
        "General Delivery, 5 Sample Sq, Marfa, TX 79800")]
    [InlineData("Marsh Lane Goods\nGENERAL DELIVERY 5 SAMPLE SQ\nMarfa TX 79800", "Marsh Lane Goods",
        "GENERAL DELIVERY 5 SAMPLE SQ, Marfa, TX 79800")]
    public void A_business_is_read_with_its_place(string text, string name, string place)
    {
        var business = Read("Bar soap\n" + text).Business;
        Assert.Equal(name, business.Name);
        Assert.Equal(place, business.Place);
    }

    [Theory]
    [InlineData("Lot 26R25-01E", "26R25-01E")]
    [InlineData("LOT# 0412", "0412")]
    [InlineData("Batch no. 12-B", "12-B")]
    [InlineData("L:0426A", "0426A")]
    [InlineData("#1204", "1204")]
    public void A_lot_code_is_read(string text, string code) => Assert.Equal(code, Read("Soap\n" + text).Lot?.Code);

    [Theory]
    [InlineData("Made in small batches with a lot of love")]
    [InlineData("555-0100")]
    public void What_is_no_lot_code_is_not_read_as_one(string text) => Assert.Null(Read("Soap\n" + text).Lot);

    [Theory]
    [InlineData("Fen Meadow\nGlycerin Bar Soap", "Glycerin Bar Soap", "soap-bar")]
    [InlineData("LAVENDER OAT SUGAR SCRUB", "LAVENDER OAT SUGAR SCRUB", "sugar-scrub")]
    [InlineData("Night Heron | Whipped Body Butter | 4 oz", "Whipped Body Butter", "body-butter")]
    [InlineData("Goat milk soap with oats", "Goat milk soap with oats", "soap-bar")]
    public void The_statement_of_identity_is_read(string text, string written, string kind)
    {
        var identity = Read(text).Identity;
        Assert.Equal(written, identity?.Written);
        Assert.Equal(kind, identity?.Kind.Id);
    }

    [Theory]
    [InlineData("Fen Meadow\nKeep soap dry between uses.")]
    [InlineData("Fen Meadow\nMarsh Lane Soap Company\nFairport, ME 00000")]
    public void A_fancy_name_or_a_business_is_no_statement_of_identity(string text) => Assert.Null(Read(text).Identity);

    // On a narrow label a name takes three lines; and a list without a full stop ends where the directions begin.
    [Theory]
    [InlineData("Ingredients: Water,\nGlycerin, Ricinus\nCommunis (Castor) Seed\nOil, Sodium Benzoate\n\nLot 1",
        "Water|Glycerin|Ricinus Communis (Castor) Seed Oil|Sodium Benzoate")]
    [InlineData("Ingredients: Aqua, CI 77491/CI 77492/CI 77499\n\nWork up a lather, then rinse.", "Aqua|CI 77491/CI 77492/CI 77499")]
    [InlineData("Ingredients: Aqua, CI 77491/CI 77492/CI 77499\nWork up a lather, then rinse.", "Aqua|CI 77491/CI 77492/CI 77499")]
    public void A_list_is_read_to_its_end_and_no_further(string text, string names) =>
        Assert.Equal(names.Split('|'), Read(text).Names.Select(n => n.Name));

    [Fact]
    public void Made_in_a_country_is_not_the_country_of_the_address_above_it() =>
        Assert.Equal("CA",
            Read("Rooksedge Bodycare, 1 Example Lane, Fairport, ON K0K 0K0\nMade in United States").Addresses.Single().Country);

    [Fact]
    public void Bytes_that_are_no_text_are_refused() => Assert.Throws<InputException>(() => LabelText.Of("a\0b\u0001", "x"));
}
