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

    private static string[] Told(string sentence) => [.. Findings(sentence, SoldAs.Cosmetic).Select(f => f.Rule)];

    private static IEnumerable<LabelForge.Checks.Finding> Findings(string sentence, SoldAs soldAs) =>
        ClaimFindings.Of(sentence, [], soldAs, MarketBook.Shipped.All.First(m => m.Id == "us"));

    [GeneratedRegex(@"(?<=\{)\w+(?=\})")]
    private static partial Regex Class();
}
