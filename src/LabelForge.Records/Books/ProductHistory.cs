namespace LabelForge.Records.Books;

/// <summary>What the books know of a product over all its batches.</summary>
/// <param name="Batches">How many batches of it stand.</param>
/// <param name="Last">The last of them, with what it froze; null where there is none.</param>
/// <param name="FirstSale">The day of its first sale or gift that stands; null where there is none.</param>
/// <param name="Complaints">The complaints of its lots that stand, the first one first.</param>
/// <param name="Attachments">What is attached to it that stands, the first one first.</param>
public sealed record ProductHistory(int Batches, Batch? Last, DateOnly? FirstSale, IReadOnlyList<Complaint> Complaints,
    IReadOnlyList<Attachment> Attachments);
