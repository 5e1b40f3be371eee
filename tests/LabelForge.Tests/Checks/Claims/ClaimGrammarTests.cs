using LabelForge.Ingredients;
using LabelForge.Markets;
using LabelForge.Recipes;

namespace LabelForge.Tests.Checks.Claims;

/// <summary>What a sentence makes of its words: the grammar of claims, case by case.</summary>
public sealed class ClaimGrammarTests
{
    [Theory]
    [InlineData("Does not treat acne, eczema or psoriasis", false)]
    [InlineData("Not tested on animals, treats acne or eczema", true)]
    [InlineData("Not only cleans but cures athlete's foot", true)]
    [InlineData("Is no cure for eczema", false)]
    [InlineData("Not a perfume: treats acne", true)]
    [InlineData("Heilt keine Ekzeme", false)]
    [InlineData("Heilt nicht nur Ekzeme", true)]
    [InlineData("Wir sagen nicht, dass sie Ekzeme heilt", false)]
    [InlineData("Ne soigne pas l'eczéma", false)]
    [InlineData("Sans parfum, soigne l'eczéma", true)]
    [InlineData("NE SOIGNE PAS L'ECZEMA", false)]
    [InlineData("No cura el eccema", false)]
    [InlineData("Non cura l'eczema", false)]
    [InlineData("Sapone senza profumo che cura l'eczema", true)]
    public void A_denial_reaches_as_far_as_its_sentence_lets_it(string sentence, bool claims) => Assert.Equal(claims, IsDrug(sentence));

    [Theory]
    [InlineData("Named after the old baker's toothache", false)]
    [InlineData("The captain's gout gave it its name", false)]
    [InlineData("Named after our moor, it heals eczema", true)]
    [InlineData("Named after our moor this balm heals eczema", true)]
    [InlineData("We named it Relief because it cures eczema", true)]
    [InlineData("Named for my daughter: for eczema and psoriasis", true)]
    [InlineData("Benannt nach dem Zahnweh des Bäckers", false)]
    [InlineData("Nach unserem Moor benannt, hilft sie bei Neurodermitis", true)]
    [InlineData("Elle doit son nom à la lande et soigne l'eczéma", true)]
    [InlineData("Say goodbye to eczema", true)]
    public void A_name_given_claims_nothing_and_takes_no_claim_beside_it_away(string sentence, bool claims) =>
        Assert.Equal(claims, IsDrug(sentence));

    [Theory]
    [InlineData("Will it cure my eczema? No. It is soap.", false)]
    [InlineData("Eczema? No more!", false)]
    [InlineData("Eczema? Reach for this bar.", true)]
    [InlineData("Heilt sie Ekzeme? Nein, sie wäscht.", false)]
    public void A_question_claims_by_its_answer(string words, bool claims) => Assert.Equal(claims, IsDrug(words));

    [Theory]
    [InlineData("Heals the soul", false)]
    [InlineData("Heals the skin", true)]
    [InlineData("A remedy for grey afternoons", false)]
    [InlineData("Cures acne in the morning", true)]
    [InlineData("Heilt den Montagskummer", false)]
    [InlineData("Cura l'anima", false)]
    [InlineData("Sana el alma y el eccema", true)]
    public void What_no_soap_could_heal_is_a_figure_of_speech(string sentence, bool claims) => Assert.Equal(claims, IsDrug(sentence));

    [Theory]
    [InlineData("Acne Street Soapworks", false)]
    [InlineData("Acne Soap", true)]
    [InlineData("Psoriasis Bar", true)]
    [InlineData("The Healing Well Soapworks", false)]
    [InlineData("Savonnerie de la rue de l'Acné", false)]
    [InlineData("acne street style", true)]
    public void A_place_or_a_house_may_be_called_what_it_likes_and_a_product_may_not(string name, bool claims) =>
        Assert.Equal(claims, IsDrug(name));

    [Theory]
    [InlineData("12M after opening\nKeep powder away from children's nose and mouth.", false)]
    [InlineData("For years of opening\nAvoid the nose", false)]
    [InlineData("Opens\nyour nose", true)]
    [InlineData("HELPS YOU\nKEEP COLDS AWAY", true)]
    public void A_warning_begins_on_its_own_line_and_claims_nothing_with_the_line_above(string words, bool claims) =>
        Assert.Equal(claims, IsDrug(words));

    [Theory]
    [InlineData("Stop using it if a rash appears", false)]
    [InlineData("En cas d'irritation, consultez un médecin", false)]
    [InlineData("If you suffer from eczema, this bar will help", true)]
    [InlineData("A share of the price goes to eczema research", false)]
    public void A_warning_or_a_gift_claims_nothing(string sentence, bool claims) => Assert.Equal(claims, IsDrug(sentence));

    [Theory]
    [InlineData("Named after the rheumatism of a harbor pilot", false)]
    [InlineData("Nach dem Rheuma des alten Wirts benannt", false)]
    [InlineData("Poured across the lane from the old tuberculosis sanatorium", false)]
    [InlineData("Made by a retired arthritis nurse for people with arthritis", true)]
    [InlineData("The tin protects the bar from knocks and cuts", false)]
    [InlineData("Good for small cuts", true)]
    public void Whose_the_illness_is_tells_whether_it_is_claimed(string sentence, bool claims) => Assert.Equal(claims, IsDrug(sentence));

    [Theory]
    [InlineData("No soap can heal eczema", false)]
    [InlineData("Since using this bar I have no psoriasis any more", true)]
    [InlineData("Sinds ik deze zeep gebruik heb ik geen acne meer", true)]
    [InlineData("Da quando lo uso non ho dermatiti", true)]
    [InlineData("Unsere Seife heilt keine Hautkrankheiten", false)]
    [InlineData("Since this is plain soap, it does not treat eczema", false)]
    [InlineData("Since we are no doctors, we make no claim to treat eczema", false)]
    public void To_have_an_illness_no_more_is_no_denial(string sentence, bool claims) => Assert.Equal(claims, IsDrug(sentence));

    [Theory]
    [InlineData("Die Salbe zieht Splitter heraus", true)]
    [InlineData("Der Winzer zieht den Korken heraus", false)]
    [InlineData("Deze balsem houdt de muggen op afstand", true)]
    [InlineData("Het hek houdt de schapen op afstand", false)]
    public void What_an_act_encloses_is_what_it_is_done_to(string sentence, bool claims) => Assert.Equal(claims, IsDrug(sentence));

    // A name that holds another is not that other: cocoa is no coconut, sulfoacetate no sulfate, lemongrass no lemon.
    [Theory]
    [InlineData("Neem-free", "Azadirachta Indica (Neem) Seed Oil", true)]
    [InlineData("No almond, neem or aloe", "Aloe Barbadensis Leaf Juice", true)]
    [InlineData("Free of lemon", "Cymbopogon Schoenanthus (Lemongrass) Oil", false)]
    [InlineData("Coconut-free", "Theobroma Cacao (Cocoa) Seed Butter", false)]
    [InlineData("Cocoa-free", "Sodium Cocoate", false)]
    [InlineData("Cocoa-free", "Sodium Cocoa Butterate", true)]
    [InlineData("Sulfate-free", "Sodium Lauryl Sulfoacetate", false)]
    [InlineData("SLS-free", "Sodium Laureth Sulfate", false)]
    [InlineData("Contains no clay", "Kaolin", true)]
    [InlineData("No fuss, just kaolin", "Kaolin", false)]
    [InlineData("Free shipping on kaolin", "Kaolin", false)]
    [InlineData("Not kaolin-free", "Kaolin", false)]
    [InlineData("Polysorbate free", "Polysorbate 20", true)]
    [InlineData("Palmölfrei", "Sodium Palmate", true)]
    [InlineData("Sans parfum ni colorant", "CI 77491", true)]
    [InlineData("Senza profumo né coloranti", "CI 77491", true)]
    public void X_free_is_held_against_the_list_for_any_X(string words, string ingredient, bool contradicted) =>
        Assert.Equal(contradicted, Found(words, ingredient, Market.Us).Contains("claim.contradicted"));

    [Fact]
    public void The_words_found_are_quoted_as_the_label_writes_them() =>
        Assert.Contains("Soigne",
            ClaimFindings.Of("Soigne l'ECZÉMA", [], SoldAs.Cosmetic, Market.Eu)
                .Single(f => f.Rule == "claim.drug" && f.Message.Contains("treats", StringComparison.Ordinal)).Message,
            StringComparison.Ordinal);

    private static bool IsDrug(string words) => Found(words, null, Market.Us).Contains("claim.drug");

    private static string[] Found(string words, string? ingredient, Market market) =>
        [.. ClaimFindings.Of(words, ingredient is null ? [] : [(ingredient, IngredientDictionary.Shipped.Find(ingredient))],
            SoldAs.Cosmetic, market).Select(f => f.Rule)];
}
