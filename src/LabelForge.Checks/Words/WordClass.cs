using LabelForge.Checks.Reading;

namespace LabelForge.Checks.Words;

/// <summary>Words of one language that do the same in a sentence: what makes a thing go, what ails, a part of the body.</summary>
internal sealed class WordClass
{
    // Each with what of it stands in every text that it is found in; a pattern is made when that first happens.
    private readonly ImmutableArray<(string Probe, Lazy<Regex> Finds)> members;

    private WordClass(IEnumerable<string> words) => members =
        [.. words.Select(w => FoldedText.KeepingCase(w).ToLowerInvariant()).Distinct(StringComparer.Ordinal)
            .Select(w => (PhraseSet.Probe(w), new Lazy<Regex>(() => PhrasePattern.Lower(w))))];

    /// <summary>Where words of the class stand in a text, from its beginning on; where several begin at one place, each.</summary>
    /// <param name="lower">The text without accents, in small letters.</param>
    public ImmutableArray<WordSpan> In(string lower)
    {
        var spans = new SortedSet<WordSpan>();
        foreach (var (probe, finds) in members)
        {
            if (!lower.Contains(probe, StringComparison.Ordinal))
                continue;
            foreach (var found in finds.Value.EnumerateMatches(lower))
                spans.Add(new(found.Index, found.Index + found.Length));
        }
        return [.. spans];
    }

    /// <summary>The classes of a language, by name; a class may hold others, as <c>{name}</c>, which stand before it.</summary>
    /// <param name="records">The language's own words.</param>
    /// <param name="shared">The words of the language in the lists that stand once for all languages, by class.</param>
    public static ImmutableDictionary<string, WordClass> Read(IEnumerable<YamlRecord> records, ILookup<string, string> shared)
    {
        var words = new Dictionary<string, ImmutableArray<string>>(StringComparer.Ordinal);
        foreach (var record in records)
        {
            record.OnlyKeys("id", "words", "english verbs");
            var id = record.Text("id", "the name of a class");
            var all = record.Texts("words", "[banish*, stops]").SelectMany(w => Expanded(w, words, record)).Concat(shared[id]);
            words.Add(id, [.. record.Has("english verbs") ? all.SelectMany(EnglishVerbs.Forms) : all]);
        }
        foreach (var all in shared.Where(s => !words.ContainsKey(s.Key)))
            words.Add(all.Key, [.. all]);
        return words.ToImmutableDictionary(w => w.Key, w => new WordClass(w.Value), StringComparer.Ordinal);
    }

    /// <summary>The words of a language in a list that stands once for all languages, with the class that each joins.</summary>
    /// <param name="records">The list; each record has words in every language that has a grammar.</param>
    /// <param name="language">The language.</param>
    public static IEnumerable<(string Class, string Word)> Shared(IEnumerable<YamlRecord> records, string language) =>
        from record in records
        let joins = record.Text("is", "the name of a class")
        from word in record.Texts(language, "[cough, coughs]")
        select (joins, word);

    // "{stems}{forms}" is every word of the one grown together with every word of the other.
    private static IEnumerable<string> Expanded(string word, Dictionary<string, ImmutableArray<string>> classes, YamlRecord record) =>
        word.IndexOf("}{", StringComparison.Ordinal) is var joint and > 0
            ? from first in Expanded(word[..(joint + 1)], classes, record)
              from second in Expanded(word[(joint + 1)..], classes, record)
              select first + second
            : Name(word) is not { } other ? [word]
                : classes.TryGetValue(other, out var held) ? held
                    : throw record.RefuseAt("words", "claims.no-such-class", ("class", word));

    /// <summary>The class that a word of a pattern names, as <c>{name}</c>; null where it is a word of its own.</summary>
    public static string? Name(string word) => word is ['{', .. var name, '}'] ? name : null;
}

/// <summary>Where words stand in a text.</summary>
/// <param name="Start">Where they begin.</param>
/// <param name="End">Where they end.</param>
internal readonly record struct WordSpan(int Start, int End) : IComparable<WordSpan>
{
    /// <summary>Whether both have something of the text.</summary>
    public bool Overlaps(WordSpan other) => Start < other.End && other.Start < End;

    /// <summary>Whether it has all that another has of the text.</summary>
    public bool Covers(WordSpan other) => Start <= other.Start && other.End <= End;

    /// <summary>By where they begin, then by where they end.</summary>
    public int CompareTo(WordSpan other) => Start != other.Start ? Start.CompareTo(other.Start) : End.CompareTo(other.End);
}
