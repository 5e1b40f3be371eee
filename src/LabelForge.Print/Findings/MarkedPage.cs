using LabelForge.Checks;
using LabelForge.Checks.Reading;

namespace LabelForge.Print.Findings;

/// <summary>A place on a picture that a finding is about; points from the top left corner.</summary>
/// <param name="Number">The finding's number in the report, from 1.</param>
/// <param name="Severity">How grave it is.</param>
public sealed record Mark(int Number, Severity Severity, double X, double Y, double Width, double Height);

/// <summary>A word drawn where it stands.</summary>
public sealed record DrawnWord(string Text, double X, double Y, double Width, double Height);

/// <summary>One page of a label as the report pictures it, with the places marked.</summary>
/// <param name="Width">Points.</param>
/// <param name="Height">Points.</param>
/// <param name="Label">The label as LabelForge draws it, or null.</param>
/// <param name="Words">Its words, where it was drawn elsewhere: a picture of where they stand, not of how they look.</param>
/// <param name="Marks">The places.</param>
public sealed record MarkedPage(double Width, double Height, Drawing.LabelLayout? Label, ImmutableArray<DrawnWord> Words,
    ImmutableArray<Mark> Marks);

/// <summary>A label and what its check found, for a report.</summary>
/// <param name="Title">What was checked, as the person knows it.</param>
/// <param name="Report">The check's answer.</param>
/// <param name="Pages">The label's pictures; empty where there is none.</param>
/// <param name="Reading">What was read, where the label came as text; null else.</param>
public sealed record JudgedLabel(string Title, CheckReport Report, ImmutableArray<MarkedPage> Pages, LabelStatement? Reading);
