using System.Collections.Concurrent;

namespace LabelForge.Print.Lettering;

/// <summary>
/// Where a word may be broken, by patterns of its language: Liang, "Word hy-phen-a-tion by com-put-er", Stanford 1983. Patterns in
/// templates/hyphens; docs/notice.md says whose they are.
/// </summary>
public sealed class Hyphenation
{
    // Fewer letters than these are not parted from a word's head and foot. TeX's usual figures, for German and Swedish as their files
    // say, for the others from memory: three at the foot where a last syllable of two is hardly heard.
    private const int LeastHead = 2;
    private const int LeastFoot = 2;
    private const int LeastHeardFoot = 3;
    private static readonly string[] LongerFoot = ["en", "et", "fr", "pt"];

    private static readonly ConcurrentDictionary<string, Hyphenation> Read = new(StringComparer.Ordinal);

    private readonly Dictionary<string, byte[]> _patterns;
    private readonly int _longest;

    private readonly HashSet<char> _alphabet;
    private readonly int _leastFoot;

    private Hyphenation(string language, string text)
    {
        _patterns = text.Split('\n', StringSplitOptions.RemoveEmptyEntries).ToDictionary(Letters, Levels, StringComparer.Ordinal);
        _longest = _patterns.Keys.Max(k => k.Length);
        _alphabet = [.. _patterns.Keys.SelectMany(k => k)];
        _leastFoot = LongerFoot.Contains(language) ? LeastHeardFoot : LeastFoot;
    }

    /// <summary>The languages whose patterns ship with the tool: of the official ones of the European Union, those whose patterns may
    /// be passed on as freely as the tool itself.</summary>
    public static IReadOnlyList<string> Languages { get; } =
        ["da", "de", "en", "es", "et", "fi", "fr", "ga", "hr", "it", "lt", "nl", "pl", "pt", "sl", "sv"];

    /// <summary>The patterns for a word on a label in these languages: the first of them in whose alphabet it can be written, else
    /// the first; English where there are no patterns for any.</summary>
    /// <param name="languages">The label's languages by ISO 639-1, the likeliest first; none where it is not known.</param>
    public static Hyphenation For(string word, IReadOnlyCollection<string> languages)
    {
        // Of a language that is not known a word shows no more than that English has not its letters.
        var known = (languages.Count == 0 ? Unknown : languages.Where(Languages.Contains)).DefaultIfEmpty("en");
        return known.Select(Of).FirstOrDefault(p => word.Where(char.IsLetter).All(c => p._alphabet.Contains(char.ToLowerInvariant(c))))
            ?? Of(known.First());
    }

    private static readonly string[] Unknown = ["en", "fr"];

    /// <summary>A language's patterns.</summary>
    public static Hyphenation Of(string language) =>
        Read.GetOrAdd(language, l => new Hyphenation(l, Templates.Text($"hyphens/{l}.txt")));

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
        for (var at = LeastHead; at <= letters.Length - _leastFoot; at++)
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
