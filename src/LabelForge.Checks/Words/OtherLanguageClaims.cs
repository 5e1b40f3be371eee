using LabelForge.Checks.Reading;

namespace LabelForge.Checks.Words;

/// <summary>
/// What is said to heal, to treat or to disinfect in the official languages of the Union that have no grammar: words, and those
/// that deny them before them in their sentence. They count on a label that is in that language, in part or whole.
/// </summary>
internal static class OtherLanguageClaims
{
    private sealed record Language(string Id, PhraseSet Drug, PhraseSet Not);

    // Of the words of a line so many tell its language.
    private const double LeastKnown = 0.3;

    private static readonly Lazy<ImmutableArray<Language>> Held = new(() =>
        [.. YamlRecord.Embedded("markets/Words/claims-other-languages.yaml").Select(r => new Language(r.Text("language", "da"),
            PhraseSet.Of(r.Texts("drug", "[helbreder]")), PhraseSet.Of(r.Texts("not", "[ikke]"))))]);

    /// <summary>The words of a text that make a medicine of the product.</summary>
    /// <param name="text">The words that are judged.</param>
    /// <param name="label">All words of the label, which tell its languages.</param>
    public static IEnumerable<string> In(ClaimText text, string label)
    {
        var spoken = new Lazy<HashSet<string>>(() => [.. label.Split('\n').Select(LanguageOf.Find)
            .OfType<(string Language, double Share)>().Where(l => l.Share >= LeastKnown).Select(l => l.Language)]);
        foreach (var language in Held.Value)
        {
            foreach (var match in language.Drug.In(text))
            {
                if (spoken.Value.Contains(language.Id) && !language.Not.IsIn(text.At(match.Index, match.Length).Before))
                    yield return WordCheck.Plain(text.Written.Substring(match.Index, match.Length));
            }
        }
    }
}
