using LabelForge.Checks;
using LabelForge.Markets;
using LabelForge.Recipes;

namespace LabelForge.Tests.Checks;

/// <summary>What the texts say of several pieces in a package, of other languages and of abbreviations.</summary>
public sealed class SecondReadingTests
{
    // The example of 16 CFR 500.27(a) for bars of soap, and the same with a total that is wrong.
    [Theory]
    [InlineData("6 Bars, Net Wt. 3.4 ozs. (96.3 g) each, Total Net Wt. 1 lb. 4.4 oz. (578 g)", SoldAs.Soap, "")]
    [InlineData("6 Bars, Net Wt. 3.4 ozs. (96.3 g) each, Total Net Wt. 2 lb. 4.4 oz. (1578 g)", SoldAs.Soap,
        "net-quantity.overstated must")]
    [InlineData("6 Bars, Net Wt. 3.4 ozs. (96.3 g) each, Total Net Wt. 1 lb. 4.4 oz. (477 g)", SoldAs.Soap,
        "net-quantity.overstated must")]
    [InlineData("6 Bars, Net Wt. 3.4 ozs. (96.3 g) each", SoldAs.Soap, "net-quantity.missing must")]
    [InlineData("6 Bars, Net Wt. 3.4 ozs. (96.3 g) each", SoldAs.Cosmetic, "net-quantity.missing should")]
    [InlineData("Bar soap, Net Wt. 3.4 oz. (96.3 g)", SoldAs.Soap, "")]
    public void Several_bars_in_a_package_say_how_many_how_much_each_and_the_total(string quantity, SoldAs soldAs, string found) =>
        Assert.Equal(found.Length == 0 ? [] : [found],
            Us($"Bar soap\n{quantity}\n", soldAs).Where(f => f.Source.Contains("500.27", StringComparison.Ordinal))
                .Select(f => $"{f.Rule} {f.Severity.ToString().ToLowerInvariant()}"));

    // The example of 16 CFR 500.28(a)(2)(ii), its total in the same line and in the next; its sum is by ounces, of rounded grams 321.
    [Theory]
    [InlineData("2 soap bars Net Wt. 3.2 ozs. (90 g) each; 1 soap bar Net Wt. 5.0 ozs. (141 g). Total: 3 bars Net Wt. 11.4 ozs. (323 g)",
        false)]
    [InlineData("2 soap bars Net Wt. 3.2 ozs. (90 g) each; 1 soap bar Net Wt. 5.0 ozs. (141 g).\nTotal: 3 bars Net Wt. 11.4 ozs. (323 g)",
        false)]
    [InlineData("2 soap bars Net Wt. 3.2 ozs. (90 g) each; 1 soap bar Net Wt. 5.0 ozs. (141 g). Total: 3 bars Net Wt. 14.4 ozs. (408 g)",
        true)]
    [InlineData("1 Moss Wall, 2 Sea Lavender, Net Wt 4 oz (113 g) each; 1 Tall Bar, Net Wt 5 oz (142 g); Total: 4 pieces, Net Wt "
        + "17 oz (482 g)", false)]
    [InlineData("1 Moss Wall, 2 Sea Lavender, Net Wt 4 oz (113 g) each; 1 Tall Bar, Net Wt 5 oz (142 g); Total: 4 pieces, Net Wt "
        + "9 oz (255 g)", true)]
    public void Similar_pieces_are_added_up_product_by_product(string quantity, bool isWrong) =>
        Assert.Equal(isWrong, Us($"Bar soap\n{quantity}\n", SoldAs.Soap).Any(f => f.Source.Contains("500.28", StringComparison.Ordinal)));

    // 21 CFR 701.2(b)(2).
    [Theory]
    [InlineData("Bar soap / Pain de savon\nNet Wt 4 oz (113 g)\nIngrédients: Aqua. Mode d'emploi: faire mousser. Fabriqué au Canada.\n",
        true)]
    [InlineData("Bar soap\nNet Wt 4 oz (113 g)\nIngredients: Water.\nDirections: lather and rinse. Made in Canada.\n", false)]
    [InlineData("Savon du Jardin, a bar soap\nNet Wt 4 oz (113 g)\nIngredients: Water.\n", false)]
    public void A_label_that_speaks_another_language_says_all_in_it(string text, bool found) =>
        Assert.Equal(found, Us(text, SoldAs.Cosmetic).Any(f => f.Rule == "language.foreign"));

    // 21 CFR 701.13(n): no abbreviations but the section's; what is none is no unit here.
    [Theory]
    [InlineData("Net Wt 4 oz (113 g)", false)]
    [InlineData("Net Wt 4 ozs. (113 g)", false)]
    [InlineData("Net Wt 4 onz (113 g)", true)]
    public void A_unit_is_abbreviated_as_the_section_has_it(string quantity, bool found) =>
        Assert.Equal(found,
            Us($"Bar soap\n{quantity}\n", SoldAs.Cosmetic).Any(f => f.Rule is "net-quantity.one-system-only" or "net-quantity.missing"));

    private static Finding[] Us(string text, SoldAs soldAs) => CheckedLabel.Found(
        text + "Example Soapery, 1 Example Lane, Fairport, ME 00000\nLot 26R25-01E\n", Market.Us, "soap-bar", soldAs);
}
