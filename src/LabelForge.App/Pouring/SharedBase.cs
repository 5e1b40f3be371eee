namespace LabelForge.Pouring;

/// <summary>What several batches have in common and is melted once: their base, or the oils, lye
/// and water of a soap made from oils.</summary>
public static class SharedBase
{
    // Two recipes written with other roundings of the same share are still one mixture.
    private const decimal SameRatio = 0.001m;

    /// <summary>The ids of the materials that go into the pot, the heaviest first; empty where nothing is common to all.</summary>
    /// <remarks>
    /// Several materials in one pot are poured out in one ratio, so that a material counts only where every batch takes it in
    /// the same ratio to the heaviest. Scent and colour are never in the pot: they are what the batches differ by.
    /// </remarks>
    public static ImmutableArray<string> Of(IReadOnlyList<BatchFormula> batches)
    {
        var bases = Common(batches, m => m.Kind == MaterialKind.Base);
        // Of two bases neither is melted for both; only where no batch has one are the oils of all one mixture.
        if (bases.IsEmpty && !batches.Any(b => b.Lines.Any(l => l.Material.Kind == MaterialKind.Base)))
            bases = Common(batches, m => m.Kind is MaterialKind.Oil or MaterialKind.Lye or MaterialKind.Water);
        return bases.Length < 2 ? bases : [.. bases.Where(id => InOneRatio(batches, bases[0], id))];
    }

    /// <summary>Grams of a material in a batch.</summary>
    public static decimal Grams(BatchFormula batch, string material) =>
        batch.Lines.Where(l => l.Material.Id == material).Sum(l => l.Mass.Grams);

    private static ImmutableArray<string> Common(IReadOnlyList<BatchFormula> batches, Func<Material, bool> kind) =>
    [
        .. batches[0].Lines.Where(l => kind(l.Material)).Select(l => l.Material.Id).Distinct()
            .Where(id => batches.All(b => Grams(b, id) > 0))
            .OrderByDescending(id => batches.Sum(b => Grams(b, id))),
    ];

    private static bool InOneRatio(IReadOnlyList<BatchFormula> batches, string heaviest, string id)
    {
        var first = Grams(batches[0], id) / Grams(batches[0], heaviest);
        return batches.All(b => Math.Abs(Grams(b, id) / Grams(b, heaviest) - first) <= first * SameRatio);
    }
}
