using LabelForge.Checks.Words;
using LabelForge.Markets;

namespace LabelForge.Tests.Checks.Claims;

/// <summary>
/// Claims in the official languages of the Union that have no grammar: other-languages.txt, and more-languages.txt, which was
/// written when the words for the first stood.
/// </summary>
public sealed class OtherLanguageTests(ITestOutputHelper output)
{
    private sealed record Sentence(string Language, bool IsClaim, string Text);

    private static Sentence[] Read(string file) =>
        [.. File.ReadLines(Path.Combine(Repository.Folder, "tests", "LabelForge.Tests", "Checks", "Claims", file + ".txt"))
            .Where(l => l.Length > 0 && l[0] != '#').Select(l => l.Split('|', StringSplitOptions.TrimEntries))
            .Select(c => new Sentence(c[0], c[1] == "drug", c[2]))];

    [Theory]
    [InlineData("other-languages", 10, 10)]
    [InlineData("more-languages", 5, 4)]
    public void Every_language_has_as_many_claims_and_innocents(string file, int claims, int innocents)
    {
        var held = YamlRecord.Embedded("markets/Words/claims-other-languages.yaml").Select(r => r.Text("language", ""));
        var all = Read(file);
        Assert.Equal(held.Order(), all.Select(s => s.Language).Distinct().Order());
        Assert.All(all.GroupBy(s => s.Language),
            g => Assert.Equal((claims, innocents), (g.Count(s => s.IsClaim), g.Count(s => !s.IsClaim))));
    }

    // Sentences of a label tell its language together, as on a label.
    [Theory]
    [InlineData("other-languages")]
    [InlineData("more-languages")]
    public void What_is_said_to_heal_is_told_and_what_is_not_is_not(string file)
    {
        var wrong = new List<string>();
        foreach (var language in Read(file).GroupBy(s => s.Language))
        {
            var label = string.Join('\n', language.Where(s => !s.IsClaim).Select(s => s.Text));
            bool IsTold(string text) => OtherLanguageClaims.In(new ClaimText(text), $"{label}\n{text}").Any();
            var missed = language.Where(s => s.IsClaim && !IsTold(s.Text)).ToArray();
            var told = language.Where(s => !s.IsClaim && IsTold(s.Text)).ToArray();
            output.WriteLine($"{language.Key}: {missed.Length} of {language.Count(s => s.IsClaim)} missed, {told.Length} told wrongly");
            wrong.AddRange(missed.Select(s => $"missed {s.Language}: {s.Text}"));
            wrong.AddRange(told.Select(s => $"wrongly {s.Language}: {s.Text}"));
        }
        Assert.True(wrong.Count == 0, $"{wrong.Count}\n{string.Join('\n', wrong)}");
    }

    // Both ways, by the words themselves: whatever is done to whatever ails is told, and what ails is not told alone.
    [Fact]
    public void What_is_done_to_what_ails_is_told_and_what_ails_is_not_told_alone()
    {
        var wrong = new List<string>();
        var all = YamlRecord.Embedded("markets/Words/claims-other-languages.yaml");
        static string[] Words(YamlRecord held, string key) => [.. held.Texts(key, "").Select(w => w.Replace("*", ""))];
        string[] drugs = [.. all.SelectMany(r => Words(r, "drug"))];
        foreach (var held in all)
        {
            var (language, acts, ails) = (held.Text("language", ""), Words(held, "acts"), Words(held, "ails"));
            var label = string.Join('\n', Read("other-languages").Where(s => s.Language == language && !s.IsClaim).Select(s => s.Text));
            bool IsTold(string text) => OtherLanguageClaims.In(new ClaimText(text), $"{label}\n{text}").Any();
            wrong.AddRange(ails.Select((ill, i) => $"{acts[i % acts.Length]} {ill}").Where(t => !IsTold(t)).Select(t => $"{language}: {t}"));
            wrong.AddRange(ails.Where(ill => !drugs.Concat(acts).Any(ill.Contains) && IsTold(ill)).Select(t => $"{language} alone: {t}"));
        }
        Assert.True(wrong.Count == 0, $"{wrong.Count}\n{string.Join('\n', wrong)}");
    }
}
