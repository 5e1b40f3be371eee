namespace LabelForge.Print.Documents;

/// <summary>What stands on a recall sheet: what was found, what to do, a line and a letter for each who has pieces.</summary>
/// <param name="Title">The sheet's title.</param>
/// <param name="Facts">What is recalled and where it went, one sentence each.</param>
/// <param name="Steps">What to do, in order, each with a box to tick.</param>
/// <param name="Letters">The letters, each a list of paragraphs; one to a page.</param>
public sealed record RecallSheetContent(string Title, ImmutableArray<string> Facts, ImmutableArray<string> Steps,
    ImmutableArray<ImmutableArray<string>> Letters)
{
    /// <summary>The page's width; US Letter by default.</summary>
    public Length PageWidth { get; init; } = Length.FromInches(8.5m);

    /// <summary>The page's height; US Letter by default.</summary>
    public Length PageHeight { get; init; } = Length.FromInches(11m);
}
