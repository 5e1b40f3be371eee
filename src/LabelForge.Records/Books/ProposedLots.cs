namespace LabelForge.Records.Books;

/// <summary>Which lots in the house a batch sheet says to take from.</summary>
public static class ProposedLots
{
    /// <summary>For a material's id, its lots as they are written on bottles, the first to expire
    /// first; null where it is not kept in stock.</summary>
    /// <param name="on">The day; what is past its date then is not proposed.</param>
    public static Func<string, string?> For(IBooks books, BatchFormula batch, DateOnly on)
    {
        // Worked out here and now: the books are asked only while they are open.
        var lots = Production.Propose(books, batch.Lines.GroupBy(l => l.Material.Id).Select(g => (g.Key, g.Sum(l => l.Mass.Grams))), on)
            .Where(p => p.Take.Count > 0).ToDictionary(p => p.Material, p => Named(books, p));
        return lots.GetValueOrDefault;
    }

    private static string Named(IBooks books, Proposal proposal) =>
        string.Join(", ",
            proposal.Take
                .Select(t => proposal.Take.Count == 1
                    ? books.Bottle(t.From.Id)
                    : Invariant($"{books.Bottle(t.From.Id)} {t.Grams:0.#} g")))
            + (proposal.Missing > 0 ? Invariant($"; {proposal.Missing:0.#} g short") : "");
}
