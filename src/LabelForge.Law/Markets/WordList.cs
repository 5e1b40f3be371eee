using System.Collections.Concurrent;
using System.Collections.Frozen;
using System.Globalization;
using System.Text;

namespace LabelForge.Markets;

/// <summary>
/// The ordinary words of one language, in small letters without accents: those listed, and forms of them by the language's
/// endings and beginnings, whatever word these were meant for. Made by <c>build/words/make.py</c>; read when first asked for.
/// </summary>
public sealed class WordList
{
    private const int ShortestStem = 3;
    private const byte LineEnd = (byte)'\n';

    private static readonly ConcurrentDictionary<string, WordList?> Held = new(StringComparer.Ordinal);

    private readonly byte[] words;
    private readonly FrozenDictionary<string, string[]>.AlternateLookup<ReadOnlySpan<char>> endings;
    private readonly int longestEnding;
    private readonly (string Off, string On)[] beginnings;
    private readonly int endingsInARow;

    private WordList(byte[] text)
    {
        var rest = text.AsSpan();
        var first = Line(ref rest).Split(' ');
        endingsInARow = int.Parse(first[0], CultureInfo.InvariantCulture);
        IsWhole = first[1] == "whole";
        var pairs = Pairs(Line(ref rest)).GroupBy(p => p.On, StringComparer.Ordinal)
            .ToFrozenDictionary(g => g.Key, g => g.Select(p => p.Off).ToArray(), StringComparer.Ordinal);
        endings = pairs.GetAlternateLookup<ReadOnlySpan<char>>();
        longestEnding = pairs.Keys.Select(k => k.Length).DefaultIfEmpty().Max();
        // Single letters before a word are symbols of units in some lists.
        beginnings = [.. Pairs(Line(ref rest)).Where(p => p.On.Length > 1)];
        words = rest.ToArray();
    }

    /// <summary>Whether so many words are listed that one which is not is hardly a word; else only many unknown ones say it.</summary>
    public bool IsWhole { get; }

    /// <summary>The words of a language; null where none are held.</summary>
    /// <param name="language">Its code (ISO 639-1).</param>
    public static WordList? Of(string language) => Held.GetOrAdd(language,
        static l => LawData.Vocabulary(l) is { } text ? new WordList(text) : null);

    /// <summary>Whether a word is listed as it is.</summary>
    /// <param name="word">In small letters without accents.</param>
    public bool Has(ReadOnlySpan<char> word) => At(word, whole: true);

    /// <summary>Whether a listed word begins so.</summary>
    /// <param name="beginning">In small letters without accents.</param>
    public bool Begins(ReadOnlySpan<char> beginning) => At(beginning, whole: false);

    /// <summary>Whether a word is listed, or is a form of one that is.</summary>
    /// <param name="word">In small letters without accents.</param>
    public bool Knows(ReadOnlySpan<char> word)
    {
        if (HasForm(word, endingsInARow))
            return true;
        foreach (var (off, on) in beginnings)
        {
            if (word.Length - on.Length + off.Length >= ShortestStem
                && word.StartsWith(on, StringComparison.Ordinal)
                && HasForm(string.Concat(off, word[on.Length..]), 1))
                return true;
        }
        return false;
    }

    private bool HasForm(ReadOnlySpan<char> word, int times)
    {
        if (Has(word))
            return true;
        for (var length = 0; times > 0 && length <= Math.Min(longestEnding, word.Length - 1); length++)
        {
            if (!endings.TryGetValue(word[^length..], out var taken))
                continue;
            foreach (var off in taken)
            {
                if (word.Length - length + off.Length >= ShortestStem
                    && HasForm(string.Concat(word[..^length], off), length == 0 ? 0 : times - 1))
                    return true;
            }
        }
        return false;
    }

    // The words stand sorted by their bytes, one a line, so that they are searched as they are packed.
    private bool At(ReadOnlySpan<char> word, bool whole)
    {
        Span<byte> wanted = stackalloc byte[LongestWord * 4];
        if (word.Length is 0 or > LongestWord)
            return false;
        wanted = wanted[..Encoding.UTF8.GetBytes(word, wanted)];
        var (low, high) = (0, words.Length);
        while (low < high)
        {
            var middle = (low + high) / 2;
            var start = words.AsSpan(0, middle).LastIndexOf(LineEnd) + 1;
            var length = words.AsSpan(start).IndexOf(LineEnd);
            var found = words.AsSpan(start, length);
            if (whole ? found.SequenceEqual(wanted) : found.StartsWith(wanted))
                return true;
            if (found.SequenceCompareTo(wanted) < 0)
                low = start + length + 1;
            else
                high = start;
        }
        return false;
    }

    private const int LongestWord = 64;

    private static string Line(ref Span<byte> text)
    {
        var end = text.IndexOf(LineEnd);
        var line = Encoding.UTF8.GetString(text[..end]);
        text = text[(end + 1)..];
        return line;
    }

    // "y/ies": taken off and put on, "-" for nothing.
    private static IEnumerable<(string Off, string On)> Pairs(string line) =>
        line.Split(' ', StringSplitOptions.RemoveEmptyEntries).Select(p => p.Split('/')).Select(p => (Bare(p[0]), Bare(p[1])));

    private static string Bare(string part) => part == "-" ? "" : part;
}
