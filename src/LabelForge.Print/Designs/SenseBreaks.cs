namespace LabelForge.Print.Designs;

/// <summary>Parts names and short lines where a reader would pause: a small word stays with what it leads to.</summary>
internal static class SenseBreaks
{
    // English, French, German, Spanish, Italian, Dutch and Polish: what joins, and what leads to a noun.
    private static readonly HashSet<string> Leading = new(StringComparer.OrdinalIgnoreCase)
    {
        "&", "+", "and", "or", "of", "the", "a", "an", "with", "in", "on", "to", "for", "by", "at", "no", "et", "de", "des", "du", "la",
        "le", "les", "au", "aux", "à", "und", "mit", "der", "die", "das", "von", "y", "con", "del", "el", "los", "las", "e", "di", "da",
        "al", "en", "met", "van", "het", "een", "i", "z", "ze", "w", "do", "na",
    };

    /// <summary>The pieces that a line may be broken between.</summary>
    public static IReadOnlyList<string> Of(string text)
    {
        var pieces = new List<string>();
        var held = "";
        foreach (var word in text.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries))
        {
            held = held.Length == 0 ? word : $"{held} {word}";
            // The stroke between two languages ends what stands before it.
            if (word == "/" && pieces.Count > 0)
            {
                pieces[^1] += " /";
                held = "";
                continue;
            }
            if (Leading.Contains(word))
                continue;
            pieces.Add(held);
            held = "";
        }
        if (held.Length > 0)
            pieces.Add(held);
        return pieces;
    }
}
