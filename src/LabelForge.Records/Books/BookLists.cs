namespace LabelForge.Records.Books;

/// <summary>The names of the lists, as corrections and the command write them.</summary>
public static class BookLists
{
    /// <summary>The list of what came in.</summary>
    public const string Receipt = "receipt";
    /// <summary>The list of batches.</summary>
    public const string Batch = "batch";
    /// <summary>The list of labels printed.</summary>
    public const string Printing = "printing";
    /// <summary>The list of what was weighed into a batch.</summary>
    public const string Weighing = "weighing";
    /// <summary>The list of what went otherwise than planned.</summary>
    public const string Deviation = "deviation";
    /// <summary>The list of what came of a batch.</summary>
    public const string Closing = "closing";
    /// <summary>The list of sales.</summary>
    public const string Sale = "sale";
    /// <summary>The list of complaints.</summary>
    public const string Complaint = "complaint";
    /// <summary>The list of what was disposed of.</summary>
    public const string Disposal = "disposal";
    /// <summary>The list of packaging and label sheets used up.</summary>
    public const string Packing = "packing";
    /// <summary>The list of counts that differed from the books.</summary>
    public const string Count = "count";
    /// <summary>The list of what was brought back.</summary>
    public const string Return = "return";
    /// <summary>The list of what a day's table took.</summary>
    public const string Takings = "takings";
    /// <summary>The list of papers and pictures that are kept beside the books.</summary>
    public const string Attachment = "attachment";
    /// <summary>The list of corrections.</summary>
    public const string Correction = "correction";

    /// <summary>All that can be corrected.</summary>
    public static readonly IReadOnlyList<string> All = [Receipt, Batch, Printing, Weighing, Deviation, Closing, Sale, Complaint, Disposal,
        Packing, Count, Return, Takings, Attachment];
}
