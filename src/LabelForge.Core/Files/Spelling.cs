namespace LabelForge.Recipes.Files;

/// <summary>Finds what a misspelt word was probably meant to be.</summary>
public static class Spelling
{
    /// <summary>The nearest of the known words, or null where none is near.</summary>
    public static string? Nearest(string written, IEnumerable<string> known) => Nearest(written, known, Farthest(written));

    /// <summary>The nearest of a few words that are known, with more letters wrong; a word of the
    /// same letters, two of which changed places, comes before all.</summary>
    public static string? NearestOfFew(string written, IEnumerable<string> known)
    {
        var all = known.ToArray();
        return Array.Find(all, k => Letters(k) == Letters(written))
            ?? Nearest(written, all, written.Length < 4 ? 1 : Math.Max(2, Farthest(written)));
    }

    private static string Letters(string word) => string.Concat(word.ToLowerInvariant().Order());

    private static string? Nearest(string written, IEnumerable<string> known, int most) =>
        known.Select(k => (Word: k, Distance: DistanceWithin(most, written, k))).Where(p => p.Distance is not null)
            .OrderBy(p => p.Distance).FirstOrDefault().Word;

    /// <summary>How many letters may be wrong for a word still to be meant: one in three.</summary>
    public static int Farthest(string written) => Math.Max(1, written.Length / 3);

    /// <summary>The Levenshtein distance between two words, letter case aside, or null where it is more than asked for.</summary>
    /// <remarks>
    /// Words that differ by more letters in length are never compared, and of the others only what can still lie within
    /// the distance (E. Ukkonen, Algorithms for approximate string matching, Information and Control 64, 1985: from memory).
    /// </remarks>
    public static int? DistanceWithin(int most, string a, string b)
    {
        if (Math.Abs(a.Length - b.Length) > most)
            return null;
        var row = new int[b.Length + 1];
        for (var j = 0; j <= b.Length; j++)
            row[j] = j;
        for (var i = 1; i <= a.Length; i++)
        {
            var (from, to) = (Math.Max(1, i - most), Math.Min(b.Length, i + most));
            var diagonal = row[from - 1];
            // What lies outside the band is farther than asked for, whatever it is.
            row[from - 1] = from == 1 ? i : most + 1;
            var least = row[from - 1];
            for (var j = from; j <= to; j++)
            {
                var above = j < i + most ? row[j] : most + 1;
                var change = diagonal + (char.ToLowerInvariant(a[i - 1]) == char.ToLowerInvariant(b[j - 1]) ? 0 : 1);
                diagonal = row[j];
                row[j] = Math.Min(change, Math.Min(above, row[j - 1]) + 1);
                least = Math.Min(least, row[j]);
            }
            if (least > most)
                return null;
        }
        return row[b.Length] <= most ? row[b.Length] : null;
    }
}
