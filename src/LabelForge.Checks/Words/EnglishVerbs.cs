using System.Collections.Frozen;

namespace LabelForge.Checks.Words;

/// <summary>
/// The forms of English verbs: a list that has "knits" or "sees off" means "knit", "knitting" and "knitted" too. Forms that
/// no verb has do no harm, for no text has them.
/// </summary>
internal static class EnglishVerbs
{
    private const string Vowels = "aeiou";
    private const int ShortestVerb = 4;

    private static readonly FrozenDictionary<string, string> Past =
        ("take took keep kept give gave draw drew drive drove send sent see saw bring brought get got make made fight fought hold held "
            + "wake woke break broke leave left come came feel felt feed fed sweep swept show shown grow grew shrink shrank fall fell "
            + "stand stood speed sped").Split(' ').Chunk(2).ToFrozenDictionary(v => v[0], v => v[1], StringComparer.Ordinal);

    /// <summary>A phrase, and the same with its first word in the verb's other forms where that stands in the third person.</summary>
    public static IEnumerable<string> Forms(string phrase)
    {
        var (verb, rest) = phrase.IndexOf(' ', StringComparison.Ordinal) is var space and > 0
            ? (phrase[..space], phrase[space..]) : (phrase, "");
        return Base(verb) is not { } plain ? [phrase]
            : [phrase, plain + rest, Before(plain, "ing") + rest, Past.GetValueOrDefault(plain, Before(plain, "ed")) + rest];
    }

    // "knits" is of "knit", "washes" of "wash", "dries" of "dry"; "is", "less" and "soothe*" are of nothing.
    private static string? Base(string verb)
    {
        if (verb.Length < ShortestVerb || !verb.All(char.IsLower) || verb[^1] != 's' || verb[^2] is 's' or 'u' or 'i')
            return null;
        if (verb.EndsWith("ies", StringComparison.Ordinal))
            return verb[..^3] + "y";
        return new[] { "shes", "ches", "sses", "xes", "zzes", "oes" }.Any(e => verb.EndsWith(e, StringComparison.Ordinal))
            ? verb[..^2] : verb[..^1];
    }

    private static string Before(string plain, string ending)
    {
        if (plain[^1] == 'e' && plain[^2] != 'e')
            return plain[..^1] + ending;
        if (ending == "ed" && plain[^1] == 'y' && !Vowels.Contains(plain[^2]))
            return plain[..^1] + "ied";
        return plain.Length is 3 or 4 && !Vowels.Contains(plain[^1]) && !"wxy".Contains(plain[^1]) && Vowels.Contains(plain[^2])
            && !Vowels.Contains(plain[^3])
            ? plain + plain[^1] + ending : plain + ending;
    }
}
