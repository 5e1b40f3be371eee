namespace LabelForge.Recipes.Files;

/// <summary>Finds what a misspelt word was probably meant to be.</summary>
public static class Spelling
{
    /// <summary>The nearest of the known words, or null where none is near.</summary>
    public static string? Nearest(string written, IEnumerable<string> known)
    {
        var best = known.Select(k => (Word: k, Distance: Distance(written, k))).OrderBy(p => p.Distance).FirstOrDefault();
        return best.Word is not null && best.Distance <= Math.Max(1, written.Length / 3) ? best.Word : null;
    }

    /// <summary>The Levenshtein distance between two words, letter case aside.</summary>
    public static int Distance(string a, string b)
    {
        var row = Enumerable.Range(0, b.Length + 1).ToArray();
        for (var i = 1; i <= a.Length; i++)
        {
            var diagonal = row[0];
            row[0] = i;
            for (var j = 1; j <= b.Length; j++)
            {
                var change = diagonal + (char.ToLowerInvariant(a[i - 1]) == char.ToLowerInvariant(b[j - 1]) ? 0 : 1);
                diagonal = row[j];
                row[j] = Math.Min(change, Math.Min(row[j], row[j - 1]) + 1);
            }
        }
        return row[b.Length];
    }
}
