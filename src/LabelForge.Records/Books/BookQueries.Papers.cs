using Microsoft.EntityFrameworkCore;

namespace LabelForge.Records.Books;

/// <content>What papers ask: the history of a product, and what is attached to what.</content>
internal sealed partial class BookQueries
{
    public Batch? LastBatch(string recipe, string? variant) => Whole(context.Batches.Where(b => b.Recipe == recipe && b.Variant == variant)
        .Where(b => !context.Corrections.Any(c => c.List == BookLists.Batch && c.EntryId == b.Id))
        .OrderByDescending(b => b.Recipe).ThenByDescending(b => b.Variant).ThenByDescending(b => b.Id).AsNoTracking().FirstOrDefault());
    public ProductHistory HistoryOf(string recipe, string? variant)
    {
        // The numbers that its batches ever had: a sale names its batch as the books stood then.
        var mine = context.Batches.Where(b => b.Recipe == recipe && b.Variant == variant);
        var standing = mine.Where(b => !context.Corrections.Any(c => c.List == BookLists.Batch && c.EntryId == b.Id));
        var first = Standing(context.Sales, BookLists.Sale).Where(s => mine.Any(b => b.Id == s.BatchId)).Min(s => (DateOnly?)s.On);
        var complaints = Standing(context.Complaints, BookLists.Complaint).Where(c => mine.Any(b => b.Id == c.BatchId)).OrderBy(c => c.Id)
            .ToArray();
        return new ProductHistory(standing.Count(), LastBatch(recipe, variant), first, complaints,
            AttachmentsOf(AttachedTo.Product(recipe, variant)));
    }
    public IReadOnlyList<Attachment> AttachmentsOf(string about) =>
        [.. Standing(context.Attachments, BookLists.Attachment).Where(a => a.About == about).OrderBy(a => a.Id)];
    public IReadOnlyList<Attachment> Attachments() => [.. Standing(context.Attachments, BookLists.Attachment).OrderBy(a => a.Id)];
}
