using System.Collections.Immutable;
using System.Text.RegularExpressions;

namespace LabelForge.Checks.Words;

/// <summary>
/// A claim by what it means: words of classes one after the other, "{acts} ... {ailments}". Of classes with some hundreds of
/// words a text has few: the pattern is made of those that stand in it, for each text anew.
/// </summary>
internal sealed class MeaningPattern
{
    private readonly ImmutableArray<(string? Word, WordClass? Class)> parts;

    private MeaningPattern(string language, ImmutableArray<(string?, WordClass?)> parts) => (Language, this.parts) = (language, parts);

    /// <summary>The language whose words it is made of.</summary>
    public string Language { get; }

    /// <summary>Reads a pattern with the classes of a language; null where the language has not all of them.</summary>
    public static MeaningPattern? Of(string pattern, string language, ImmutableDictionary<string, WordClass> classes)
    {
        (string? Word, WordClass? Class)[] parts = [.. pattern.Split(' ').Select(w => WordClass.Name(w) is { } name ? ((string?)null, classes.GetValueOrDefault(name)) : (w, null))];
        return parts.Any(p => p is { Word: null, Class: null }) ? null : new(language, [.. parts]);
    }

    /// <summary>Where it is found in a text.</summary>
    public IEnumerable<Match> In(ClaimText text)
    {
        var body = new List<string>();
        foreach (var (word, words) in parts)
        {
            if (words is null)
            {
                body.Add(word!);
                continue;
            }
            var here = text.Holds(words);
            if (here.IsEmpty)
                return [];
            body.Add($"(?:{string.Join('|', here)})");
        }
        return PhrasePattern.InOrder(body).Matches(text.Folded);
    }
}
