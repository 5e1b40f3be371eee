using System.Collections.Concurrent;

namespace LabelForge.Print.Lettering;

/// <summary>
/// Where a word may be broken, by patterns of its language: Liang, "Word hy-phen-a-tion by com-put-er", Stanford 1983. Patterns in
/// templates/hyphens; docs/notice.md says whose they are.
/// </summary>
public sealed class Hyphenation
{
    // Fewer letters than these are not parted from a word's head and foot; TeX's usual figures for English.
    private const int LeastHead = 2;
    private const int LeastFoot = 3;

    private static readonly ConcurrentDictionary<string, Hyphenation> Read = new(StringComparer.Ordinal);

    private readonly Dictionary<string, byte[]> _patterns;
    private readonly int _longest;

    private Hyphenation(string text)
    {
        _patterns = text.Split('\n', StringSplitOptions.RemoveEmptyEntries).ToDictionary(Letters, Levels, StringComparer.Ordinal);
        _longest = _patterns.Keys.Max(k => k.Length);
    }

    /// <summary>The languages whose patterns ship with the tool.</summary>
    public static IReadOnlyList<string> Languages { get; } = ["en", "fr"];

    /// <summary>The patterns for a word on a label in these languages: French ones where its
    /// letters say so or French stands alone, else English.</summary>
    /// <param name="word">The word.</param>
    /// <param name="languages">The label's languages; none where the maker may choose.</param>
    public static Hyphenation For(string word, IReadOnlyCollection<string> languages)
    {
        var french = (languages.Count == 0 || languages.Contains("fr"))
            && word.Any(c => "àâæçéèêëîïôœùûüÿ".Contains(char.ToLowerInvariant(c), StringComparison.Ordinal));
        return Of(french || (languages.Contains("fr") && !languages.Contains("en")) ? "fr" : "en");
    }

    /// <summary>A language's patterns.</summary>
    public static Hyphenation Of(string language) => Read.GetOrAdd(language, l => new Hyphenation(Templates.Text($"hyphens/{l}.txt")));

    /// <summary>The places at which a word may be broken, counted in characters from its start.
    /// Signs that are no letters part it into words.</summary>
    public IEnumerable<int> BreaksIn(string word)
    {
        for (var from = 0; from < word.Length;)
        {
            var to = from;
            while (to < word.Length && char.IsLetter(word[to]))
                to++;
            foreach (var at in BreaksOfLetters(word[from..to]))
                yield return from + at;
            from = to + 1;
        }
    }

    // A word with a dot at each end is held against every pattern; between two letters the
    // highest level counts, and odd ones allow a break.
    private IEnumerable<int> BreaksOfLetters(string letters)
    {
        var dotted = $".{letters.ToLowerInvariant()}.";
        var levels = new byte[dotted.Length + 1];
        for (var from = 0; from < dotted.Length; from++)
        {
            for (var length = 1; length <= Math.Min(_longest, dotted.Length - from); length++)
            {
                if (!_patterns.TryGetValue(dotted.Substring(from, length), out var found))
                    continue;
                for (var i = 0; i < found.Length; i++)
                    levels[from + i] = Math.Max(levels[from + i], found[i]);
            }
        }
        for (var at = LeastHead; at <= letters.Length - LeastFoot; at++)
        {
            if (levels[at + 1] % 2 == 1)
                yield return at;
        }
    }

    private static string Letters(string pattern) => string.Concat(pattern.Where(c => !char.IsAsciiDigit(c)));

    private static byte[] Levels(string pattern)
    {
        var levels = new List<byte> { 0 };
        foreach (var sign in pattern)
        {
            if (char.IsAsciiDigit(sign))
                levels[^1] = (byte)(sign - '0');
            else
                levels.Add(0);
        }
        return [.. levels];
    }
}
