using System.Collections.Immutable;
using System.Reflection;
using System.Text.RegularExpressions;
using LabelForge.Markets;

namespace LabelForge.Checks.Reading;

/// <summary>A statement of identity as it stands on a label.</summary>
/// <param name="Written">The line, or the part of it, that says what the product is.</param>
/// <param name="Kind">The kind of product it names.</param>
public sealed record IdentityRead(TextSpan Span, string Written, ProductKind Kind);

/// <summary>Finds the words that say what a product is.</summary>
public static partial class IdentityReader
{
    private static readonly Lazy<ImmutableArray<(Regex Words, string Phrase, ProductKind Kind)>> Phrases = new(Load);

    /// <summary>The statement, the most telling of those found; null where nothing says what the product is.</summary>
    /// <param name="text">The label's text, ingredients, quantity and business blanked.</param>
    /// <param name="business">The business's name, in which "soap" names no product; or null.</param>
    public static IdentityRead? Read(string text, string? business)
    {
        IdentityRead? best = null;
        var bestLength = 0;
        foreach (var (start, part) in Parts(text))
        {
            if (!IsShort(part) || (business is { Length: > 2 } && part.Contains(business, StringComparison.OrdinalIgnoreCase)))
                continue;
            foreach (var (words, phrase, kind) in Phrases.Value)
            {
                if (phrase.Length > bestLength && words.Match(part) is { Success: true } match && IsHead(part[(match.Index + match.Length)..]))
                {
                    best = new(new TextSpan(start, part.Length), Spaces().Replace(part, " ").Trim(' ', '*', '#', '"', '.', ',', '-', '_', '·', '•'), kind);
                    bestLength = phrase.Length;
                }
            }
        }
        return best;
    }

    private static IEnumerable<(int Start, string Text)> Parts(string text)
    {
        var start = 0;
        foreach (Match stop in Stop().Matches(text))
        {
            yield return (start, text[start..stop.Index]);
            start = stop.Index + stop.Length;
        }
        yield return (start, text[start..]);
    }

    // A name is short and tells nobody to do anything.
    private static bool IsShort(string part) => part.Trim() is { Length: > 2 } t && t.Split(' ', StringSplitOptions.RemoveEmptyEntries).Length <= 9 && !Sentence().IsMatch(t);

    // In "lavender soap with oats" soap is what it is; in "soap dish" and "Soap Company" it is not.
    private static bool IsHead(string after) => Follows().IsMatch(after);

    private static ImmutableArray<(Regex Words, string Phrase, ProductKind Kind)> Load()
    {
        const string name = "markets/Words/identities.yaml";
        using var reader = new StreamReader(Assembly.GetExecutingAssembly().GetManifestResourceStream(name)!);
        return
        [
            .. from record in YamlRecord.List(name, reader)
               let kind = ProductKinds.Shipped.Find(record.Text("id", "a product kind")).Value!
               from phrase in record.Texts("words", "[soap, bar soap]")
               orderby phrase.Length descending
               select (new Regex($@"(?<![\p{{L}}]){Regex.Escape(phrase).Replace(@"\ ", @"[\s-]+")}(?:e?s)?(?![\p{{L}}])", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant), phrase, kind),
        ];
    }

    [GeneratedRegex(@"\n|\.\s|[|•·;]|\s[–—-]\s|,\s|(?<=!)\s|\.$")]
    private static partial Regex Stop();

    [GeneratedRegex(@"^(?:use|apply|lather|rinse|keep|store|add|drop|massage|avoid|wet|rub|work|place|let|allow|enjoy|our|this|these|the|each|we|if|for best|made|dissolve|pour|hand\s?made by|crafted by|distributed|not a|free of|no )\b|\b(?:is|are|was|dry between|your|you|will|should)\b", RegexOptions.IgnoreCase)]
    private static partial Regex Sentence();

    [GeneratedRegex(@"^\s*(?:$|[(\[:/\d]|(?:with|for|in|and|&|bar|bars|by|net|wt|scented|unscented|-|–|no\b|made|of)(?![\p{L}]))", RegexOptions.IgnoreCase)]
    private static partial Regex Follows();

    [GeneratedRegex(@"\s+")]
    private static partial Regex Spaces();
}
