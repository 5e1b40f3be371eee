using LabelForge.Checks.Words;
using LabelForge.Ingredients;
using LabelForge.Markets;
using LabelForge.Recipes;

namespace LabelForge.Tests.Checks;

/// <summary>
/// Sentences of our own, half of them innocent. What makes a drug: intended to cure, mitigate, treat or prevent disease, or
/// to affect the structure or any function of the body (21 U.S.C. 321(g)(1)); a cosmetic cleanses, beautifies, promotes
/// attractiveness or alters the appearance (321(i)); soap may say that it cleans (21 CFR 701.20).
/// </summary>
public sealed class WordTableTests
{
    private static readonly string[] Drugs =
    [
        "Cures dry patches overnight", "Our balm heals chapped skin", "A healing salve for gardeners", "Helps treat psoriasis naturally",
        "Treatment for athlete's foot", "For the relief of eczema", "Fights acne before it starts", "Clears up pimples fast",
        "Say goodbye to breakouts", "Kills germs on contact", "Kills 99.9% of bacteria", "An antibacterial bar",
        "With antimicrobial silver", "Antiseptic wash for little hands", "Antifungal foot powder", "Sanitizes hands without water",
        "Natural SPF 15", "Broad-spectrum sunscreen stick", "Protects against UV rays", "Relieves itching from bug bites",
        "Soothes poison ivy", "An anti-inflammatory blend", "Reduces inflammation", "Reduces swelling of tired feet",
        "Eases pain in stiff joints", "Great for arthritis", "Melts away sore muscles", "Relieves headaches and migraines",
        "Fades scars and stretch marks", "Gets rid of cellulite", "Regrows thinning hair", "Promotes hair growth", "Boosts collagen",
        "Stimulates circulation", "Regenerates skin cells", "Removes wrinkles for good", "Reverses aging", "Controls dandruff",
        "An antiperspirant cream", "Stops sweating all day", "A natural insect repellent", "Repels ticks", "Detoxifies the body",
        "Draws out toxins", "Boosts your immune system", "Balances hormones", "Relieves anxiety", "Helps you sleep", "Clears sinuses",
        "Treats diaper rash", "Not only cleans but heals", "Tested on people, not animals, and treats rosacea",
        "Prevents infection in small cuts", "Rid your feet of warts", "Medicated chest rub", "A remedy for cold sores", "Numbing balm",
        "Skin-bleaching cream", "Prevents cavities", "Therapeutic-grade relief: relieves pain",
    ];

    private static readonly string[] Innocent =
    [
        "Cleans hands and face", "Leaves skin feeling clean", "A gentle bar for every day", "Smells of cedar and rain",
        "Scented with lavender", "Lathers richly in hard water", "Made in small batches", "Cured for six weeks",
        "Cured on wooden racks before we wrap it", "Not tested on animals", "Never tested on animals", "Cruelty free",
        "Reduces the appearance of fine lines", "Reduces the look of cellulite", "Softens dry skin", "Moisturizes all day long",
        "Treat yourself to a long bath", "Treat your skin to something soft", "A treat for tired gardeners", "For oily skin",
        "Healthy-looking hair", "For a healthy glow", "This product is not intended to diagnose, treat, cure or prevent any disease.",
        "Does not treat any condition", "We make no claims to heal or cure", "Discontinue use if rash or irritation occurs",
        "If irritation persists, consult a physician", "Do not apply to broken or irritated skin", "Keep out of reach of children",
        "Avoid contact with eyes; in case of contact rinse with water", "Not a sunscreen; does not contain SPF",
        "This product does not contain a sunscreen and does not protect against sunburn.", "Do not use on open wounds",
        "Not recommended for people with eczema", "Ask your doctor before use if you are pregnant", "Warning: may cause skin irritation",
        "Caution: this product contains a nut oil", "Sunburn Alert: may increase your skin's sensitivity to the sun", "Store below 30 °C",
        "Best within 12 months", "A relaxing scent for a quiet evening", "Deodorant, not an antiperspirant", "Helps your hair look fuller",
        "Washes loose flakes away", "Fights odor all day", "A fresh start to the morning", "Rinse well and pat dry",
        "Wet the bar, work up a lather, rinse", "Hand-cut with care", "Wildflower meadow in a bottle", "Great on beards",
        "Takes the grease off after a day in the garage", "Brings a shine to boots and belts", "Our goats graze by the sea",
        "Poured by hand in Maine", "Smooth on after shaving", "Leaves a light scent on the skin", "Pairs well with our oat lotion",
        "A little goes a long way", "Keep the bar dry between uses",
    ];

    public static TheoryData<string> DrugSentences => [.. Drugs];

    public static TheoryData<string> InnocentSentences => [.. Innocent];

    [Theory]
    [MemberData(nameof(DrugSentences))]
    public void A_claim_to_act_on_disease_or_on_the_body_makes_a_drug(string sentence) => Assert.Contains("claim.drug", Rules(sentence));

    [Theory]
    [MemberData(nameof(InnocentSentences))]
    public void Innocent_words_are_left_alone(string sentence) => Assert.DoesNotContain("claim.drug", Rules(sentence));

    [Fact]
    public void The_table_holds_a_hundred_and_twenty_sentences_half_of_them_innocent()
    {
        Assert.True(Drugs.Length + Innocent.Length >= 120);
        Assert.InRange(Innocent.Length, Drugs.Length - 5, Drugs.Length + 5);
    }

    private static string[] Rules(string text) => [.. ClaimFindings.Of(text, [], SoldAs.Cosmetic, Market.Us).Select(f => f.Rule)];
}
