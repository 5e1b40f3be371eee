using LabelForge.Checks;
using LabelForge.Ingredients;
using LabelForge.Markets;
using LabelForge.Recipes;

namespace LabelForge.Tests.Checks;

/// <summary>A label on which nothing is wrong, changed in one place at a time: that place is found, and nothing else.</summary>
public class ChangedLabelTests
{
    private const string Us = """
        Tideline
        Bar soap
        Net Wt 4 oz (113 g)
        Ingredients: Sodium Palmate, Water, Glycerin, Sodium Chloride, Fragrance, Titanium Dioxide.
        Made by Example Works, 12 Mill Road, Fairport, ME 04999
        www.example.com
        Lot 26R25-01E

        """;

    private const string Eu = """
        Tideline
        Soap
        113 g
        Ingredients: Sodium Palmate, Aqua, Glycerin, Sodium Chloride, Parfum, Linalool, CI 77891.
        Example Works, 12 Rue du Moulin, 75001 Exempleville, France
        Best before 05/2028
        Avoid contact with eyes.
        Lot 26R25-01E

        """;

    private const string Ca = """
        Tideline
        Bar soap / Pain de savon
        113 g
        Ingredients: Sodium Palmate, Aqua, Glycerin, Sodium Chloride, Parfum, Linalool, CI 77891.
        Example Works, 12 Mill Road, Exampleton, ON K1A 0A1, Canada
        www.example.com
        For external use only. Pour usage externe seulement.
        Lot 26R25-01E

        """;

    [Theory]
    [InlineData("Bar soap", "Tide", "identity.missing", "Nothing on the label says what the product is.")]
    [InlineData("Net Wt 4 oz (113 g)", "", "net-quantity.missing", "No net quantity of contents was found.")]
    [InlineData("Net Wt 4 oz (113 g)", "Net Wt 4 oz", "net-quantity.one-system-only",
        "\"Net Wt 4 oz\" states the net quantity in US customary units only.")]
    [InlineData("Net Wt 4 oz (113 g)", "Net Wt 113 g", "net-quantity.one-system-only",
        "\"Net Wt 113 g\" states the net quantity in metric units only.")]
    [InlineData("Net Wt 4 oz (113 g)", "Net Wt 4 oz (114 g)", "net-quantity.systems-disagree",
        "4 oz is 113.398 g, but the label says 114 g.")]
    [InlineData("Net Wt 4 oz (113 g)", "Net Wt 4 oz (118 mL)", "net-quantity.systems-disagree", "sets a weight beside a volume")]
    [InlineData("Net Wt 4 oz (113 g)", "4 fl oz (118 mL)", "net-quantity.unit", "states a volume; a bar soap is stated by weight.")]
    [InlineData("Net Wt 4 oz", "Giant Net Wt 4 oz", "net-quantity.overstated", "the word giant tends to exaggerate it or leaves it open.")]
    [InlineData("Net Wt 4 oz", "4 oz", "net-quantity.form", "a weight is told as net weight.")]
    [InlineData("Ingredients: ", "", "ingredients.heading", "The ingredient list has no heading.")]
    [InlineData("Ingredients: Sodium Palmate, Water, Glycerin, Sodium Chloride, Fragrance, Titanium Dioxide.", "", "ingredients.missing",
        "Only a true soap, sold as soap for cleaning and nothing else, may go without.")]
    [InlineData("Sodium Palmate, Water", "Fragrance, Water", "ingredients.order",
        "Fragrance stands first, before Water; as a scent it cannot be the most there is.")]
    [InlineData("Palmate, Water", "Palmate, Fragrance, Water", "ingredients.order",
        "Fragrance stands before Water; as a scent there is seldom more of it.")]
    [InlineData("Glycerin", "Glycrin", "ingredients.name-unknown", "\"Glycrin\" is not a name in the dictionary.")]
    [InlineData("Glycerin", "Aqua", "ingredients.name-foreign", "Aqua: a name for other markets")]
    [InlineData("Glycerin", "Castor Oil", "ingredients.name-everyday", "Everyday names: Castor Oil.")]
    [InlineData("Glycerin", "and other ingredients", "ingredients.name-unknown", "stands in place of a name")]
    [InlineData("Titanium Dioxide", "Colorant", "ingredients.colour-name", "\"Colorant\" is not the name of a colour additive.")]
    [InlineData("Titanium Dioxide", "CI 77891", "ingredients.colour-name", "\"CI 77891\" is not the name of a colour additive.")]
    [InlineData("Titanium Dioxide", "CI 10006", "ingredients.colour-name",
        "\"CI 10006\" is not the name of a colour additive.")]   // a number of no colour listed there
    [InlineData("Titanium Dioxide", "Blue 1 Lake", "colour.lake-name", "without its radical")]
    [InlineData("Bar soap\nNet Wt 4 oz (113 g)\nIngredients: Sodium Palmate, Water, Glycerin, Sodium Chloride, Fragrance,",
        "Lip balm\nNet Wt 0.15 oz (4.2 g)\nIngredients: Beeswax, Ultramarines,", "colour.not-permitted",
        "Ultramarines may not be used on the lips (externally applied cosmetics only).")]
    [InlineData("Sodium Palmate, Water", "Red 40, Water", "ingredients.order",
        "Red 40 stands first, before Water; as a certified colour it cannot be the most there is.")]
    [InlineData("Sodium Palmate, Water, Glycerin", "Sodium Palmate, Disodium EDTA, Water, Glycerin", "ingredients.order",
        "Disodium EDTA stands before Water; as a chelator")]
    [InlineData("Sodium Palmate, Water, Glycerin, Sodium Chloride, Fragrance, Titanium Dioxide",
        "Glycerin, Mica, Sodium Chloride, Sodium Palmate, Talc, Water", "ingredients.order",
        "The ingredients stand in alphabetical order.")]
    [InlineData("Titanium Dioxide", "Red #40", "ingredients.colour-name", "\"Red #40\" is not how the listing names the colour.")]
    [InlineData("Glycerin", "Chloroform", "substance.prohibited,ingredients.name-unknown", "Chloroform is prohibited in cosmetic products")]
    [InlineData("Made by Example Works, ", "", "business-name.missing", "No name of a business was found.")]
    [InlineData("Made by Example Works, 12 Mill Road, Fairport, ME 04999", "", "business-name.missing,business-place.missing",
        "no city, no state, no ZIP code")]
    [InlineData("12 Mill Road, Fairport", "Fairport", "business-place.missing", "The address has no street.")]
    [InlineData("ME 04999", "ME", "business-place.missing", "The place of business is not whole: no ZIP code.")]
    [InlineData("Made by", "Distributed by", "business.role", "The label says \"Distributed by\": right where another makes the product.")]
    [InlineData("Made by", "Manufactured for", "business.role", "The label says \"Manufactured for\"")]
    [InlineData("Fairport, ME 04999", "Exampleton, Canada", "origin.missing",
        "The address is in Canada, and no country of origin was found.")]
    [InlineData("Lot 26R25-01E", "", "lot.missing", "No lot code was found.")]
    [InlineData("Tideline", "Heals rough hands", "claim.drug", "\"Heals\" says that the product heals or cures. That makes it a drug")]
    [InlineData("Tideline", "For professional use only", "professional.ingredients", "for professional use")]
    [InlineData("Tideline", "The safety of this product has not been determined.", "safety.not-determined", "has not been determined")]
    public void In_the_united_states_what_is_changed_is_found(string from, string to, string rules, string says) =>
        Found(Market.Us, Us, from, to, rules, says);

    [Theory]
    [InlineData("Net Wt 4 oz (113 g)", "Net Wt 4 ozs (113 gms)")]
    [InlineData("www.example.com\n", "")]                                   // a whole address is a contact too
    [InlineData("Fairport, ME 04999", "Exampleton, Canada\nMade in Canada")]
    [InlineData("Titanium Dioxide", "Titanium Dioxide (CI 77891)")]
    [InlineData("Titanium Dioxide", "Red 40")]
    [InlineData("Titanium Dioxide", "FD&C Blue No. 1-Aluminum Lake")]
    [InlineData("Sodium Palmate, Water, Glycerin, Sodium Chloride, Fragrance, Titanium Dioxide",
        "Mica, Sodium Chloride, Sodium Palmate, Talc, Water")]   // five may stand so by chance
    [InlineData("Glycerin, Sodium Chloride, Fragrance",
        "Fragrance, Sodium Chloride, Glycerin")]   // one bulk ingredient after it may be a trace
    [InlineData("Bar soap\nNet Wt 4 oz (113 g)\nIngredients: Sodium Palmate, Water, Glycerin, Sodium Chloride, Fragrance, "
        + "Titanium Dioxide", "Eye shadow\nNet Wt 0.15 oz (4.2 g)\nIngredients: Talc, Mica, Red 40")]
    public void In_the_united_states_what_may_stand_so_is_not_found(string from, string to) => Found(Market.Us, Us, from, to, "", "");

    [Theory]
    [InlineData(SoldAs.Cosmetic, "Ingredients: Sodium Palmate, Water, Glycerin, Sodium Chloride, Fragrance, Titanium Dioxide.", "",
        "ingredients.missing", "and the product is sold as a cosmetic.")]
    [InlineData(SoldAs.Soap, "Ingredients: Sodium Palmate, Water, Glycerin, Sodium Chloride, Fragrance, Titanium Dioxide.", "", "", "")]
    [InlineData(SoldAs.Soap, "Glycerin", "Sodium Lauryl Sulfate", "claim.soap-with-detergent",
        "Sodium Lauryl Sulfate is a synthetic detergent")]
    [InlineData(SoldAs.Cosmetic, "12 Mill Road, Fairport, ME 04999\nwww.example.com", "Fairport, ME 04999",
        "contact.missing,business-place.missing", "where to report a bad reaction")]
    [InlineData(SoldAs.Soap, "12 Mill Road, Fairport, ME 04999\nwww.example.com", "Fairport, ME 04999", "business-place.missing",
        "no street")]
    [InlineData(SoldAs.Soap, "Titanium Dioxide", "CI 77891", "", "")]
    [InlineData(SoldAs.Soap, "Tideline", "Moisturizes skin", "claim.makes-soap-a-cosmetic",
        "Sold as soap it may claim to clean and no more")]
    public void How_a_soap_is_sold_decides_what_it_needs(SoldAs soldAs, string from, string to, string rules, string says) =>
        Found(Market.Us, Us, from, to, rules, says, soldAs);

    [Theory]
    [InlineData("\nSoap\n", "\n", "identity.missing", "Nothing on the label says what the product is for.")]
    [InlineData("113 g\n", "", "net-quantity.missing", "No nominal content was found.")]
    [InlineData("113 g", "4 oz", "net-quantity.one-system-only", "\"4 oz\" states the nominal content in ounces alone")]
    [InlineData("113 g", "113 g (5 oz)", "net-quantity.systems-disagree", "5 oz is 141.748 g, but the label says 113 g.")]
    [InlineData("Ingredients: ", "Contains: ", "ingredients.heading", "not preceded by the word Ingredients")]
    [InlineData("Parfum", "Fragrance", "ingredients.name-foreign", "\"Fragrance\": perfume is named Parfum or Aroma")]
    [InlineData("Linalool, ", "", "allergen.undeclared",
        "Parfum is scent, and the list names no fragrance allergen. Scent without any listed allergen above 0.01 % of the "
            + "product is rare.")]
    [InlineData("CI 77891", "Titanium Dioxide", "ingredients.colour-name", "Titanium Dioxide: where it is there for its colour")]
    [InlineData("Aqua", "Water", "ingredients.name-foreign", "Water: not the common name of the glossary.")]
    [InlineData("Glycerin", "Glycrin", "ingredients.name-unknown", "\"Glycrin\" is not a name in the dictionary.")]
    [InlineData("Glycerin", "Hydroquinone", "substance.prohibited,ingredients.name-unknown",
        "Hydroquinone is prohibited in cosmetic products (save in artificial nail systems (Annex III, 14)).")]
    [InlineData("Glycerin", "Zinc Pyrithione", "substance.prohibited", "Zinc Pyrithione is prohibited in cosmetic products.")]
    [InlineData("CI 77891", "Red 40", "ingredients.colour-name,-substance.conditions",
        "Red 40: a colourant is named by its Colour Index number where it has one.")]
    [InlineData("Glycerin", "Mercury", "substance.prohibited,ingredients.name-unknown", "Mercury is prohibited in cosmetic products.")]
    [InlineData("Sodium Palmate, Aqua", "Parfum, Sodium Palmate, Aqua", "ingredients.order", "Parfum stands first, before Sodium Palmate")]
    [InlineData("Example Works, 12 Rue du Moulin, 75001 Exempleville, France\n", "", "business-name.missing,business-place.missing",
        "No whole address of a responsible person was found.")]
    [InlineData(", France", "", "responsible-person.missing",
        "does not say in which country it is, so it is not known whether it can be the responsible person's in the Union")]
    [InlineData("12 Rue du Moulin, 75001 Exempleville, France", "12 Mill Road, Fairport, ME 04999, USA",
        "responsible-person.missing,origin.missing", "The address is in the USA, and none in the Union was found.")]
    [InlineData("12 Rue du Moulin, 75001 Exempleville, France", "12 Mill Road, Fairport, ME 04999, USA\nMade in USA",
        "responsible-person.missing", "The address is in the USA")]
    [InlineData("France\n", "France\nExample Import, 3 Musterweg, 10115 Berlin, Germany\n", "responsible-person.underline",
        "12 Rue du Moulin, 75001 Exempleville, France; 3 Musterweg, 10115 Berlin, Germany")]
    [InlineData("France\n", "France\nExample Maker, 12 Mill Road, Fairport, ME 04999, USA\n", "origin.missing",
        "An address in the USA stands on the label")]
    [InlineData("Best before 05/2028\n", "", "durability.missing",
        "neither until when the product keeps nor how long it may be used once open")]
    [InlineData("Best before 05/2028", "12M", "durability.sign", "\"12M\" goes with the sign of an open jar")]
    [InlineData("Avoid contact with eyes.\n", "", "precautions.none", "No precautions for use were found.")]
    [InlineData("Lot 26R25-01E\n", "", "lot.missing", "No batch number was found.")]
    [InlineData("Tideline", "Heals rough hands", "claim.drug",
        "\"Heals\" says that the product heals or cures. Presented so it is a medicinal product")]
    [InlineData("Tideline", "Hypoallergenic", "claim.needs-proof", "\"Hypoallergenic\" promises fewer allergic reactions.")]
    public void In_the_union_what_is_changed_is_found(string from, string to, string rules, string says) =>
        Found(Market.Eu, Eu, from, to, rules, says);

    [Fact]
    public void In_the_united_kingdom_an_address_in_the_union_is_abroad()
    {
        var british = Eu.Replace("12 Rue du Moulin, 75001 Exempleville, France", "12 Mill Road, Exampleton, EX1 2AB, United Kingdom",
            StringComparison.Ordinal);
        Found(Market.Uk, british, "Tideline", "Tide", "", "");
        Found(Market.Uk, british, "12 Mill Road, Exampleton, EX1 2AB, United Kingdom", "12 Rue du Moulin, 75001 Exempleville, France",
            "responsible-person.missing,origin.missing", "The address is in France, and none in the United Kingdom was found.");
        Assert.All(Check(Market.Uk, british.Replace("Lot 26R25-01E", "", StringComparison.Ordinal), null)
            .Where(f => f.Rule == "lot.missing"), f => Assert.Contains("as retained in the UK", f.Source, StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("Bar soap / Pain de savon", "Bar soap", "identity.one-language", "\"Bar soap\" says what the product is in English alone")]
    [InlineData("Bar soap / Pain de savon", "Pain de savon", "identity.one-language", "says what the product is in French alone")]
    [InlineData("Bar soap / Pain de savon", "Tide", "identity.missing", "Nothing on the label says what the product is.")]
    [InlineData("113 g\n", "", "net-quantity.missing", "No net quantity was found.")]
    [InlineData("113 g", "4 oz", "net-quantity.one-system-only", "\"4 oz\" states the net quantity in ounces alone")]
    [InlineData("Ingredients: Sodium Palmate, Aqua, Glycerin, Sodium Chloride, Parfum, Linalool, CI 77891.\n", "", "ingredients.missing",
        "No list of ingredients was found.")]
    [InlineData("Aqua", "Water", "ingredients.name-foreign", "Water: a thing of the schedule")]
    [InlineData("Glycerin", "Beeswax", "ingredients.name-foreign", "Beeswax: a thing of the schedule")]
    [InlineData("Glycerin", "Glycrin", "ingredients.name-unknown", "\"Glycrin\" is not a name in the dictionary.")]
    [InlineData("Linalool, ", "", "allergen.undeclared", "Parfum is scent, and the list names no fragrance allergen")]
    [InlineData("Example Works, 12 Mill Road, Exampleton, ON K1A 0A1, Canada\n", "", "business-name.missing,business-place.missing",
        "No principal place of business was found")]
    [InlineData("12 Mill Road, Exampleton, ON K1A 0A1, Canada", "12 Mill Road, Fairport, ME 04999, USA", "importer.missing",
        "The address is in the USA, and no importer in Canada was found.")]
    [InlineData("12 Mill Road, Exampleton, ON K1A 0A1, Canada\nwww.example.com", "Exampleton, ON K1A 0A1, Canada", "contact.missing",
        "how a person can reach the maker")]
    [InlineData("Lot 26R25-01E\n", "", "lot.missing", "No lot code was found.")]
    [InlineData("For external use only. Pour usage externe seulement.", "Warning: for external use only.", "warning.one-language",
        "\"Warning\": a warning or direction for safe use stands in English and in French.")]
    [InlineData("For external", "Contents under pressure. For external", "warning.missing",
        "nothing says that the container may explode if heated")]
    [InlineData("Tideline", "Heals rough hands", "claim.drug", "Sold so it is a drug or a natural health product")]
    [InlineData("Sodium Palmate, Aqua", "Parfum, Sodium Palmate, Aqua", "ingredients.order", "Parfum stands first, before Sodium Palmate")]
    [InlineData("Bar soap / Pain de savon", "Body lotion / Lotion corporelle", "net-quantity.unit",
        "a body lotion is stated by volume in Canada")]
    public void In_canada_what_is_changed_is_found(string from, string to, string rules, string says) =>
        Found(Market.Ca, Ca, from, to, rules, says);

    [Theory]
    [InlineData("Aqua", "Water/Eau")]
    [InlineData("Bar soap / Pain de savon", "Pain de savon\nBar soap")]
    [InlineData("Bar soap / Pain de savon", "Pain de savon au sel / Salt soap")]
    [InlineData("12 Mill Road, Exampleton, ON K1A 0A1, Canada", "12 Mill Road, Fairport, ME 04999, USA\nImported by Example Import")]
    [InlineData("For external",
        "CAUTION / ATTENTION. CONTAINER MAY EXPLODE IF HEATED. CE CONTENANT PEUT EXPLOSER S'IL EST CHAUFFÉ. Contents under pressure. "
        + "Do not place in hot water or near radiators, stoves or other sources of heat. Do not puncture or incinerate container or store "
        + "at temperatures over 50 °C. "
        + "Contenu sous pression. Ne pas mettre dans l'eau chaude ni près des radiateurs, poêles ou autres sources de chaleur. "
        + "Ne pas percer le contenant, ni le jeter au feu, ni le conserver à des températures dépassant 50 °C. For external")]
    public void In_canada_what_may_stand_so_is_not_found(string from, string to) => Found(Market.Ca, Ca, from, to, "", "");

    private static void Found(Market market, string label, string from, string to, string rules, string says, SoldAs? soldAs = null)
    {
        Assert.Contains(from, label, StringComparison.Ordinal);
        var clean = Check(market, label, soldAs);
        Assert.All(clean, f => Assert.Equal(Severity.Note, f.Severity));
        var usual = clean.Select(f => f.Rule).ToHashSet();
        var all = Check(market, label.Replace(from, to, StringComparison.Ordinal), soldAs);
        var found = all.Where(f => !usual.Contains(f.Rule)).ToArray();
        // A rule with a minus stood before the change and stands no more; where nothing is said of it, it may go with what it spoke of.
        string[] gone = [.. usual.Except(all.Select(f => f.Rule)).Select(r => "-" + r)];
        Assert.Equal(rules.Split(',', StringSplitOptions.RemoveEmptyEntries).Order(),
            found.Select(f => f.Rule).Distinct().Concat(rules.Contains(",-", StringComparison.Ordinal) ? gone : []).Order());
        Assert.True(rules.Length == 0 || found.Any(f => f.Message.Contains(says, StringComparison.Ordinal)),
            string.Join("\n", found.Select(f => f.Message)));
        Assert.All(found, f => Assert.True(f.Fix.Length > 0 && f.Source.Length > 0, f.Rule));
    }

    private static Finding[] Check(Market market, string label, SoldAs? soldAs) =>
        CheckedLabel.Found(label, market, soldAs: soldAs, on: new(2026, 11, 25));
}
