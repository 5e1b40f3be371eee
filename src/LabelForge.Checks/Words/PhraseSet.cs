using LabelForge.Checks.Reading;

namespace LabelForge.Checks.Words;

/// <summary>
/// Phrases of the word lists, found together in a text without accents. The lists hold some thousands, of which a label has
/// a few: the pattern is made only for a text that holds the longest word of one of them.
/// </summary>
public sealed class PhraseSet
{
    private readonly ImmutableArray<string> probes;
    private readonly Lazy<Regex> pattern;

    /// <summary>Phrases as the lists write them, and the pattern that finds them as whole words.</summary>
    internal PhraseSet(IEnumerable<string> phrases, Func<IReadOnlyList<string>, Regex> pattern)
    {
        ImmutableArray<string> folded = [.. phrases.Select(FoldedText.KeepingCase)];
        probes = [.. folded.Select(Probe).Distinct()];
        this.pattern = new(() => pattern(folded));
    }

    /// <summary>Phrases found as they stand.</summary>
    internal static PhraseSet Of(IEnumerable<string> phrases) => new(phrases, PhrasePattern.Any);

    /// <summary>Where they stand in a text.</summary>
    internal IEnumerable<Match> In(ClaimText text) => MayBeIn(text.Lower) ? pattern.Value.Matches(text.Folded) : [];

    /// <summary>Whether one of them stands in a sentence without accents.</summary>
    internal bool IsIn(string sentence) => MayBeIn(sentence.ToLowerInvariant()) && pattern.Value.IsMatch(sentence);

    /// <summary>Whether one of them changes the sense of words in their sentence. What overlaps the words does, and what stands apart
    /// from them; not what has the same words elsewhere: "cures for six weeks, cures eczema" says the second still.</summary>
    internal bool Excuses(ClaimPlace place)
    {
        if (!MayBeIn(place.Sentence.ToLowerInvariant()))
            return false;
        var (start, end) = (place.Start - place.From, place.End - place.From);
        return pattern.Value.Matches(place.Sentence)
            .Any(m => (m.Index < end && start < m.Index + m.Length) || !m.Value.Contains(place.Words, StringComparison.OrdinalIgnoreCase));
    }

    /// <summary>Whether a sentence without accents begins with one of them.</summary>
    internal bool Begins(string sentence) =>
        MayBeIn(sentence.ToLowerInvariant()) && pattern.Value.Match(sentence) is { Success: true, Index: 0 };

    private bool MayBeIn(string lower) => probes.Any(p => lower.Contains(p, StringComparison.Ordinal));

    // The longest run of letters and digits: it stands in every text that the phrase is found in.
    internal static string Probe(string phrase)
    {
        var longest = "";
        for (var from = 0; from < phrase.Length; from++)
        {
            var to = from;
            while (to < phrase.Length && char.IsLetterOrDigit(phrase[to]))
                to++;
            if (to - from > longest.Length)
                longest = phrase[from..to];
            from = to;
        }
        return longest.ToLowerInvariant();
    }
}
