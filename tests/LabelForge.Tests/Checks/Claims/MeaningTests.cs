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
            var has = classes.Select(r => r.Text("id", "")).Concat(SharedLists.SelectMany(Shared).Select(r => r.Text("is", ""))).ToHashSet();
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
            .Texts("words", "").Select(w => w.TrimEnd('*'))
            .Concat(Illnesses.Where(r => r.Text("is", "") == "everyday").SelectMany(r => Words(r, language))).ToArray();
        Assert.True(words.Length > 10);
        Assert.Equal([], words.Where(w => Told(string.Format(CultureInfo.InvariantCulture, story, w)).Contains("claim.drug")));
        Assert.Equal([], words.Where(w => !Told(string.Format(CultureInfo.InvariantCulture, act, w)).Contains("claim.drug")));
    }

    public static TheoryData<string> Languages => [.. ClaimSentence.Languages];

    [Theory]
    [InlineData("en", "This sees off {0}")]
    [InlineData("fr", "Ceci chasse {0}")]
    [InlineData("de", "Das vertreibt {0}")]
    [InlineData("es", "Esto combate {0}")]
    [InlineData("it", "Questo combatte {0}")]
    [InlineData("nl", "Dit verdrijft {0}")]
    [InlineData("pl", "To zwalcza {0}")]
    public void Every_illness_of_the_shared_list_is_known_in_every_language(string language, string act) =>
        Assert.Equal([], Illnesses.Where(r => r.Text("is", "") is "ailments" or "perhaps" or "everyday")
            .SelectMany(r => Words(r, language))
            .Where(w => !Told(string.Format(CultureInfo.InvariantCulture, act, w)).Contains("claim.drug")));

    // A balm, and the cough that it does something to.
    private static readonly Dictionary<string, (string Balm, string Cough)> Done = new()
    {
        ["en"] = ("This balm", "the cough"),
        ["fr"] = ("Ce baume", "la toux"),
        ["de"] = ("Der Balsam", "den Husten"),
        ["es"] = ("Este bálsamo", "la tos"),
        ["it"] = ("Questo balsamo", "la tosse"),
        ["nl"] = ("Deze balsem", "de hoest"),
        ["pl"] = ("Ten balsam", "kaszel"),
    };

    [Theory]
    [MemberData(nameof(Languages))]
    public void Whatever_the_shared_list_does_to_a_cough_is_a_claim_in_every_language(string language) =>
        Assert.Equal([], Shared("doings").Where(r => Actions.Contains(r.Text("is", "")))
            .SelectMany(r => Words(r, language).Select(w => Sentence(w, Done[language], after: r.Text("is", "") == "gone")))
            .Where(s => !Told(s).Contains("claim.drug")));

    // What is done to things as well as to illnesses, done to a barrel: without what ails it claims nothing.
    private static readonly string[] DoneToAnything =
        ["kill", "remove", "fight", "end", "lower", "draw-out", "speed", "reduce", "loosen", "prevent", "protect", "keep-away", "forget"];

    private static readonly Dictionary<string, (string Balm, string Thing)> DoneToThings = new()
    {
        ["en"] = ("The apprentice", "the barrel"),
        ["fr"] = ("L'apprenti", "le tonneau"),
        ["de"] = ("Der Lehrling", "das Fass"),
        ["es"] = ("El aprendiz", "el barril"),
        ["it"] = ("Il garzone", "il barile"),
        ["nl"] = ("De leerling", "het vat"),
        ["pl"] = ("Uczeń", "beczkę"),
    };

    [Theory]
    [MemberData(nameof(Languages))]
    public void Whatever_the_shared_list_does_to_a_barrel_is_no_claim(string language) =>
        Assert.Equal("", string.Join("; ", Shared("doings").Where(r => DoneToAnything.Contains(r.Text("id", "")))
            .SelectMany(r => Words(r, language).Select(w => Sentence(w, DoneToThings[language], after: false)))
            .Where(s => Told(s).Contains("claim.drug"))));

    private static string Sentence(string act, (string Balm, string Cough) of, bool after) =>
        after ? $"{of.Cough} {act}"
            : act.Contains("...", StringComparison.Ordinal) ? $"{of.Balm} {act.Replace("...", of.Cough, StringComparison.Ordinal)}"
            : $"{of.Balm} {act} {of.Cough}";

    private static readonly string[] SharedLists = ["illnesses", "doings", "comparisons"];

    private static readonly string[] Actions = ["ends", "eases", "wards", "gone"];

    private static IReadOnlyList<YamlRecord> Shared(string list) => YamlRecord.Embedded($"markets/Words/{list}.yaml");

    private static IReadOnlyList<YamlRecord> Illnesses => Shared("illnesses");

    private static IEnumerable<string> Words(YamlRecord record, string language) =>
        record.Texts(language, "").Select(w => w.Replace("*", "", StringComparison.Ordinal));

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

    [Theory]
    [InlineData("It took away the cough")]
    [InlineData("Drawing out the splinter")]
    [InlineData("It dried up the boils")]
    [InlineData("Stopping the itch")]
    public void A_verb_that_the_list_has_in_one_form_is_known_in_every_form(string sentence) =>
        Assert.Contains("claim.drug", Told(sentence));

    [Theory]
    [InlineData("claim.needs-proof", "Backed by science")]
    [InlineData("claim.needs-proof", "Sicher für jeden Hauttyp")]
    [InlineData("claim.drug", "Works where the prescription creams failed")]
    [InlineData("claim.drug", "No flare-ups in two years")]
    [InlineData("claim.drug", "Bringt den Kreislauf in Schwung")]
    public void What_the_shared_patterns_mean_is_told(string rule, string sentence) => Assert.Contains(rule, Told(sentence));

    private static string[] Told(string sentence) => [.. Findings(sentence, SoldAs.Cosmetic).Select(f => f.Rule)];

    private static IEnumerable<LabelForge.Checks.Finding> Findings(string sentence, SoldAs soldAs) =>
        ClaimFindings.Of(sentence, [], soldAs, MarketBook.Shipped.All.First(m => m.Id == "us"));

    [GeneratedRegex(@"(?<=\{)\w+(?=\})")]
    private static partial Regex Class();
}
