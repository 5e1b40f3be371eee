namespace LabelForge.Checks.Words;

/// <summary>Finds what words claim and deny.</summary>
public static partial class WordCheck
{
    /// <summary>Whether the words claim anything of this weight.</summary>
    public static bool Claims(string text, Makes makes)
    {
        var words = new ClaimText(text);
        return WordLists.Claims.Where(c => c.Makes == makes).Any(c => Hits(words, c).Any());
    }

    /// <summary>The words of a text that make a claim, where they claim it and do not deny it or warn.</summary>
    internal static IEnumerable<ClaimHit> Hits(ClaimText text, ClaimWords claim)
    {
        // English words are found in whatever language, for labels mix it in; what is put together of several only in its own.
        var words = claim.Words
            .Select(w => (w.Language, ByMeaning: false, Spans: w.Finds.In(text).Select(m => new WordSpan(m.Index, m.Index + m.Length))));
        var meanings = claim.Meanings.Where(m => text.MayBe(m.Language))
            .SelectMany(m => m.Patterns.Value.Select(p => (m.Language, ByMeaning: true, Spans: p.In(text))));
        foreach (var (language, byMeaning, spans) in words.Concat(meanings))
        {
            foreach (var span in spans)
            {
                var place = text.At(span.Start, span.End - span.Start);
                if (((!byMeaning && language == "en") || place.Grammars.Any(g => g.Language == language))
                    && !IsEverydayAlone(place, span, language)
                    && !claim.Unless.Any(u => u.Excuses(place))
                    && !(claim.Figures && WordContext.IsFigure(place))
                    && !WordContext.ClaimsNothing(place))
                    yield return new(Plain(text.Written[span.Start..span.End]), span, byMeaning);
            }
        }
    }

    // "The cough of the old van" says nothing of the product; "Coughs?" asks whoever has one, and "coughs and colds" lists what it is for.
    private static bool IsEverydayAlone(ClaimPlace place, WordSpan span, string language)
    {
        var words = (place.Grammars is [var only] ? new[] { only.Language, language } : [language]).Distinct()
            .Select(WordLists.Everyday).OfType<WordClass>().Select(place.Text.Of).FirstOrDefault(spans => spans.Any(w => w.Covers(span)));
        if (words.IsDefault)
            return false;
        var whole = words.Where(w => w.Covers(span)).MaxBy(w => w.End - w.Start);
        return !words.Any(w => place.Lists(whole, w))
            && !(place.IsAsked && !place.After.Any(char.IsLetter)
                && place.Sentence.Split(' ', StringSplitOptions.RemoveEmptyEntries).Length <= MostOfAsking);
    }

    private const int MostOfAsking = 3;

    /// <summary>The words of a text by which it denies something; null where it does not.</summary>
    internal static string? Denial(ClaimText text, DenialWords denial) =>
        denial.Words.In(text)
            .FirstOrDefault(m => text.At(m.Index, m.Length) is var place && !WordContext.IsNot(place) && !WordContext.IsAnsweredNo(place))
            is { } match
            ? Plain(text.Written.Substring(match.Index, match.Length))
            : null;

    /// <summary>Spaces as one.</summary>
    internal static string Plain(string words) => Spaces().Replace(words, " ").Trim();

    [GeneratedRegex(@"\s+")]
    private static partial Regex Spaces();
}

/// <summary>Words of a text that claim something.</summary>
/// <param name="Words">As they are written.</param>
/// <param name="Span">Where they stand.</param>
/// <param name="ByMeaning">Whether they were put together by what they mean, and stand as they are in no list.</param>
internal readonly record struct ClaimHit(string Words, WordSpan Span, bool ByMeaning);
