using System.Collections.Immutable;
using LabelForge.Composition;
using LabelForge.Measures;

namespace LabelForge.Benchmarks;

/// <summary>Products of a given size: five suppliers' lists that overlap, each written from one
/// hidden composition, every third figure a range.</summary>
internal static class Instances
{
    private const int Materials = 5;

    /// <summary>A product of so many ingredients.</summary>
    /// <param name="ingredients">How many; at least 10.</param>
    /// <param name="listed">How far the orders are trusted. All are descending, so each kind of trust is true of them.</param>
    public static ImmutableArray<MaterialPart> Of(int ingredients, ListedOrder listed)
    {
        // A third of each list stands in a neighbour's too, so that shares of several materials have to be added up.
        var length = ingredients / Materials + Math.Max(1, ingredients / 10);
        decimal[] weights = [0.40m, 0.25m, 0.20m, 0.10m, 0.05m];
        return [
            .. weights.Select((w,
                m) => new MaterialPart($"Material {m}", w, listed, List(m * ingredients / Materials, length, ingredients)))];
    }

    private static ImmutableArray<Constituent> List(int from, int length, int ingredients)
    {
        // Each is a fixed part of the one before it, so that the last is about a fortieth of the first, as in real lists.
        var step = Math.Pow(0.025, 1.0 / length);
        decimal[] raw = [.. Enumerable.Range(0, length).Select(k => Math.Round((decimal)Math.Pow(step, k), 6))];
        var sum = raw.Sum();
        return [
            .. raw.Select((r,
                k) => new Constituent($"I{(from + k) % ingredients}", k % 3 == 0 ? Range(r / sum) : ShareRange.Unknown, false))];
    }

    private static ShareRange Range(decimal truth) =>
        new(Share.FromFraction(Math.Round(truth * 0.7m, 4)), Share.FromFraction(Math.Min(1, Math.Round(truth * 1.3m, 4))));
}
