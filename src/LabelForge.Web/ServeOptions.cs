namespace LabelForge.Web;

/// <summary>How the page is served.</summary>
/// <param name="Folder">The workshop's folder; it may be empty still.</param>
/// <param name="Port">The port; 0 for any that is free.</param>
public sealed record ServeOptions(string Folder, int Port)
{
    /// <summary>The day to judge by; today's unless a test fixes it.</summary>
    public Func<DateOnly> Today { get; init; } = () => DateOnly.FromDateTime(DateTime.Now);

    /// <summary>Writes a made-up workshop into an empty folder; null where none comes with the program.</summary>
    public Action<string>? WriteSample { get; init; }

    /// <summary>Whether this is the made-up workshop itself, which every page says.</summary>
    public bool IsSample { get; init; }
}
