namespace LabelForge.Records.Books;

/// <summary>The names of the lists, as corrections and the command write them.</summary>
public static class BookLists
{
    public const string Receipt = "receipt";
    public const string Batch = "batch";
    public const string Printing = "printing";
    public const string Weighing = "weighing";
    public const string Deviation = "deviation";
    public const string Closing = "closing";
    public const string Sale = "sale";
    public const string Complaint = "complaint";
    public const string Disposal = "disposal";
    public const string Correction = "correction";

    /// <summary>All that can be corrected.</summary>
    public static readonly IReadOnlyList<string> All = [Receipt, Batch, Printing, Weighing, Deviation, Closing, Sale, Complaint, Disposal];
}
