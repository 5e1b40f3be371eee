namespace LabelForge.Web.Serving;

/// <summary>How the page is served.</summary>
/// <param name="Folder">The workshop's folder; it may be empty still.</param>
/// <param name="Port">The port; 0 for any that is free.</param>
public sealed record ServeOptions(string Folder, int Port)
{
    /// <summary>The day to judge by; today's unless a test fixes it.</summary>
    public Func<DateOnly> Today { get; init; } = () => DateOnly.FromDateTime(DateTime.Now);
}
