namespace LabelForge.Records.Books;

/// <summary>What the batches at the bench still need of the stock, so that nothing is promised twice.</summary>
public static class Reserved
{
    /// <summary>By material, the grams that open batches were planned to take and that are not weighed in yet.</summary>
    public static IReadOnlyDictionary<string, decimal> Of(IBooks books)
    {
        var reserved = new Dictionary<string, decimal>(StringComparer.Ordinal);
        foreach (var batch in books.OpenBatches())
        {
            // A material of which something was weighed is done with: what is written is what went in.
            foreach (var (line, weighed, _) in Production.Compare(books, batch).Where(l => l.Weighed == 0))
                reserved[line.Material] = reserved.GetValueOrDefault(line.Material) + line.Grams - weighed;
        }
        return reserved;
    }
}
