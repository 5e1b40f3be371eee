using LabelForge.Recipes;

namespace LabelForge.Records.Books;

/// <summary>Which lots in the house a batch sheet says to take from.</summary>
public static class ProposedLots
{
    /// <summary>For a material's id, its lots as they are written on bottles, the first to expire first; null where it is not kept in stock.</summary>
    /// <param name="ledger">The books.</param>
    /// <param name="batch">The batch.</param>
    /// <param name="on">The day; what is past its date then is not proposed.</param>
    public static Func<string, string?> For(Ledger ledger, BatchFormula batch, DateOnly on)
    {
        var proposals = Bench.Propose(ledger, batch.Lines.GroupBy(l => l.Material.Id).Select(g => (g.Key, g.Sum(l => l.Mass.Grams))), on).ToDictionary(p => p.Material);
        return material => proposals.TryGetValue(material, out var proposal) && proposal.Take.Count > 0
            ? string.Join(", ", proposal.Take.Select(t => proposal.Take.Count == 1 ? ledger.Bottle(t.From.Id) : FormattableString.Invariant($"{ledger.Bottle(t.From.Id)} {t.Grams:0.#} g"))) + (proposal.Missing > 0 ? FormattableString.Invariant($"; {proposal.Missing:0.#} g short") : "")
            : null;
    }
}
