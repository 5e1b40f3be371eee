using System.Collections.Immutable;
using System.Text.RegularExpressions;
using LabelForge.Ingredients;

namespace LabelForge.Checks.Reading;

/// <summary>What words that belong to no part of a label look like.</summary>
public enum StrayKind
{
    /// <summary>Names of ingredients outside the list that was read.</summary>
    Ingredients,

    /// <summary>Words in a language that is not known here.</summary>
    OtherLanguage,

    /// <summary>Words that are not understood.</summary>
    Unknown,

    /// <summary>A sentence in an official language: it was read for its parts, and may promise something.</summary>
    Sentence,
}

/// <summary>Words of a label that belong to none of its parts.</summary>
/// <param name="Span">Where they stand.</param>
/// <param name="Words">The words.</param>
/// <param name="Kind">What they look like.</param>
/// <param name="Language">The language they seem to be in, by ISO 639-1; null where none can be told.</param>
public sealed record StrayWords(TextSpan Span, string Words, StrayKind Kind, string? Language);

/// <summary>Accounts for every word of a label that was read: each belongs to a part, or is a stray.</summary>
public static partial class WordAccount
{
    // A name, a scent or a motto of so few words may be made up; among the first lines it is the product's name.
    private const int MostWordsOfName = 6;
    private const int MostWordsOfTitle = 5;
    private const int FirstLines = 3;
    private const int NearIdentity = 2;

    // Of the words of a sentence so many are articles, pronouns and their like in any language; of short ones any tells.
    private const double LeastKnown = 0.2;
    private const int FewestNames = 2;

    /// <summary>The strays of a label, in order.</summary>
    /// <param name="text">The label's text.</param>
    /// <param name="taken">What belongs to parts that were found.</param>
    /// <param name="identity">Where it says what the product is; or null.</param>
    /// <param name="names">Names that may stand anywhere: the business, the product.</param>
    /// <param name="dictionary">The ingredients that are known.</param>
    /// <param name="read">The ingredients that were read.</param>
    public static ImmutableArray<StrayWords> Of(LabelText text, IEnumerable<TextSpan> taken, TextSpan? identity, IEnumerable<string> names, IngredientDictionary dictionary, IEnumerable<IngredientRead> read)
    {
        var known = read.Select(r => r.Known?.Key).ToHashSet();
        var left = names.Where(n => n.Length > 2).Aggregate(text.Without(taken), (t, n) => t.Replace(n, new string(' ', n.Length), StringComparison.OrdinalIgnoreCase));
        var found = ImmutableArray.CreateBuilder<StrayWords>();
        var identityLine = identity is { } at ? LineOf(text.Text, at.Start) : -1;
        var (line, seen, goesOn) = (0, 0, false);
        var start = 0;
        foreach (var whole in left.Split('\n'))
        {
            var original = text.Text.Substring(start, whole.Length);
            if (original.Trim().Length == 0)
                goesOn = false;
            else
                seen++;
            foreach (Match part in Sentence().Matches(whole))
            {
                var words = LanguageOf.Words(part.Value).ToArray();
                var span = new TextSpan(start + part.Index, part.Length);
                if (words.Length == 0)
                    continue;
                // A sentence goes on over lines and semicolons; "Directions:" and what follows it are one.
                goesOn = LabelWords.BeginsPart(part.Value.Trim()) || (goesOn && (part.Index == whole.Length - whole.TrimStart().Length || (part.Index > 0 && whole[part.Index - 1] == ';')) && !EndsBefore(text.Text, span.Start));
                // Few words with capitals are a name wherever they stand.
                var isName = (words.Length <= MostWordsOfTitle && part.Value.Split(' ', StringSplitOptions.RemoveEmptyEntries).All(w => !char.IsLower(w[0])))
                    || (words.Length <= MostWordsOfName && (seen <= FirstLines || (identityLine >= 0 && Math.Abs(line - identityLine) <= NearIdentity)));
                if (goesOn || identity?.Overlaps(span) == true || Countries.Code(part.Value.Trim(' ', '.')) is not null)
                    continue;
                if (Kind(part.Value, words, isName, dictionary, known) is var (kind, language))
                    found.Add(new(span, Spaces().Replace(part.Value, " ").Trim(), kind, language));
            }
            start += whole.Length + 1;
            line++;
        }
        return found.ToImmutable();
    }

    private static (StrayKind Kind, string? Language)? Kind(string part, string[] words, bool isName, IngredientDictionary dictionary, HashSet<string?> read)
    {
        if (ListNames.Split(part).Count(n => IsFormal(n, dictionary, read)) >= FewestNames)
            return (StrayKind.Ingredients, null);
        var language = LanguageOf.Find(part);
        var isOfficial = language is { } l && LabelWords.Languages.Contains(l.Language);
        if (language is { Share: >= LeastKnown } && !isOfficial)
            return isName ? null : (StrayKind.OtherLanguage, language.Value.Language);
        if (isName || words.Count(w => LanguageOf.IsOfTrade(w) || dictionary.Find(w) is not null) * 3 >= words.Length)
            return null;
        if (language is { Share: >= LeastKnown } found)
            return found.Language == "en" || words.Length <= MostWordsOfName ? null : (StrayKind.Sentence, found.Language);
        return (StrayKind.Unknown, language?.Language);
    }

    // Shea butter and honey stand in any praise; names of the nomenclature do not.
    private static bool IsFormal(string name, IngredientDictionary dictionary, HashSet<string?> read) =>
        ListNames.Bare(name) is var bare && bare.Contains(' ') | bare.Length > 6 && dictionary.Find(bare) is { } known && !read.Contains(known.Key) && !known.Everyday.Any(e => string.Equals(e, bare, StringComparison.OrdinalIgnoreCase));

    private static bool EndsBefore(string text, int at) => text[..at].TrimEnd(' ', '\n') is [.., '.' or '!' or '?'];

    private static int LineOf(string text, int at) => text.AsSpan(0, Math.Min(at, text.Length)).Count('\n');

    [GeneratedRegex(@"(?:[^.!?|•·;]|[.](?!\s|$))+")]
    private static partial Regex Sentence();

    [GeneratedRegex(@"\s+")]
    private static partial Regex Spaces();
}
