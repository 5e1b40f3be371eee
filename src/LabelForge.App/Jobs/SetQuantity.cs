using System.Collections.Immutable;
using LabelForge.Markets;
using LabelForge.Measures;
using LabelForge.Quantities;

namespace LabelForge.Print.Jobs;

/// <summary>What a package of several pieces says it holds.</summary>
/// <param name="Statement">The whole statement.</param>
/// <param name="Largest">What its letters are measured by: the total, or where volumes and masses are together, the largest of a product.</param>
/// <remarks>
/// Pieces that are alike: their number, what each holds, the total (16 CFR 500.27(a)). Others: the number and what one holds
/// by product, and the total where all are masses or all are volumes (16 CFR 500.28, from memory).
/// </remarks>
public sealed record SetQuantity(string Statement, NetAmount Largest)
{
    /// <summary>The statement of a set.</summary>
    /// <param name="holds">Each product by its name, what a piece of it holds, and how many are in it.</param>
    /// <param name="market">The market.</param>
    /// <param name="on">The day to judge by.</param>
    public static SetQuantity Of(ImmutableArray<(string Name, NetAmount Each, int Pieces)> holds, Market market, DateOnly on)
    {
        string Said(NetAmount amount) => NetQuantityStatement.For(market, amount, on).Statement;
        var pieces = holds.Sum(h => h.Pieces);
        var total = holds.All(h => h.Each.Mass is not null) || holds.All(h => h.Each.Mass is null) ? Sum(holds) : null;
        if (total is not null && holds.Select(h => Said(h.Each)).Distinct().Count() == 1)
            return new SetQuantity($"{pieces} pieces, {Said(holds[0].Each)} each, Total {Said(total)}", total);
        var each = string.Join("; ", holds.Select(h => $"{h.Name}: {(h.Pieces > 1 ? $"{h.Pieces} pieces, {Said(h.Each)} each" : Said(h.Each))}"));
        return new SetQuantity($"{each}{(total is null ? "" : $"; Total {Said(total)}")}", total ?? holds.Select(h => Times(h.Each, h.Pieces)).MaxBy(a => a.Metric)!);
    }

    private static NetAmount Times(NetAmount each, int pieces) => each.Mass is { } mass
        ? NetAmount.Of(Mass.FromGrams(mass.Grams * pieces), each.System)
        : NetAmount.Of(Volume.FromMillilitres(each.Volume!.Value.Millilitres * pieces), each.System);

    // Measured in ounces where all are, else in grams.
    private static NetAmount Sum(ImmutableArray<(string Name, NetAmount Each, int Pieces)> holds)
    {
        var system = holds.All(h => h.Each.System == MeasureSystem.Customary) ? MeasureSystem.Customary : MeasureSystem.Metric;
        var sum = holds.Sum(h => h.Each.Metric * h.Pieces);
        return holds[0].Each.Mass is not null ? NetAmount.Of(Mass.FromGrams(sum), system) : NetAmount.Of(Volume.FromMillilitres(sum), system);
    }
}
