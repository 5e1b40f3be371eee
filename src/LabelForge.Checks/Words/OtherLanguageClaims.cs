using LabelForge.Checks.Reading;

namespace LabelForge.Checks.Words;

/// <summary>
/// What is said to heal, to treat or to disinfect in the official languages of the Union that have no grammar: words, and those
/// that deny them before them in their sentence. They count on a label that is in that language, in part or whole.
/// </summary>
internal static class OtherLanguageClaims
{
    private sealed record Language(string Id, PhraseSet Drug, PhraseSet Not, PhraseSet Acts, PhraseSet Ails);

    // Of the words of a line so many tell its language.
    private const double LeastKnown = 0.3;

    private static readonly Lazy<ImmutableArray<Language>> Held = new(() =>
        [.. YamlRecord.Embedded("markets/Words/claims-other-languages.yaml").Select(r => new Language(r.Text("language", "da"),
            PhraseSet.Of(r.Texts("drug", "[helbreder]")), PhraseSet.Of(r.Texts("not", "[ikke]")),
            PhraseSet.Of(r.Texts("acts", "[lindrer]")), PhraseSet.Of(r.Texts("ails", "[hoste]"))))]);

    /// <summary>The words of a text that make a medicine of the product.</summary>
    /// <param name="text">The words that are judged.</param>
    /// <param name="label">All words of the label, which tell its languages.</param>
    public static IEnumerable<string> In(ClaimText text, string label)
    {
        // A line may be in either of two close languages, where all lines together are in one.
        var spoken = new Lazy<HashSet<string>>(() => [.. label.Split('\n').Select(LanguageOf.Find)
            .OfType<(string Language, double Share)>().Where(l => l.Share >= LeastKnown)
            .Concat(LanguageOf.Find(label) is { } whole ? [whole] : []).Select(l => l.Language)]);
        foreach (var language in Held.Value)
        {
            var drugs = language.Drug.In(text).Select(m => new WordSpan(m.Index, m.Index + m.Length));
            foreach (var span in drugs.Concat(Acts(text, language)))
            {
                if (spoken.Value.Contains(language.Id) && !language.Not.IsIn(text.At(span.Start, span.End - span.Start).Before))
                    yield return WordCheck.Plain(text.Written[span.Start..span.End]);
            }
        }
    }

    // What is done, and to what ails, in one sentence and so few words apart: before it, or behind it as Hungarian has it.
    private const int MostApart = 40;

    private static IEnumerable<WordSpan> Acts(ClaimText text, Language language)
    {
        var acts = language.Acts.In(text).ToArray();
        if (acts.Length == 0)
            yield break;
        foreach (var ails in language.Ails.In(text))
        {
            foreach (var act in acts)
            {
                var (start, end) = (Math.Min(act.Index, ails.Index), Math.Max(act.Index + act.Length, ails.Index + ails.Length));
                if (end - start - act.Length - ails.Length is > 0 and <= MostApart && text.At(start, 0).To >= end)
                    yield return new(start, end);
            }
        }
    }
}
