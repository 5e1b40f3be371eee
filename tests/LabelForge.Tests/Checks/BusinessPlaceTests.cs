using LabelForge.Markets;

namespace LabelForge.Tests.Checks;

/// <summary>Who answers for a product inside the market: Regulation (EC) No 1223/2009, Articles 4 and 19(1)(a); the same as retained in
/// the United Kingdom; C.R.C., c. 417, s. 31 in Canada. What is told of addresses, in the order of their gravity and no more.</summary>
public sealed class BusinessPlaceTests
{
    private const string France = "Example Works, 12 Rue du Moulin, 75001 Exempleville, France";
    private const string Germany = "Beispiel Import, 3 Musterweg, 10115 Berlin, Germany";
    private const string Usa = "Example Maker, 12 Mill Road, Fairport, ME 04999, USA";
    private const string Britain = "Example House, 12 Mill Road, Exampleton, EX1 2AB, United Kingdom";
    private const string Canada = "Example North, 12 Mill Road, Exampleton, ON K1A 0A1, Canada";

    [Theory]
    [InlineData("eu", France, "")]
    [InlineData("eu", France + "\n" + Germany, "responsible-person.underline")]
    [InlineData("eu", Usa, "origin.missing responsible-person.missing")]
    [InlineData("eu", Usa + "\nMade in USA", "responsible-person.missing")]
    [InlineData("eu", Usa + "\n" + France, "origin.missing")]
    [InlineData("eu", Usa + "\n" + France + "\nMade in the USA", "")]
    [InlineData("eu", Britain, "origin.missing responsible-person.missing")]
    [InlineData("eu", Britain + "\nProduct of Scotland", "responsible-person.missing")]
    [InlineData("eu", "Example Works, 12 Rue du Moulin, 75001 Exempleville", "responsible-person.missing")]
    [InlineData("eu", "", "business-name.missing business-place.missing")]
    [InlineData("uk", Britain, "")]
    [InlineData("uk", France, "origin.missing responsible-person.missing")]
    [InlineData("uk", France + "\n" + Britain, "origin.missing")]
    [InlineData("uk", France + "\n" + Britain + "\nFabriqué en France", "")]
    [InlineData("ca", Canada, "")]
    [InlineData("ca", Usa, "importer.missing")]
    [InlineData("ca", Usa + "\nImported by Example North", "")]
    [InlineData("ca", Usa + "\nImporté par Example North", "")]
    [InlineData("ca", Usa + "\nProduct of USA", "")]
    [InlineData("ca", Usa + "\n" + Canada, "importer.missing")]
    [InlineData("ca", "", "business-name.missing business-place.missing contact.missing")]
    [InlineData("ca", "www.example.com", "business-name.missing business-place.missing")]
    public void What_is_told_of_addresses_is_what_the_market_asks(string market, string addresses, string rules)
    {
        var text = $"Body lotion / Lotion pour le corps\n100 ml\nIngredients: Aqua, Glycerin, Phenoxyethanol.\n\n{addresses}\n\n"
            + "Best before 05/2028\nAvoid contact with eyes.\nLot 1\n";
        var found = CheckedLabel.Found(text, Market.Named(market));
        Assert.Equal(rules,
            string.Join(' ', found.Select(f => f.Rule).Where(r => r.Split('.')[0] is "business-name" or "business-place" or "contact"
                or "origin" or "importer" or "responsible-person").Distinct().Order(StringComparer.Ordinal)));
    }
}
