using LabelForge.Checks.Words;
using LabelForge.Markets;

namespace LabelForge.Tests.Checks.Claims;

/// <summary>Claims in the official languages of the Union that have no grammar: other-languages.txt, by language.</summary>
public sealed class OtherLanguageTests(ITestOutputHelper output)
{
    private static readonly (string Language, bool IsClaim, string Text)[] All =
        [.. File.ReadLines(Path.Combine(Repository.Folder, "tests", "LabelForge.Tests", "Checks", "Claims", "other-languages.txt"))
            .Where(l => l.Length > 0 && l[0] != '#').Select(l => l.Split('|', StringSplitOptions.TrimEntries))
            .Select(c => (c[0], c[1] == "drug", c[2]))];

    [Fact]
    public void Every_language_has_ten_claims_and_ten_innocents()
    {
        var held = YamlRecord.Embedded("markets/Words/claims-other-languages.yaml").Select(r => r.Text("language", ""));
        Assert.Equal(held.Order(), All.Select(s => s.Language).Distinct().Order());
        Assert.All(All.GroupBy(s => s.Language), g => Assert.Equal((10, 10), (g.Count(s => s.IsClaim), g.Count(s => !s.IsClaim))));
    }

    // Sentences of a label tell its language together, as on a label.
    [Fact]
    public void What_is_said_to_heal_is_told_and_what_is_not_is_not()
    {
        var wrong = new List<string>();
        foreach (var language in All.GroupBy(s => s.Language))
        {
            var label = string.Join('\n', language.Where(s => !s.IsClaim).Select(s => s.Text));
            bool IsTold(string text) => OtherLanguageClaims.In(new ClaimText(text), $"{label}\n{text}").Any();
            var missed = language.Where(s => s.IsClaim && !IsTold(s.Text)).ToArray();
            var told = language.Where(s => !s.IsClaim && IsTold(s.Text)).ToArray();
            output.WriteLine($"{language.Key}: {10 - missed.Length} of 10 told, {told.Length} told wrongly");
            wrong.AddRange(missed.Select(s => $"missed {s.Language}: {s.Text}"));
            wrong.AddRange(told.Select(s => $"wrongly {s.Language}: {s.Text}"));
        }

        Assert.True(wrong.Count == 0, $"{wrong.Count}\n{string.Join('\n', wrong)}");
    }
}
