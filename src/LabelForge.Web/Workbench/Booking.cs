namespace LabelForge.Web.Workbench;

/// <summary>What was just written into the books and can be struck again at once.</summary>
/// <param name="List">The list.</param>
/// <param name="Entries">The entries' numbers, as they were written.</param>
/// <param name="What">What it was, in words.</param>
/// <param name="At">When, in universal time.</param>
public sealed record Booking(string List, IReadOnlyList<int> Entries, string What, DateTime At)
{
    /// <summary>How long it can be undone by one button; afterwards it is corrected, with a reason.</summary>
    public static readonly TimeSpan Lasts = TimeSpan.FromMinutes(1);

    /// <summary>Whether it still can.</summary>
    public bool CanBeUndone => DateTime.UtcNow - At < Lasts;
}
