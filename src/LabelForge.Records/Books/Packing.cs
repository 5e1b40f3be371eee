namespace LabelForge.Records.Books;

/// <summary>Packaging that batches use up: bags, boxes, label sheets.</summary>
public static class Packing
{
    /// <summary>Writes it down, the oldest first. What was never received is not kept in stock;
    /// what the stock lacks is told and not invented.</summary>
    /// <param name="used">For each lot and material, how many pieces.</param>
    /// <param name="by">Who used it.</param>
    /// <param name="note">A note, or null.</param>
    /// <returns>By material, what was used up and what the stock lacked.</returns>
    public static (IReadOnlyDictionary<string, decimal> Used, IReadOnlyDictionary<string, decimal> Missing) Use(
        OpenBooks book, IReadOnlyList<(string Lot, string Material, decimal Pieces)> used, DateOnly on, string by, string? note = null) =>
        book.Write((books, context) =>
        {
            var (done, missing) = (new Dictionary<string, decimal>(StringComparer.Ordinal),
                new Dictionary<string, decimal>(StringComparer.Ordinal));
            var left = used.Select(u => u.Material).Distinct().Where(books.IsKept)
                .ToDictionary(m => m, m => books.InStock(m).Select(s => (s.Receipt.Id, s.Left)).ToList());
            foreach (var (lot, material, pieces) in used.Where(u => left.ContainsKey(u.Material)))
            {
                var (batch, open, stock) = (books.BatchOf(lot), pieces, left[material]);
                for (var at = 0; at < stock.Count && open > 0; at++)
                {
                    var now = Math.Min(open, stock[at].Left);
                    if (now <= 0)
                        continue;
                    context.PackingUses
                        .Add(new PackingUse { On = on, By = by, Note = note, BatchId = batch.Id, ReceiptId = stock[at].Id, Used = now });
                    (open, stock[at]) = (open - now, (stock[at].Id, stock[at].Left - now));
                }
                if (open < pieces)
                    done[material] = done.GetValueOrDefault(material) + pieces - open;
                if (open > 0)
                    missing[material] = missing.GetValueOrDefault(material) + open;
            }
            return ((IReadOnlyDictionary<string, decimal>)done, (IReadOnlyDictionary<string, decimal>)missing);
        });
}
