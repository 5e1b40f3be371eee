using System.Collections.Immutable;
using LabelForge.Measures;

namespace LabelForge.Recipes;

/// <summary>A bought material's share of what was weighed in, materials made in the shop opened up.</summary>
public sealed record FlatShare(Material Material, ChargeShare Share);

/// <summary>A batch as shares of bought materials only: what the shop mixed itself is opened up, level by level.</summary>
public static class FlatFormula
{
    /// <summary>Opens up a batch; the shares are of all that was weighed in, and sum to 1.</summary>
    /// <exception cref="InputException">A material is made from itself, directly or through others.</exception>
    public static ImmutableArray<FlatShare> Of(Workshop workshop, BatchFormula batch)
    {
        var shares = new Dictionary<string, ChargeShare>();
        var order = new List<Material>();
        foreach (var line in batch.Lines)
            Open(workshop, line.Material, new ChargeShare(line.Mass.Grams / batch.Total.Grams), [], shares, order);
        return [.. order.Select(m => new FlatShare(m, shares[m.Id]))];
    }

    /// <summary>Opens up one material: shares of it, which sum to 1.</summary>
    /// <exception cref="InputException">It is made from itself, directly or through others.</exception>
    public static ImmutableArray<FlatShare> Of(Workshop workshop, Material material)
    {
        var shares = new Dictionary<string, ChargeShare>();
        var order = new List<Material>();
        Open(workshop, material, ChargeShare.Whole, [], shares, order);
        return [.. order.Select(m => new FlatShare(m, shares[m.Id]))];
    }

    private static void Open(Workshop workshop, Material material, ChargeShare share, ImmutableList<string> inside, Dictionary<string, ChargeShare> shares, List<Material> order)
    {
        if (inside.Contains(material.Id))
        {
            throw new InputException(new Problem(material.File, material.MadeFrom[0].Line,
                $"\"{material.Id}\" is made from itself: {string.Join(" from ", inside.Add(material.Id).SkipWhile(i => i != material.Id))}.",
                "Take it out of one of these lists."));
        }
        if (material.MadeFrom.IsEmpty)
        {
            if (!shares.TryAdd(material.Id, share))
                shares[material.Id] += share;
            else
                order.Add(material);
            return;
        }
        var (lines, total) = AmountResolution.Resolve(workshop, material.MadeFrom, material.File);
        foreach (var line in lines)
            Open(workshop, line.Material, share * (line.Mass.Grams / total.Grams), inside.Add(material.Id), shares, order);
    }
}
