using LabelForge.Checks.Words;
using LabelForge.Ingredients;
using LabelForge.Markets;
using LabelForge.Recipes;

namespace LabelForge.Tests.Checks;

/// <summary>What words claim and deny. Which words make a drug: 21 U.S.C. 321(g)(1) and FDA's
/// pages on cosmetics and drugs, from memory.</summary>
public sealed class WordTests
{
    private static string[] Rules(string text, string ingredients = "", SoldAs? soldAs = SoldAs.Cosmetic) =>
        [.. ClaimFindings.Of(text,
            [.. ingredients.Split(", ", StringSplitOptions.RemoveEmptyEntries).Select(n => (n, IngredientDictionary.Shipped.Find(n)))],
            soldAs, Market.Us).Select(f => f.Rule)];

    [Theory]
    [InlineData("Treats eczema")]
    [InlineData("A natural remedy for dry skin")]
    [InlineData("Heals cracked hands")]
    [InlineData("Antibacterial hand wash")]
    [InlineData("Anti-bacterial")]
    [InlineData("Kills 99 % of germs")]
    [InlineData("SPF 30")]
    [InlineData("Soothes sore\nmuscles")]
    [InlineData("Great for people with psoriasis")]
    [InlineData("Say no more to acne")]
    [InlineData("Not tested on animals, treats acne")]
    [InlineData("Not only moisturizes but heals")]
    [InlineData("Reduces wrinkles")]
    [InlineData("Helps you sleep")]
    [InlineData("Stimulates collagen")]
    [InlineData("Keeps mosquitoes away")]
    public void Words_of_a_drug_are_found(string text) => Assert.Contains("claim.drug", Rules(text));

    [Theory]
    [InlineData("Not tested on animals")]
    [InlineData("This soap does not treat any condition")]
    [InlineData("Not intended to diagnose, treat, cure, or prevent any disease.")]
    [InlineData("Treat yourself to a long bath")]
    [InlineData("Healthy-looking skin")]
    [InlineData("If rash or irritation occurs, stop use and consult a physician.")]
    [InlineData("Do not use on wounds or broken skin")]
    [InlineData("Reduces the appearance of cellulite")]
    [InlineData("Cured for six weeks")]
    [InlineData("Discontinue use if rash, redness, or itching occurs.")]
    [InlineData("A relaxing scent for a quiet evening")]
    [InlineData("This product does not contain a sunscreen and does not protect against sunburn.")]
    public void Words_that_claim_nothing_of_a_drug_are_left_alone(string text) => Assert.DoesNotContain("claim.drug", Rules(text));

    // 21 CFR 701.20(a): sold only as soap; FDA: moisturising, scenting the body or deodorising makes it a cosmetic.
    [Theory]
    [InlineData("Moisturizing soap", true)]
    [InlineData("Leaves your skin silky and soft", true)]
    [InlineData("Deodorizing bar", true)]
    [InlineData("Cleans hands and face", false)]
    [InlineData("Scented with lavender", false)]
    public void A_soap_may_claim_to_clean_and_no_more(string text, bool becomesCosmetic)
    {
        Assert.Equal(becomesCosmetic, Rules(text, soldAs: SoldAs.Soap).Contains("claim.makes-soap-a-cosmetic"));
        Assert.DoesNotContain("claim.makes-soap-a-cosmetic", Rules(text));
    }

    [Theory]
    [InlineData("Fragrance free", "Water, Fragrance")]
    [InlineData("Unscented", "Water, Lavandula Angustifolia (Lavender) Oil")]
    [InlineData("No parabens, sulfates or dyes", "Water, Sodium Laureth Sulfate")]
    [InlineData("Free of parabens, phthalates and artificial colors", "Water, Red 40")]
    [InlineData("Vegan", "Sodium Tallowate, Water")]
    [InlineData("100% plant-based", "Olive Oil, Beeswax")]
    [InlineData("Vegan friendly", "Olive Oil, Goat Milk")]
    [InlineData("Palm-oil free", "Sodium Palmate, Water")]
    [InlineData("Sulfate-free", "Water, Sodium Coco-Sulfate")]
    [InlineData("Without preservatives", "Water, Phenoxyethanol")]
    [InlineData("100% natural", "Water, Phenoxyethanol")]
    [InlineData("Contains no dyes", "Water, Yellow 5")]
    public void What_the_ingredients_contradict_is_found(string text, string ingredients) =>
        Assert.Contains("claim.contradicted", Rules(text, ingredients));

    [Theory]
    [InlineData("Fragrance free", "Water, Glycerin, Phenoxyethanol")]
    [InlineData("Not vegan", "Beeswax")]
    [InlineData("It is not a vegan balm.", "Beeswax")]
    [InlineData("Deze zeep is niet vegan.", "Beeswax")]
    [InlineData("Vegan", "Olive Oil, Cocos Nucifera (Coconut) Milk")]
    [InlineData("Sulfate free", "Magnesium Sulfate, Water")]
    [InlineData("No synthetic fragrance", "Lavandula Angustifolia (Lavender) Oil")]
    [InlineData("No artificial colors", "Water, Mica, Iron Oxides")]
    [InlineData("Palm free", "Olive Oil, Palmarosa Oil")]
    [InlineData("No animal testing. Fragrance of roses", "Fragrance")]
    public void What_the_ingredients_bear_out_is_left_alone(string text, string ingredients) =>
        Assert.DoesNotContain("claim.contradicted", Rules(text, ingredients));

    [Theory]
    [InlineData("Hypoallergenic")]
    [InlineData("Dermatologist-tested")]
    [InlineData("FDA approved")]
    public void Words_that_need_proof_are_named(string text) => Assert.Contains("claim.needs-proof", Rules(text));
}
