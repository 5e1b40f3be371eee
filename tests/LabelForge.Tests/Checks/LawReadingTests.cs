using LabelForge.Checks;
using LabelForge.Ingredients;
using LabelForge.Markets;
using LabelForge.Recipes;

namespace LabelForge.Tests.Checks;

/// <summary>What was found different when the texts of the law were read, as a label shows it.</summary>
public sealed class LawReadingTests
{
    private const string Foot = "\nNet Wt 4 oz (113 g)\nExample Soapery, 1 Example Lane, Fairport, ME 00000\nLot 26R25-01E\n";
    private const string Caution =
        "Caution: Use only as directed. Excessive use or prolonged exposure may cause irritation to skin and urinary tract. "
        + "Discontinue use if rash, redness, or itching occurs. Consult your physician if irritation persists. Keep out of reach "
        + "of children. ";

    // 21 CFR 740.17: by the surface-active agent, with directions, and not for what is labelled for adults only.
    [Theory]
    [InlineData("bath-bomb", "Sodium Bicarbonate, Citric Acid", "", false)]
    [InlineData("bath-bomb", "Sodium Bicarbonate, Citric Acid, Sodium Lauryl Sulfoacetate", "", true)]
    [InlineData("bath-bomb", "Sodium Bicarbonate, Citric Acid, Sodium Lauryl Sulfoacetate", "For adult use only.", false)]
    [InlineData("bath-bomb", "Sodium Bicarbonate, Sodium Lauryl Sulfoacetate", Caution + "Drop into a full bath.", false)]
    [InlineData("foaming-bath", "Water, Sodium Laureth Sulfate", Caution, true)]
    [InlineData("foaming-bath", "Water, Sodium Laureth Sulfate", Caution + "Directions: pour under running water.", false)]
    [InlineData("foaming-bath", "Water, Sodium Laureth Sulfate", "Keep out of reach of children.", true)]
    // 21 CFR 740.19: a tan by a colour additive as well.
    [InlineData("body-lotion", "Water, Glycerin, Dihydroxyacetone", "", true)]
    [InlineData("body-lotion", "Water, Glycerin", "", false)]
    public void A_warning_is_asked_for_where_its_paragraph_calls_for_it(string kind, string ingredients, string words, bool asked) =>
        Assert.Equal(asked, Us(kind, $"Ingredients: {ingredients}.\n{words}").Any(f => f.Rule == "warning.missing"));

    // 21 CFR 740.11(a)(4): what is no spray may leave the eyes out; 740.12(b): no distance without liquefied gas.
    [Theory]
    [InlineData("Shaving foam in a can. Contents under pressure. Do not puncture or incinerate. Do not store at temperature above 120 F. "
        + "Keep out of reach of children.", false)]
    [InlineData("Body spray in a can. Contents under pressure. Do not puncture or incinerate. Do not store at temperature above 120 F. "
        + "Keep out of reach of children.", true)]
    public void What_is_no_spray_need_not_speak_of_spraying_in_eyes(string words, bool asked) =>
        Assert.Equal(asked,
            Us("body-spray", $"Ingredients: Water, Alcohol Denat.\n{words}")
                .Any(f => f.Message.Contains("spraying in eyes", StringComparison.Ordinal)));

    // 21 CFR 74.2053, 73.2995 and 74.2052: by the kinds that the section names.
    [Theory]
    [InlineData("face-powder", "Talc, Black 3", false)]
    [InlineData("blusher", "Talc, Black 3", true)]
    [InlineData("face-powder", "Talc, Luminescent Zinc Sulfide", false)]
    [InlineData("body-lotion", "Water, Luminescent Zinc Sulfide", true)]
    [InlineData("soap-bar", "Sodium Palmate, Black 2", true)]
    [InlineData("lipstick", "Ricinus Communis (Castor) Seed Oil, Black 2", false)]
    [InlineData("body-lotion", "Water, Silver Nitrate", true)]
    [InlineData("eye-shadow", "Talc, Green 5 Lake", true)]
    public void A_colour_may_be_where_its_section_says(string kind, string ingredients, bool refused) =>
        Assert.Equal(refused, Us(kind, $"Ingredients: {ingredients}.").Any(f => f.Rule == "colour.not-permitted"));

    // 21 CFR 73.2995(d)(2) on the label of the product; 73.2190(d) on that of henna.
    [Theory]
    [InlineData("face-powder", "Talc, Luminescent Zinc Sulfide", "", "Must")]
    [InlineData("face-powder", "Talc, Luminescent Zinc Sulfide", "Do not use in the area of the eye.", null)]
    [InlineData("hair-dye", "Henna", "Make a preliminary test. Not for eyelashes or eyebrows.", "Should")]
    public void A_listing_that_wants_words_on_the_label_gets_them(string kind, string ingredients, string words, string? severity) =>
        Assert.Equal(severity,
            Us(kind, $"Ingredients: {ingredients}.\n{words}")
                .FirstOrDefault(f => f.Message.Contains("area of the eye", StringComparison.Ordinal))?.Severity.ToString());

    // 16 CFR 500.17(a) and 500.5(c) for soap sold as soap; 21 CFR 701.13(d) and 701.12(d) for a cosmetic.
    [Theory]
    [InlineData(SoldAs.Soap, "Net Wt 4.125 oz (116 g)", false)]
    [InlineData(SoldAs.Soap, "Net Wt 4.1255 oz (116 g)", true)]
    [InlineData(SoldAs.Cosmetic, "Net Wt 4.125 oz (116 g)", true)]
    public void Soap_may_state_three_decimals_and_a_cosmetic_two(SoldAs soldAs, string net, bool found) =>
        Assert.Equal(found,
            Of("us", "soap-bar", $"Bar soap\n{net}\nExample Soapery, Fairport, ME 00000\nwww.soapery.example\n", soldAs)
                .Any(f => f.Rule == "net-quantity.form"));

    [Theory]
    [InlineData(SoldAs.Soap, "2026-11-26", "note")]
    [InlineData(SoldAs.Soap, "2015-11-16", "should")]
    [InlineData(SoldAs.Soap, "2015-11-17", "note")]
    [InlineData(SoldAs.Cosmetic, "2026-11-26", "should")]
    public void A_web_site_may_list_the_street_of_who_sells_soap_as_soap(SoldAs soldAs, string on, string severity) =>
        Assert.Equal(severity,
            Of("us", "soap-bar", "Bar soap\nNet Wt 4 oz (113 g)\nExample Soapery, Fairport, ME 00000\nwww.soapery.example\n", soldAs, on)
            .Where(f => f.Rule == "business-place.missing").Select(f => f.Severity.ToString().ToLowerInvariant()).Single());

    // C.R.C., c. 869, s. 20(a), since 2024-10-09; c. 417, s. 21.
    [Fact]
    public void In_canada_a_way_to_reach_someone_is_a_must_and_a_viscous_product_is_stated_by_volume()
    {
        var findings = Of("ca", "body-butter",
            "Body butter / Beurre corporel\n113 g\nExample Works, Exampleton, ON\nIngredients/Ingrédients: Glycerin.\n", null);
        Assert.Equal(Severity.Must, findings.Single(f => f.Rule == "contact.missing").Severity);
        Assert.Contains("volume", findings.Single(f => f.Rule == "net-quantity.unit").Message, StringComparison.Ordinal);
    }

    // C.R.C., c. 869, s. 22(a): in both languages.
    [Theory]
    [InlineData("A preliminary test should first be made. Not for dyeing the eyelashes or eyebrows.", true)]
    [InlineData("A preliminary test should first be made. Not for dyeing the eyelashes or eyebrows. Effectuer une épreuve préliminaire. "
        + "Ne pas teindre les sourcils ni les cils.", true)]
    [InlineData("CAUTION: This product contains ingredients that may cause skin irritation on certain individuals and a preliminary test "
        + "according to accompanying directions "
        + "should first be made. This product must not be used for dyeing the eyelashes or eyebrows. To do so may cause blindness. MISE "
        + "EN GARDE : Ce produit contient des "
        + "ingrédients qui peuvent causer de l’irritation cutanée chez certaines personnes; il faut donc d’abord effectuer une épreuve "
        + "préliminaire selon les directives "
        + "ci-jointes. Ce produit ne doit pas servir à teindre les sourcils ni les cils; en ce faisant, on pourrait provoquer la cécité.",
        false)]
    public void In_canada_a_hair_dye_has_set_words_in_both_languages(string words, bool asked) =>
        Assert.Equal(asked,
            Of("ca", "hair-dye", $"Hair dye / Teinture capillaire\n60 mL\nIngredients/Ingrédients: Aqua.\n{words}\n", null)
                .Any(f => f.Rule == "warning.missing"));

    // Regulation (EU) 2026/78: from 1 May 2026.
    [Theory]
    [InlineData("eu", "2026-04-30", false)]
    [InlineData("eu", "2026-05-01", true)]
    [InlineData("uk", "2026-05-01", false)]
    public void Silver_is_for_lips_and_eye_shadow_alone_in_the_union_since_may_2026(string market, string on, bool refused) =>
        Assert.Equal(refused,
            Of(market, "face-cream", "Face cream\n50 ml\nIngredients: Aqua, Glycerin, CI 77820.\n", null, on)
                .Any(f => f.Rule == "colour.not-permitted"));

    // The Regulations of 2026 of Great Britain, as reported: from 15 August 2026.
    [Theory]
    [InlineData("2026-08-14", false)]
    [InlineData("2026-08-15", true)]
    public void Great_britain_prohibits_trimethylbenzoyl_diphenylphosphine_oxide_from_its_own_day(string on, bool found) =>
        Assert.Equal(found,
            Of("uk", "face-cream",
                "Face cream\n50 ml\nIngredients: Aqua, Trimethylbenzoyl Diphenylphosphine Oxide, Retinol, Pentetic Acid.\n", null, on)
                .Any(f => f.Rule == "substance.prohibited"));

    private static Finding[] Us(string kind, string text) =>
        Of("us", kind, $"{ProductKinds.Find(kind).Value!.Name}\n{text}{Foot}", SoldAs.Cosmetic);

    private static Finding[] Of(string market, string kind, string text, SoldAs? soldAs, string on = "2026-11-26") =>
        CheckedLabel.Found(text, Market.Named(market), kind, soldAs,
            DateOnly.Parse(on, System.Globalization.CultureInfo.InvariantCulture));
}
