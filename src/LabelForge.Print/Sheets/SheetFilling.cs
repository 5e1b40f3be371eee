using System.Numerics;

namespace LabelForge.Print.Sheets;

/// <summary>A sheet that goes through the printer, and where labels come to stand on it.</summary>
/// <param name="Name">The letter on a part-used sheet; null for a new one.</param>
/// <param name="UsedBefore">The places that were used before.</param>
/// <param name="Places">The places printed now, in order.</param>
public sealed record FilledSheet(string? Name, ImmutableSortedSet<int> UsedBefore, ImmutableArray<int> Places);

/// <summary>Chooses the sheets for a number of labels: so that afterwards as few as can be are
/// part-used, then with the fewest new ones, then the fewest in all.</summary>
public static class SheetFilling
{
    // Every choice among so many part-used sheets is tried; of more than these, the fullest.
    private const int MostTried = 12;

    /// <summary>The sheets in the order of the tray: part-used ones first, and last the one that keeps a free place.</summary>
    /// <param name="perSheet">Places on a sheet.</param>
    /// <param name="partUsed">The part-used sheets.</param>
    /// <param name="labels">How many labels, at least 1.</param>
    public static ImmutableArray<FilledSheet> Plan(int perSheet, IReadOnlyList<PartUsedSheet> partUsed, int labels)
    {
        PartUsedSheet[] tried = [.. partUsed.OrderByDescending(s => s.Used.Count).ThenBy(s => s.Name, StringComparer.Ordinal)
            .Take(MostTried)];
        var best = Enumerable.Range(0, 1 << tried.Length).Select(chosen => Score(perSheet, tried, chosen, labels))
            .Where(s => s is not null)
            .Min()!.Value;
        return Fill(perSheet, [.. tried.Where((_, i) => (best.Chosen >> i & 1) == 1)], best.New, labels);
    }

    private static (int PartUsedAfter, int New, int InAll, int Chosen)? Score(int perSheet, PartUsedSheet[] tried, int chosen, int labels)
    {
        int[] free = [.. tried.Where((_, i) => (chosen >> i & 1) == 1).Select(s => perSheet - s.Used.Count)];
        var open = labels - free.Sum();
        var fresh = open <= 0 ? 0 : (open + perSheet - 1) / perSheet;
        var slack = free.Sum() + fresh * perSheet - labels;
        // What stays free must do so on one sheet that is printed on.
        if (slack > 0 && fresh == 0 && !free.Any(f => f > slack))
            return null;
        var count = BitOperations.PopCount((uint)chosen);
        return (tried.Length - count + (slack > 0 ? 1 : 0), fresh, count + fresh, chosen);
    }

    private static ImmutableArray<FilledSheet> Fill(int perSheet, PartUsedSheet[] chosen, int fresh, int labels)
    {
        // The emptiest of the part-used ones last, so that what stays free does so there.
        var sheets = chosen.OrderByDescending(s => s.Used.Count).ThenBy(s => s.Name, StringComparer.Ordinal)
            .Select(s => (Name: (string?)s.Name, s.Used))
            .Concat(Enumerable.Repeat((Name: (string?)null, Used: ImmutableSortedSet<int>.Empty), fresh));
        var filled = ImmutableArray.CreateBuilder<FilledSheet>();
        foreach (var (name, used) in sheets)
        {
            ImmutableArray<int> places = [.. Enumerable.Range(1, perSheet).Where(p => !used.Contains(p)).Take(labels)];
            labels -= places.Length;
            filled.Add(new FilledSheet(name, used, places));
        }
        return filled.ToImmutable();
    }
}
