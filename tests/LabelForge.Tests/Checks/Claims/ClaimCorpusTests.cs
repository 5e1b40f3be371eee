namespace LabelForge.Tests.Checks.Claims;

/// <summary>The corpus of sentences; its scores stand in docs/checks.md.</summary>
public sealed class ClaimCorpusTests(ITestOutputHelper output)
{
    [Fact]
    public void The_corpus_holds_at_least_six_hundred_sentences_nearly_half_of_them_innocent()
    {
        var all = ClaimSentence.Languages.SelectMany(l => ClaimSentence.Read(l)).ToArray();
        Assert.True(all.Length >= 600);
        Assert.InRange((double)all.Count(s => s.IsInnocent) / all.Length, 0.4, 0.6);
        Assert.InRange((double)all.Count(s => s.HeldOut) / all.Length, 0.28, 0.38);
        Assert.Equal(all.Length, all.DistinctBy(s => (s.Language, s.Text, string.Join(';', s.Ingredients))).Count());
    }

    public static TheoryData<string, string> Corpora =>
        [.. from corpus in ClaimSentence.Corpora from language in ClaimSentence.Languages select (corpus, language)];

    // The misses of the held-out third are counted, never shown.
    [Theory]
    [MemberData(nameof(Corpora))]
    public void Sentences_are_judged_by_what_they_mean(string corpus, string language)
    {
        var outcomes = ClaimOutcome.OfAll(corpus, language);
        foreach (var wrong in outcomes.Where(o => !o.Sentence.HeldOut && (o.Score.False > 0 || o.Score.Told < o.Score.Wanted))
            .GroupBy(o => (o.Sentence.Text, o.Rule, o.Score.False)))
            output.WriteLine(
                $"{(wrong.Key.False > 0 ? "false" : "MISSED")} {wrong.Key.Rule[6..]} {string.Join(',', wrong.Select(o => o.Market))}: {wrong.Key.Text} [{string.Join("; ", wrong.First().Sentence.Ingredients)}]");
        foreach (var held in new[] { false, true })
        {
            var score = outcomes.Where(o => o.Sentence.HeldOut == held).Aggregate(default(ClaimScore), (s, o) => s + o.Score);
            output.WriteLine($"{corpus} {language} {(held ? "held out" : "open")}: {score}");
        }
    }

    [Fact]
    public void Of_a_hundred_findings_held_out_ninety_six_are_told_and_of_a_hundred_told_ninety_seven_are_right()
    {
        var held = from corpus in ClaimSentence.Corpora
                   from language in ClaimSentence.Languages
                   from outcome in ClaimOutcome.OfAll(corpus, language)
                   where outcome.Sentence.HeldOut
                   select outcome.Score;
        var score = held.Aggregate(default(ClaimScore), (s, o) => s + o);
        Assert.True(score is { Recall: >= 0.96, Precision: >= 0.97 }, $"{score}");
    }
}
