using LabelForge.Checks.Reading;

namespace LabelForge.Checks.Words;

/// <summary>
/// What is said to heal, to treat or to disinfect in the official languages of the Union that have no grammar: words, and those
/// that deny them before them in their sentence. They count on a label that is in that language, in part or whole; what is
/// done together with what ails counts in a sentence too short to tell its language by.
/// </summary>
internal static class OtherLanguageClaims
{
    private sealed record Language(
        string Id, PhraseSet Unfair, PhraseSet Drug, PhraseSet Not, PhraseSet Acts, PhraseSet Meant, PhraseSet Ails);

    // Of the words of a line so many tell its language.
    private const double LeastKnown = 0.3;

    private static readonly Lazy<ImmutableArray<Language>> Held = new(() =>
        [.. YamlRecord.Embedded("markets/Words/claims-other-languages.yaml").Select(r => new Language(r.Text("language", "da"),
            PhraseSet.Of(r.Has("unfair") ? r.Texts("unfair", "[uden kemikalier]") : []),
            PhraseSet.Of(r.Texts("drug", "[helbreder]")), PhraseSet.Of(r.Texts("not", "[ikke]")),
            PhraseSet.Of(r.Texts("acts", "[lindrer]")),
            PhraseSet.Of(r.Has("meant") ? r.Texts("meant", "[mod]") : []), PhraseSet.Of(r.Texts("ails", "[hoste]"))))]);

    /// <summary>What denies an ingredient named after it, in those languages.</summary>
    public static IEnumerable<string> Lacks() => YamlRecord.Embedded("markets/Words/claims-other-languages.yaml").Where(r => r.Has("lacks"))
        .SelectMany(r => r.Texts("lacks", "[uden]")).Distinct();

    /// <summary>The words of a text that set down what is lawful and safe.</summary>
    public static IEnumerable<string> Unfair(ClaimText text) =>
        Held.Value.SelectMany(l => l.Unfair.In(text)).Select(m => WordCheck.Plain(text.Written.Substring(m.Index, m.Length)));

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
            var drugs = language.Drug.In(text).Select(m => (Span: new WordSpan(m.Index, m.Index + m.Length), Done: false));
            foreach (var (span, done) in drugs.Concat(Acts(text, language)))
            {
                var place = text.At(span.Start, span.End - span.Start);
                if ((spoken.Value.Contains(language.Id) || (done && !IsKnown(text.Written[place.From..place.To])))
                    && !language.Not.IsIn(place.Before)
                    && !WordContext.IsOfName(place))
                    yield return WordCheck.Plain(text.Written[span.Start..span.End]);
            }
        }
    }

    private static bool IsKnown(string sentence) => LanguageOf.Find(sentence) is { Share: >= LeastKnown };

    // What is done, and to what ails, in one sentence and so few words apart: before it, or behind it as Hungarian has it. What
    // it is meant for stands right before it, or a word before it: "for burns", "for small burns".
    private const int MostApart = 40;
    private const int MostMeantApart = 12;

    private static IEnumerable<(WordSpan Span, bool Done)> Acts(ClaimText text, Language language)
    {
        var ails = language.Ails.In(text).ToArray();
        if (ails.Length == 0)
            yield break;
        foreach (var act in language.Acts.In(text))
        {
            foreach (var ill in ails)
            {
                var (start, end) = (Math.Min(act.Index, ill.Index), Math.Max(act.Index + act.Length, ill.Index + ill.Length));
                if (end - start - act.Length - ill.Length is > 0 and <= MostApart && text.At(start, 0).To >= end)
                    yield return (new(start, end), true);
            }
        }
        foreach (var meant in language.Meant.In(text))
        {
            foreach (var ill in ails)
            {
                if (ill.Index - meant.Index - meant.Length is > 0 and <= MostMeantApart && text.At(meant.Index, 0).To >= ill.Index)
                    yield return (new(meant.Index, ill.Index + ill.Length), false);
            }
        }
    }
}
