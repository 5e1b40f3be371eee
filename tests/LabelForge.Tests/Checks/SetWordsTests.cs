using LabelForge.Checks;
using LabelForge.Checks.Words;
using LabelForge.Markets;

namespace LabelForge.Tests.Checks;

/// <summary>Warnings whose words the law sets are held against them word by word, in each market that sets any.</summary>
public sealed class SetWordsTests
{
    private static readonly DateOnly On = new(2026, 11, 26);

    private const string Head = "Suds\nBubble bath\n12 fl oz (354 mL)\nDirections: pour under running water.\n";
    private const string Tail =
        "\nIngredients: Water, Sodium Laureth Sulfate, Glycerin\nMade by Example Works, 12 Mill Road, Fairport, ME 04999\nLot 26";
    private const string Caution =
        "Caution: Use only as directed. Excessive use or prolonged exposure may cause irritation to skin and urinary tract. "
        + "Discontinue use if rash, redness, or itching occurs. Consult your physician if irritation persists. Keep out of reach "
        + "of children.";

    [Theory]
    [InlineData(Caution)]
    [InlineData("CAUTION - USE ONLY AS DIRECTED. EXCESSIVE USE OR PROLONGED EXPOSURE MAY CAUSE IRRITATION\nTO SKIN AND URINARY TRACT. "
        + "DISCONTINUE USE IF RASH, REDNESS OR ITCHING OCCURS. CONSULT YOUR PHYSICIAN IF IRRITATION PERSISTS. KEEP OUT OF REACH OF "
        + "CHILDREN EXCEPT UNDER ADULT SUPERVISION.")]
    public void The_law_s_words_pass_whatever_their_stops_capitals_and_lines(string caution) =>
        Assert.Equal([], Told("us", Head + caution + Tail));

    [Theory]
    [InlineData("or prolonged exposure may", "or long exposure may", "Excessive use or prolonged exposure")]
    [InlineData("Discontinue use if rash, redness, or itching occurs", "Stop use if a rash shows",
        "Discontinue use if rash, redness, or itching occurs")]
    [InlineData("Consult your physician if irritation persists", "Consult a doctor if it does not go away", "Consult your physician")]
    [InlineData("to skin and urinary tract", "to the urinary tract", "irritation to skin and urinary tract")]
    [InlineData("Caution: ", "", "Caution:")]
    public void A_paraphrase_and_a_missing_word_are_told_with_the_law_s_words(string from, string to, string said) =>
        Assert.Contains(said, Assert.Single(Told("us", Head + Caution.Replace(from, to, StringComparison.Ordinal) + Tail)),
            StringComparison.Ordinal);

    [Fact]
    public void Every_set_warning_passes_in_its_own_words_and_none_without_one_of_them()
    {
        var tried = 0;
        foreach (var (market, warning) in Market.All.SelectMany(m => SafetyLists.WarningsOf(m).Select(w => (m, w))))
        {
            foreach (var part in warning.Parts.Where(p => !p.Exact.IsEmpty))
            {
                Assert.All(part.Exact, e => Assert.True(new SetWords($"{warning.Signal}: {e}").Have(e)));
                // The key words by which a part is known to be there at all stand in the law's own.
                Assert.Matches(part.Words, part.Exact[0]);
                var words = part.Exact[0].Split(' ');
                for (var i = 0; i < words.Length; i++)
                    Assert.False(new SetWords(string.Join(' ', words.Where((_, at) => at != i))).Have(part.Exact[0]),
                        $"{market.Id}: {part.Exact[0]} without {words[i]}");
                tried++;
            }
        }
        Assert.True(tried > 25, $"{tried}");
    }

    [Fact]
    public void Words_that_an_annex_sets_may_be_broken_over_lines()
    {
        const string Cream =
            "Fen\nFace cream\n50 ml\nIngredients: Aqua, Glycerin, Retinol, Cetearyl Alcohol\n12M\nLot 3\nExample Works, 12 Rue du Moulin, "
                + "75001 Exempleville, France\n";
        Assert.DoesNotContain(All("eu", Cream + "Contains Vitamin A. Consider your\ndaily intake before use."),
            f => f.Rule == "warning.missing");
        Assert.Contains(All("eu", Cream + "Contains Vitamin A. Consider your intake before use."), f => f.Rule == "warning.missing");
    }

    private static string[] Told(string market, string text) =>
        [.. All(market, text).Where(f => f.Rule == "warning.missing").Select(f => f.Message)];

    private static IReadOnlyList<Finding> All(string market, string text) =>
        CheckedLabel.Found(text, Market.Named(market), on: On);
}
