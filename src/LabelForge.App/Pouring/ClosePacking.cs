using LabelForge.Records.Books;
using LabelForge.Records.Money;

namespace LabelForge.Pouring;

/// <summary>What packaging a closed batch used up, by costs.yaml: bags and boxes by its good
/// pieces. Label sheets are used up where they are printed.</summary>
public static class ClosePacking
{
    /// <summary>Writes it down.</summary>
    /// <param name="closed">The lots, and how many good pieces each has.</param>
    /// <param name="by">Who packed.</param>
    /// <returns>In sentences, what was used up and what the stock lacked; nothing where no packaging is kept in stock.</returns>
    public static IReadOnlyList<string> Use(Workshop workshop, OpenBooks book, IEnumerable<(string Lot, int Good)> closed, DateOnly on,
        string by)
    {
        var packaging = CostsFile.Of(workshop).Packaging.Where(p => workshop.Materials.GetValueOrDefault(p.Material)?.LabelStock is null)
            .ToArray();
        (string, string,
            decimal)[] used = [.. closed.Where(c => c.Good > 0)
                .SelectMany(c => packaging.Select(p => (c.Lot, p.Material, c.Good * p.Count)))];
        if (used.Length == 0)
            return [];
        var (done, missing) = Packing.Use(book, used, on, by);
        string Name(string id) => workshop.Materials.GetValueOrDefault(id)?.Name ?? id;
        return
        [
            .. done.Select(u => Invariant($"{u.Value:0.###} of {Name(u.Key)} are used up.")),
            .. missing.Select(
                m =>
                    Invariant($"The books have {m.Value:0.###} less of {Name(m.Key)} than were needed: write what came in, or count it.")),
        ];
    }
}
