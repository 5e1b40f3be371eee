namespace LabelForge.Checks.Words;

/// <summary>
/// A claim by what it means: words of some classes one after the other, "{acts} ... {ailments}"; <c>...</c> stands for up to
/// six words between.
/// </summary>
internal sealed partial class MeaningPattern
{
    private const string Between = "...";
    private const int MostBetween = 120;

    private readonly ImmutableArray<(WordClass Class, bool Apart)> parts;

    private MeaningPattern(string language, ImmutableArray<(WordClass, bool)> parts) => (Language, this.parts) = (language, parts);

    /// <summary>The language whose words it is made of.</summary>
    public string Language { get; }

    /// <summary>Reads a pattern with the classes of a language; null where the language has not all of them.</summary>
    public static MeaningPattern? Of(string pattern, string language, ImmutableDictionary<string, WordClass> classes)
    {
        var parts = ImmutableArray.CreateBuilder<(WordClass, bool)>();
        var apart = false;
        foreach (var word in pattern.Split(' '))
        {
            if (word == Between)
                apart = true;
            else if (WordClass.Name(word) is { } name && classes.TryGetValue(name, out var known))
                (parts, apart) = (Added(parts, known, apart), false);
            else
                return null;
        }
        return new(language, parts.ToImmutable());
    }

    /// <summary>Where it is found in a text, from the first word to the last.</summary>
    public IEnumerable<WordSpan> In(ClaimText text)
    {
        IEnumerable<WordSpan> found = text.Of(parts[0].Class);
        foreach (var (next, apart) in parts.Skip(1))
            found = Followed(found, text, next, apart);
        return found;
    }

    private static IEnumerable<WordSpan> Followed(IEnumerable<WordSpan> found, ClaimText text, WordClass next, bool apart)
    {
        foreach (var first in found)
        {
            foreach (var then in text.Of(next))
            {
                if (then.Start <= first.End)
                    continue;
                if (then.Start - first.End > MostBetween)
                    break;
                var between = text.Lower.AsSpan(first.End, then.Start - first.End);
                if (apart ? WordsBetween().IsMatch(between) : NothingBetween().IsMatch(between))
                    yield return new(first.Start, then.End);
            }
        }
    }

    private static ImmutableArray<(WordClass, bool)>.Builder Added(ImmutableArray<(WordClass, bool)>.Builder parts, WordClass known,
        bool apart)
    {
        parts.Add((known, apart));
        return parts;
    }

    // Behind a comma three at most: "the pain, after a week, is gone", and not "the pain, when the last of the bars is gone".
    [GeneratedRegex(@"^(?:,?[\s-]+[\p{L}0-9%'’]+(?:[.,][0-9]+%?)?){0,6},?[\s-]+(?:\p{L}{1,5}['’])?$(?<!,(?:[\s-]+[^\s,-]+){4,}[\s-]+)")]
    private static partial Regex WordsBetween();

    [GeneratedRegex(@"^,?[\s-]+(?:\p{L}{1,5}['’])?$")]
    private static partial Regex NothingBetween();
}
