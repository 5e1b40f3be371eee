namespace LabelForge.Composition;

/// <summary>Says why no composition can meet a supplier's list.</summary>
internal static class Contradiction
{
    /// <summary>The error for a list that no composition meets, naming the constituents that clash.</summary>
    /// <param name="part">The list.</param>
    /// <param name="line">The share at or under which a label order is free.</param>
    public static InputException In(MaterialPart part, decimal line)
    {
        var list = part.Constituents;
        var least = list.Sum(c => c.Share.Low.Fraction);
        var greatest = list.Sum(c => c.Share.High.Fraction);
        if (least > 1)
        {
            Constituent[] known = [.. list.Where(c => c.Share.Low.Fraction > 0)];
            return Whole("composition.above-whole", part, known, least);
        }
        if (greatest < 1)
            return Whole("composition.below-whole", part, list, greatest);
        return Clash(part, line) is { } clash
            ? new InputException("composition.listed-before-more", ("material", part.Material), ("substance", clash.First.Substance),
                ("share", clash.First.Share), ("substance-2", clash.Second.Substance), ("share-2", clash.Second.Share))
            : new InputException("composition.order-listed-figures-leave", ("material", part.Material),
                ("names", Names(list.Where(c => c.Share != ShareRange.Unknown))));
    }

    // Figures rounded by the supplier each miss by up to half of their last place; together they may miss the whole by no more.
    private static (string Miss, string First, string Low, string High)? Rounded(IReadOnlyList<Constituent> list, decimal sum)
    {
        var half = 0m;
        foreach (var figure in list.Where(c => c.Share.Low == c.Share.High && c.Share.High.Fraction > 0)
            .Select(c => c.Share.High.Percent / 1.0000000000000000000000000000m))
            half += 0.5m / (decimal)Math.Pow(10, figure.Scale);
        var (miss, first) = (Math.Abs(1 - sum) * 100, list.FirstOrDefault(c => c.Share.Low == c.Share.High && c.Share.High.Fraction > 0));
        if (first is null || miss > half)
            return null;
        var percent = first.Share.High.Percent / 1.0000000000000000000000000000m;
        var step = 0.5m / (decimal)Math.Pow(10, percent.Scale);
        return (Percent(miss / 100), first.Substance, Figure(percent - step), Figure(percent + step));
    }

    private static string Figure(decimal percent) => Math.Clamp(percent, 0, 100).ToString("0.########", CultureInfo.InvariantCulture);

    private static (Constituent First, Constituent Second)? Clash(MaterialPart part, decimal line)
    {
        if (part.Listed == ListedOrder.None)
            return null;
        // In a label order two constituents may change places as long as the later one is at most that line.
        var free = part.Listed == ListedOrder.Label ? line : 0;
        ImmutableArray<Constituent> ordered = part.Listed == ListedOrder.Label
            ? [.. part.Constituents.Where(c => !c.IsColourant)]
            : part.Constituents;
        for (var later = 1; later < ordered.Length; later++)
        {
            for (var earlier = 0; earlier < later; earlier++)
            {
                var low = ordered[later].Share.Low.Fraction;
                if (low > free && low > ordered[earlier].Share.High.Fraction)
                    return (ordered[earlier], ordered[later]);
            }
        }
        return null;
    }

    private static InputException Whole(string code, MaterialPart part, IReadOnlyList<Constituent> list, decimal sum) =>
        Rounded(list, sum) is var (miss, first, low, high)
            ? new InputException(code + "-rounded", ("material", part.Material), ("names", Names(list)), ("come", Come(list.Count)),
                ("percent", Percent(sum)), ("miss", miss), ("substance", first), ("low", low), ("high", high))
            : new InputException(code, ("material", part.Material), ("names", Names(list)), ("come", Come(list.Count)), ("percent", Percent(sum)));

    private static string Names(IEnumerable<Constituent> constituents)
    {
        string[] names = [.. constituents.Select(c => c.Substance)];
        return names.Length == 1 ? names[0] : $"{string.Join(", ", names[..^1])} and {names[^1]}";
    }

    private static string Come(int names) => names == 1 ? "comes" : "come";

    private static string Percent(decimal fraction) => (fraction * 100).ToString("0.######", CultureInfo.InvariantCulture) + " %";
}
