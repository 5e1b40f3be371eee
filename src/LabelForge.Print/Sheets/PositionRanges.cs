namespace LabelForge.Print.Sheets;

/// <summary>Positions on a sheet as people write them: <c>1-4,7</c>.</summary>
public static class PositionRanges
{
    /// <summary>The positions in words, runs of three and more drawn together.</summary>
    public static string Write(IEnumerable<int> positions)
    {
        var parts = new List<string>();
        int[] sorted = [.. positions.Distinct().Order()];
        for (var at = 0; at < sorted.Length;)
        {
            var end = at;
            while (end + 1 < sorted.Length && sorted[end + 1] == sorted[end] + 1)
                end++;
            parts.Add(end == at ? Text(sorted[at]) : $"{Text(sorted[at])}-{Text(sorted[end])}");
            at = end + 1;
        }
        return string.Join(',', parts);
    }

    /// <summary>Reads positions; null where something is none, or more than a sheet of any stock has.</summary>
    /// <param name="text">What was written.</param>
    public static ImmutableSortedSet<int>? Read(string text)
    {
        var read = ImmutableSortedSet.CreateBuilder<int>();
        foreach (var part in text.Split([',', ' '], StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries))
        {
            var ends = part.Split('-');
            if (ends.Length > 2 || !Number(ends[0], out var from) || !Number(ends[^1], out var to) || to < from)
                return null;
            for (var position = from; position <= to; position++)
                read.Add(position);
        }
        return read.ToImmutable();
    }

    private static bool Number(string text, out int number) =>
        int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out number) && number is >= 1 and <= 10_000;

    private static string Text(int number) => number.ToString(CultureInfo.InvariantCulture);
}
