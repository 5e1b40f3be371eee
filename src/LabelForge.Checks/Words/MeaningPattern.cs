namespace LabelForge.Checks.Words;

/// <summary>
/// A claim by what it means: words of some classes one after the other, "{acts} ... {ailments}"; <c>...</c> stands for up to
/// six words between, <c>around</c> for what the words before it enclose: "zieht Splitter heraus".
/// </summary>
internal sealed partial class MeaningPattern
{
    private const string Between = "...";
    private const string Enclosing = "around";
    private const int MostBetween = 120;

    private readonly ImmutableArray<(WordClass Class, Place Place)> parts;

    private MeaningPattern(string language, ImmutableArray<(WordClass, Place)> parts) => (Language, this.parts) = (language, parts);

    /// <summary>The language whose words it is made of.</summary>
    public string Language { get; }

    /// <summary>Reads a pattern with the classes of a language; null where the language has not all of them.</summary>
    public static MeaningPattern? Of(string pattern, string language, ImmutableDictionary<string, WordClass> classes)
    {
        var parts = ImmutableArray.CreateBuilder<(WordClass, Place)>();
        var place = Place.Next;
        foreach (var word in pattern.Split(' '))
        {
            if (word is Between or Enclosing)
            {
                place = word == Between ? Place.Apart : Place.Within;
                continue;
            }
            if (WordClass.Name(word) is not { } name || !classes.TryGetValue(name, out var known))
                return null;
            parts.Add((known, place));
            place = Place.Next;
        }
        return new(language, parts.ToImmutable());
    }

    /// <summary>Where it is found in a text, from the first word to the last.</summary>
    public IEnumerable<WordSpan> In(ClaimText text)
    {
        IEnumerable<WordSpan> found = text.Of(parts[0].Class);
        foreach (var (next, place) in parts.Skip(1))
            found = place == Place.Within ? Enclosed(found, text, next) : Followed(found, text, next, place == Place.Apart);
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

    private static IEnumerable<WordSpan> Enclosed(IEnumerable<WordSpan> found, ClaimText text, WordClass held) =>
        found.Where(f => text.Of(held).Any(h => f.Start < h.Start && h.End < f.End));

    // Where a word stands to those before it.
    private enum Place
    {
        Next,
        Apart,
        Within,
    }

    // Behind a comma three at most: "the pain, after a week, is gone", and not "the pain, when the last of the bars is gone".
    [GeneratedRegex(@"^(?:,?[\s-]+[\p{L}0-9%'’]+(?:[.,][0-9]+%?)?){0,6},?[\s-]+(?:\p{L}{1,5}['’])?$(?<!,(?:[\s-]+[^\s,-]+){4,}[\s-]+)")]
    private static partial Regex WordsBetween();

    [GeneratedRegex(@"^,?[\s-]+(?:\p{L}{1,5}['’])?$")]
    private static partial Regex NothingBetween();
}
