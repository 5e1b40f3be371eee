namespace LabelForge.Records.Books;

/// <content>What papers ask: the history of a product, and what is attached to what.</content>
public sealed partial class BooksSnapshot
{
    /// <inheritdoc/>
    public Batch? LastBatch(string recipe, string? variant) => Batches.LastOrDefault(b => b.Recipe == recipe && b.Variant == variant);

    /// <inheritdoc/>
    public ProductHistory HistoryOf(string recipe, string? variant)
    {
        var mine = AllBatches.Where(b => b.Recipe == recipe && b.Variant == variant).Select(b => b.Id).ToHashSet();
        var standing = Batches.Where(b => mine.Contains(b.Id)).ToArray();
        return new ProductHistory(standing.Length, standing.LastOrDefault(),
            Sales.Where(s => mine.Contains(s.BatchId)).Select(s => (DateOnly?)s.On).Min(),
            [.. Complaints.Where(c => c.BatchId is { } id && mine.Contains(id))], AttachmentsOf(AttachedTo.Product(recipe, variant)));
    }

    /// <inheritdoc/>
    public IReadOnlyList<Attachment> AttachmentsOf(string about) => [.. Standing<Attachment>().Where(a => a.About == about)];

    /// <inheritdoc/>
    public IReadOnlyList<Attachment> Attachments() => Standing<Attachment>();
}
