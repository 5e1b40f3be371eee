namespace LabelForge.Checks.Reading;

/// <summary>
/// Plain text whose lines stand in columns, parted by spaces as a typewriter parts them: each column is read by itself, the
/// left one first. Without it, every line of a list would be broken by a line of what stands beside it.
/// </summary>
internal static class TextColumns
{
    // Two spaces stand after a full stop too.
    private const int FewestSpaces = 3;

    // The longest line of a column may come nearer to the next.
    private const int Between = 2;
    private const int FewestLines = 3;
    private const int FewestBeside = 2;
    private const int Narrowest = 6;
    private const int MostColumns = 6;

    /// <summary>The text with its columns one below the other, an empty line between; as it is where it has none.</summary>
    public static string Unfold(string text)
    {
        if (!text.Contains(new string(' ', FewestSpaces), StringComparison.Ordinal))
            return text;
        var lines = text.Split('\n').Select(l => l.TrimEnd()).ToArray();
        for (var times = 0; times < MostColumns && Widest(lines) is { } found; times++)
            lines = [.. lines[..found.From], .. Parted(lines[found.From..found.To], found.Column), .. lines[found.To..]];
        return string.Join('\n', lines);
    }

    private static (int From, int To, int Column)? Widest(string[] lines)
    {
        (int From, int To, int Column)? best = null;
        foreach (var column in lines.SelectMany(Starts).Distinct())
        {
            for (var from = 0; from < lines.Length;)
            {
                var to = from;
                while (to < lines.Length && !Crosses(lines[to], column))
                    to++;
                var region = lines[from..to];
                if (region.Count(l => l.Length > column) >= FewestLines
                    && region.Count(l => l.Length > column && l[..column].Trim().Length > 0) >= FewestBeside
                    && region.Where(l => l.Length > column && l[..column].Trim().Length > 0).All(l => l[column] != ' ')
                    && to - from > (best is { } b ? b.To - b.From : 0))
                    best = (from, to, column);
                from = Math.Max(to, from + 1);
            }
        }
        return best;
    }

    // Where words begin after a gap.
    private static IEnumerable<int> Starts(string line)
    {
        for (var i = Narrowest; i < line.Length; i++)
        {
            if (line[i] != ' ' && string.CompareOrdinal(line, i - FewestSpaces, "   ", 0, FewestSpaces) == 0)
                yield return i;
        }
    }

    private static bool Crosses(string line, int column) => line.Length >= column && line[(column - Between)..column].Trim().Length > 0;

    private static IEnumerable<string> Parted(string[] region, int column) =>
        region.Select(l => l.Length > column ? l[..column].TrimEnd() : l).Append("")
            .Concat(region.Where(l => l.Length > column || l.Length == 0).Select(l => l.Length > column ? l[column..] : "")).Append("");
}
