namespace LabelForge.Checks.Reading;

/// <summary>The names of products in every language, found word by word, without regard to letter case and accents.</summary>
/// <typeparam name="T">What a name names.</typeparam>
internal sealed partial class IdentityWords<T>
{
    private readonly Dictionary<string, List<(string[] Words, int Length, T Kind)>> first = new(StringComparer.Ordinal);

    // Names of which the first part is open: "Lavendelseife" by "*seife".
    private readonly List<(string End, string[] Words, int Length, T Kind)> ends = [];

    /// <summary>Where names stand in a part of a label, how long each is as it stands in the data, and what it names.</summary>
    public IEnumerable<(TextSpan Span, int Length, T Kind)> In(string part)
    {
        var folded = FoldedText.Of(part);
        var words = Word().Matches(folded);
        for (var i = 0; i < words.Count; i++)
        {
            foreach (var key in Forms(words[i].Value))
            {
                foreach (var (phrase, length, kind) in first.GetValueOrDefault(key) ?? [])
                {
                    if (Fits(folded, words, i, phrase) is { } span)
                        yield return (span, length, kind);
                }
            }
            foreach (var (end, phrase, length, kind) in ends)
            {
                if (words[i].Value.Length >= end.Length
                    && Forms(words[i].Value).Any(f => f.EndsWith(end, StringComparison.Ordinal))
                    && Fits(folded, words, i, phrase) is { } span)
                    yield return (span, length, kind);
            }
        }
    }

    /// <summary>Adds a name; a <c>*</c> at its front stands for the beginning of its first word.</summary>
    public void Add(string phrase, T kind)
    {
        var words = Word().Matches(FoldedText.Of(phrase)).Select(m => m.Value).ToArray();
        if (phrase.StartsWith('*'))
            ends.Add((words[0], words, phrase.Length, kind));
        else if (first.TryGetValue(words[0], out var known))
            known.Add((words, phrase.Length, kind));
        else
            first[words[0]] = [(words, phrase.Length, kind)];
    }

    // The words that follow are those of the phrase, parted by a space or a hyphen; the last may be many.
    private static TextSpan? Fits(string folded, MatchCollection words, int at, string[] phrase)
    {
        if (at + phrase.Length > words.Count)
            return null;
        for (var k = 1; k < phrase.Length; k++)
        {
            var gapAt = words[at + k - 1].Index + words[at + k - 1].Length;
            var isLast = k == phrase.Length - 1;
            if (folded[gapAt..words[at + k].Index].Any(c => c is not (' ' or '-' or '\''))
                || !(isLast ? Forms(words[at + k].Value) : [words[at + k].Value]).Contains(phrase[k]))
                return null;
        }
        var last = words[at + phrase.Length - 1];
        return new TextSpan(words[at].Index, last.Index + last.Length - words[at].Index);
    }

    private static IEnumerable<string> Forms(string word)
    {
        yield return word;
        if (word.Length > 3 && word.EndsWith('s'))
            yield return word[..^1];
        if (word.Length > 4 && word.EndsWith("es", StringComparison.Ordinal))
            yield return word[..^2];
    }

    [GeneratedRegex(@"[\p{L}0-9&]+")]
    private static partial Regex Word();
}
