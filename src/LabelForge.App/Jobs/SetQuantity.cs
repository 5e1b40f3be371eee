using LabelForge.Quantities;

namespace LabelForge.Print.Jobs;

/// <summary>One product in a package of several pieces.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Kind">Its kind of product, by its id: pieces of one kind are similar, of several dissimilar.</param>
/// <param name="Each">What a piece of it holds.</param>
/// <param name="Pieces">How many are in it.</param>
public sealed record SetHolds(string Name, string Kind, NetAmount Each, int Pieces);

/// <summary>What a package of several pieces says it holds.</summary>
/// <param name="Statement">The whole statement.</param>
/// <param name="Largest">What its letters are measured by: the total, or where there is none, the largest of a product.</param>
/// <remarks>
/// Pieces that are identical: their number, what each holds, the total (16 CFR 500.27(a)). Similar and not identical, as bars of several
/// scents: the number of each product followed by what a piece of it holds, and last the total with the count (16 CFR 500.28(a)).
/// Dissimilar, as a bar and a bottle: each by its own, and no total is asked for (16 CFR 500.29(a)). Other markets have no text of their
/// own for such packages in our files, and get the same words.
/// </remarks>
public sealed record SetQuantity(string Statement, NetAmount Largest)
{
    /// <summary>The statement of a set.</summary>
    /// <param name="holds">What is in it.</param>
    /// <param name="on">The day to judge by.</param>
    public static SetQuantity Of(ImmutableArray<SetHolds> holds, Market market, DateOnly on)
    {
        string Said(NetAmount amount) => NetQuantityStatement.For(market, amount, on).Statement;
        var pieces = holds.Sum(h => h.Pieces);
        if (holds is [var one])
        {
            var sum = Sum(holds);
            return new SetQuantity($"{pieces} pieces, {Said(one.Each)} each, Total {Said(sum)}", sum);
        }
        // Products of which a piece holds the same share the figure, each with its own number before it.
        var each = string.Join("; ", holds.GroupBy(h => Said(h.Each)).Select(g =>
            $"{string.Join(", ", g.Select(h => $"{h.Pieces} {h.Name}"))}, {g.Key}{(g.Sum(h => h.Pieces) > 1 ? " each" : "")}"));
        var isSimilar = holds.All(h => h.Kind == holds[0].Kind)
            && (holds.All(h => h.Each.Mass is not null) || holds.All(h => h.Each.Mass is null));
        return isSimilar && Sum(holds) is var total
            ? new SetQuantity($"{each}; Total: {pieces} pieces, {Said(total)}", total)
            : new SetQuantity(each, holds.Select(h => Times(h.Each, h.Pieces)).MaxBy(a => a.Metric)!);
    }

    private static NetAmount Times(NetAmount each, int pieces) => each.Mass is { } mass
        ? NetAmount.Of(Mass.FromGrams(mass.Grams * pieces), each.System)
        : NetAmount.Of(Volume.FromMillilitres(each.Volume!.Value.Millilitres * pieces), each.System);

    // Measured in ounces where all are, else in grams.
    private static NetAmount Sum(ImmutableArray<SetHolds> holds)
    {
        var system = holds.All(h => h.Each.System == MeasureSystem.Customary) ? MeasureSystem.Customary : MeasureSystem.Metric;
        var sum = holds.Sum(h => h.Each.Metric * h.Pieces);
        return holds[0].Each.Mass is not null
            ? NetAmount.Of(Mass.FromGrams(sum), system)
            : NetAmount.Of(Volume.FromMillilitres(sum), system);
    }
}
