using System.Globalization;
using System.Text.RegularExpressions;
using LabelForge.Checks.Words;
using LabelForge.Markets;
using LabelForge.Recipes;

namespace LabelForge.Tests.Checks.Claims;

/// <summary>Claims told by what they mean: an act, and what it is done to.</summary>
public sealed partial class MeaningTests
{
    [Theory]
    [InlineData("en", "Sees off the bacteria")]
    [InlineData("fr", "Neutralise toutes les bactéries")]
    [InlineData("de", "Besiegt sämtliche Bakterien")]
    [InlineData("es", "Neutraliza todas las bacterias")]
    [InlineData("it", "Neutralizza tutti i batteri")]
    public void Whatever_the_words_to_act_on_germs_makes_a_drug(string language, string sentence) =>
        Assert.True(Told(sentence).Contains("claim.drug"), language);

    [Theory]
    [InlineData("Cold pressed oils, slowly stirred")]
    [InlineData("It stings a little in the eyes")]
    [InlineData("Sown for the bees and their stings")]
    public void What_ails_only_where_something_is_done_to_it_is_else_no_claim(string sentence) =>
        Assert.DoesNotContain("claim.drug", Told(sentence));

    [Fact]
    public void A_word_too_far_off_belongs_to_no_act() =>
        Assert.DoesNotContain("claim.drug", Told("Stops at every village on its way across the moor to the sea and its colds"));

    [Fact]
    public void Words_that_say_it_already_are_told_once() => Assert.Single(Findings("Moisturizes dry skin", SoldAs.Soap));

    [Fact]
    public void Every_pattern_has_its_words_in_every_language()
    {
        string[] asked = [.. YamlRecord.Embedded("markets/Words/meanings.yaml").SelectMany(r => r.Texts("patterns", ""))
            .SelectMany(p => Class().Matches(p).Select(m => m.Value)).Distinct()];
        foreach (var language in ClaimSentence.Languages)
        {
            var classes = YamlRecord.Embedded($"markets/Words/meanings-{language}.yaml");
            var has = classes.Select(r => r.Text("id", "")).ToHashSet();
            var held = classes.SelectMany(r => r.Texts("words", "")).SelectMany(w => Class().Matches(w).Select(m => m.Value)).ToHashSet();
            Assert.All(asked, c => Assert.Contains(c, has));
            Assert.All(has.Except(held), c => Assert.Contains(c, asked));
        }
    }

    // Frames with a place for a word: a story, and what is done to it.
    [Theory]
    [InlineData("en", "The {0} of the old van", "This sees off {0}")]
    [InlineData("fr", "Le conte de {0} et du vieux camion", "Chasse {0} dans la nuit")]
    [InlineData("de", "Die Geschichte von {0} und dem alten Wagen", "Vertreibt {0} über Nacht")]
    [InlineData("es", "La historia de {0} y de la vieja furgoneta", "Combate {0} en una noche")]
    [InlineData("it", "La storia di {0} e del vecchio furgone", "Combatte {0} in una notte")]
    [InlineData("nl", "Het verhaal van {0} en de oude wagen", "Verdrijft {0} in een nacht")]
    [InlineData("pl", "Historia o {0} i o starym wozie", "Zwalcza {0} w jedna noc")]
    public void A_word_for_what_ails_is_a_claim_where_something_is_done_to_it_and_none_in_a_story(
        string language, string story, string act)
    {
        var words = YamlRecord.Embedded($"markets/Words/meanings-{language}.yaml").First(r => r.Text("id", "") == "everyday")
            .Texts("words", "").Select(w => w.TrimEnd('*')).ToArray();
        Assert.True(words.Length > 10);
        Assert.Equal([], words.Where(w => Told(string.Format(CultureInfo.InvariantCulture, story, w)).Contains("claim.drug")));
        Assert.Equal([], words.Where(w => !Told(string.Format(CultureInfo.InvariantCulture, act, w)).Contains("claim.drug")));
    }

    [Theory]
    [InlineData("The Cough of the Old Van")]
    [InlineData("Each bar cures for six weeks on the old chest of drawers")]
    [InlineData("Balm for people who bite their nails")]
    [InlineData("Snake Bite perfume oil")]
    [InlineData("Le tourbillon et le vertige du manège")]
    public void Stories_and_names_with_such_words_claim_nothing(string sentence) =>
        Assert.DoesNotContain("claim.drug", Told(sentence));

    [Theory]
    [InlineData("Cough balm")]
    [InlineData("For coughs")]
    [InlineData("For a dry cough")]
    [InlineData("Coughs?")]
    [InlineData("Bruise cream")]
    [InlineData("It cures for six weeks, and it cures eczema")]
    [InlineData("Badesalz, das Fieber senkt")]
    [InlineData("Contre la toux")]
    public void As_a_remedy_for_it_or_beside_what_ails_everywhere_they_do(string sentence) =>
        Assert.Contains("claim.drug", Told(sentence));

    private static string[] Told(string sentence) => [.. Findings(sentence, SoldAs.Cosmetic).Select(f => f.Rule)];

    private static IEnumerable<LabelForge.Checks.Finding> Findings(string sentence, SoldAs soldAs) =>
        ClaimFindings.Of(sentence, [], soldAs, MarketBook.Shipped.All.First(m => m.Id == "us"));

    [GeneratedRegex(@"(?<=\{)\w+(?=\})")]
    private static partial Regex Class();
}
