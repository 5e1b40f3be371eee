namespace LabelForge.Print.Documents;

/// <summary>A part of a recall sheet under a heading.</summary>
/// <param name="Heading">The heading.</param>
/// <param name="Lines">Its lines, a sentence each.</param>
/// <param name="ToTick">Whether each has a box to tick.</param>
public sealed record RecallPart(string Heading, ImmutableArray<string> Lines, bool ToTick = false);

/// <summary>What stands on a recall sheet: what to do, who has pieces, what was found, and a letter for each who has some.</summary>
/// <param name="Title">The sheet's title.</param>
/// <param name="Summary">How much is out and how much is in the house, in a sentence.</param>
/// <param name="Parts">The parts, in order; one without lines is left out.</param>
/// <param name="Letters">The letters, each a list of paragraphs; one to a page.</param>
public sealed record RecallSheetContent(string Title, string Summary, ImmutableArray<RecallPart> Parts,
    ImmutableArray<ImmutableArray<string>> Letters);
