using LabelForge.Checks;
using LabelForge.Markets;
using LabelForge.Recipes;

namespace LabelForge.Tests.Checks;

/// <summary>
/// Products that these rules are not for: told once, with whose rules are, and not by a row of findings from rules that do not
/// bind them. What a cosmetic is: 21 U.S.C. 321(i); Regulation (EC) No 1223/2009, Article 2(1)(a); Food and Drugs Act, s. 2.
/// </summary>
public sealed class OtherProductTests
{
    private const string Rest =
        "\nNet Wt 4 oz (113 g)\nIngredients: Glycerin, Water, Fragrance.\nRooksedge Bodycare, 1 Example Lane, Fairport, ME "
            + "00000\nLot 26R25-01E";

    [Theory]
    [InlineData("Peppermint Tooth Powder", "us", "FDA")]
    [InlineData("Peppermint Tooth Powder", "eu", "Annex III")]
    [InlineData("Mineral Sunscreen SPF 30", "us", "201.327")]
    [InlineData("Sunscreen\nBody Lotion", "us", "M020")]
    [InlineData("Sonnencreme LSF 30", "eu", "2006/647")]
    [InlineData("Lavender Antiperspirant Stick", "us", "M019")]
    [InlineData("Hand Sanitizer Spray", "us", "EPA")]
    [InlineData("Gel hydroalcoolique", "eu", "528/2012")]
    [InlineData("Handdesinfektion mit Zitrone", "eu", "528/2012")]
    [InlineData("Insect Repellent Soap", "us", "FIFRA")]
    [InlineData("Citronella Bug Spray", "ca", "Pest Management")]
    [InlineData("Spray anti-moustiques", "eu", "528/2012")]
    [InlineData("Soy Wax Candle", "us", "Consumer Product Safety")]
    [InlineData("Lavendelkerze", "eu", "2023/988")]
    [InlineData("Bougie parfumée", "ca", "SOR/2016-165")]
    [InlineData("Candela profumata alla lavanda", "eu", "2023/988")]
    [InlineData("Moss Lane Wax Melts", "uk", "GB CLP")]
    [InlineData("Reed Diffuser", "us", "16 CFR 1500")]
    [InlineData("Laundry Soap", "us", "16 CFR 1500")]
    [InlineData("Solid Dish Soap", "ca", "SOR/2001-269")]
    [InlineData("Gallseife", "eu", "648/2004")]
    [InlineData("Savon vaisselle", "eu", "648/2004")]
    [InlineData("Jabón para ropa", "eu", "648/2004")]
    [InlineData("Oatmeal Dog Shampoo", "us", "human body")]
    [InlineData("Hundeseife mit Hafer", "eu", "human body")]
    [InlineData("Water-based Personal Lubricant", "us", "884.5300")]
    public void What_is_no_cosmetic_is_told_once_with_whose_rules_it_has(string name, string market, string whose)
    {
        var finding = Assert.Single(Found(name + Rest, market));
        Assert.Equal(("product.other", Severity.Must), (finding.Rule, finding.Severity));
        Assert.Contains(whose, finding.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("Birthday Candle\nGlycerin Bar Soap", "us")]
    [InlineData("Candle Lane Soap", "us")]
    [InlineData("Laundry Day\nBar soap", "us")]
    [InlineData("Incense\nBody oil", "us")]
    [InlineData("After-sun Lotion", "eu")]
    [InlineData("Massage Candle", "eu")]
    [InlineData("Lavender Antiperspirant Stick", "eu")]
    [InlineData("Deodorant, not an antiperspirant", "us")]
    [InlineData("Body lotion. This product does not contain a sunscreen.", "us")]
    [InlineData("Bar soap. Not a toothpaste.", "us")]
    [InlineData("Room and body spray", "us")]
    [InlineData("Detergente viso", "eu")]
    [InlineData("Bar soap\nKeep away from candles and incense", "us")]
    [InlineData("Seife Kerzenschein", "eu")]
    [InlineData("Bar soap\nNo more bug spray", "us")]
    public void What_only_speaks_of_such_things_is_judged_as_ever(string name, string market) =>
        Assert.DoesNotContain(Found(name + Rest, market), f => f.Rule == "product.other");

    [Fact]
    public void A_given_kind_never_silences_that_the_label_says_otherwise()
    {
        var found = Found("Insect Repellent Soap" + Rest, "us", "soap-bar");
        Assert.Contains(found,
            f => f.Rule == "product.other" && f.Message.Contains("judged as soap-bar all the same", StringComparison.Ordinal));
        Assert.True(found.Length > 1);
    }

    // 21 CFR 740.17: a foaming detergent bath product carries its caution, whatever kind a person takes it for.
    [Fact]
    public void A_given_kind_never_silences_the_warning_of_what_the_label_says_it_is()
    {
        var found = Found("Bubble Bath\n8 fl oz (236 mL)\nIngredients: Water, Sodium Laureth Sulfate, Fragrance.", "us", "body-wash");
        Assert.Contains(found, f => f.Rule == "warning.missing");
        Assert.Contains(found, f => f.Rule == "product.differs");
        Assert.DoesNotContain(Found("Hand lotion" + Rest, "us", "hand-cream"), f => f.Rule == "product.differs");
    }

    [Theory]
    [InlineData("Soy candle", "body-butter", true)]
    [InlineData("Insect repellent stick", "solid-lotion-bar", true)]
    [InlineData("Lotion bar", "solid-lotion-bar", false)]
    public void A_recipe_says_what_it_is_by_its_name_and_not_by_its_kind(string identity, string kind, bool other)
    {
        using var recipe = new CheckedRecipe { Kind = kind, Identity = identity };
        recipe.Add(500, "Beeswax, Fragrance");
        var found = recipe.In(Market.Us).Findings;
        Assert.Equal(other, found.Any(f => f.Rule == "product.other"));
        if (other)
            Assert.Single(found);
    }

    // 21 CFR 701.20(a)(1): what cleans in soap is the alkali salts of fatty acids.
    [Theory]
    [InlineData("Sodium Cocoate, Glycerin, Water", false)]
    [InlineData("Sodium Cocoate, Betaine, Water", false)]
    [InlineData("Sodium Cocoyl Isethionate, Sodium Stearate, Water", true)]
    [InlineData("Sodium Stearate, Sodium Laureth Sulfate, Water", true)]
    [InlineData("Sodium Stearate, Cocamidopropyl Betaine, Water", true)]
    public void A_detergent_base_sold_as_soap_is_found_in_a_recipe_as_on_a_label(string names, bool detergent)
    {
        using var recipe = new CheckedRecipe { Kind = "soap-bar", Identity = "Bar soap", More = "sold as: soap\n" };
        recipe.Add(500, names, "base");
        Assert.Equal(detergent, recipe.In(Market.Us).Findings.Any(f => f.Rule == "claim.soap-with-detergent"));
        Assert.Equal(detergent,
            Found($"Bar soap\nNet Wt 4 oz (113 g)\nIngredients: {names}.", "us", soldAs: SoldAs.Soap)
                .Any(f => f.Rule == "claim.soap-with-detergent"));
    }

    private static Finding[] Found(string text, string market, string? kind = null, SoldAs? soldAs = null) =>
        CheckedLabel.Found(text, Market.Named(market), kind, soldAs);
}
