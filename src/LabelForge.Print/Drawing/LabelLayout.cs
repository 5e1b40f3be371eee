using System.Collections.Immutable;
using LabelForge.Measures;
using LabelForge.Print.Designs;
using LabelForge.Print.Lettering;

namespace LabelForge.Print.Drawing;

/// <summary>A line of text at its place: points from the label's top left corner, down; Y is the baseline.</summary>
public sealed record PlacedLine(MeasuredText Text, double X, double Y, Role? Role = null);

/// <summary>A rectangle of ink, in points from the label's top left corner, down.</summary>
public sealed record PlacedBar(double X, double Y, double Width, double Height);

/// <summary>An element of text as it would be printed, for checks to read.</summary>
/// <param name="Role">What it says.</param>
/// <param name="Text">Its text, lines joined by spaces.</param>
/// <param name="X">The left edge of its lines, from the label's left edge.</param>
/// <param name="Y">The top of its ink, from the label's top edge.</param>
/// <param name="Width">Its width.</param>
/// <param name="Height">From the top of its ink to the bottom.</param>
/// <param name="LetterHeight">The height by which the law measures it, from the outlines drawn.</param>
/// <param name="RequiredFloor">The height it may not fall below.</param>
/// <param name="Source">Where that floor comes from.</param>
public sealed record PlacedText(Role Role, string Text, Length X, Length Y, Length Width, Length Height, Length LetterHeight, Length RequiredFloor, string Source);

/// <summary>A label laid out and ready to draw. All that is drawn is in <see cref="Lines"/> and <see cref="Bars"/>.</summary>
public sealed record LabelLayout
{
    /// <summary>The design it was made from.</summary>
    public required LabelDesign Design { get; init; }

    /// <summary>The lines of text.</summary>
    public required ImmutableArray<PlacedLine> Lines { get; init; }

    /// <summary>Bars and rules.</summary>
    public required ImmutableArray<PlacedBar> Bars { get; init; }

    /// <summary>The elements of text, with the heights they would be printed in.</summary>
    public required ImmutableArray<PlacedText> Texts { get; init; }

    /// <summary>The rules that the layout was measured against, with what it measures and the margin to spare.</summary>
    public ImmutableArray<Constraint> Constraints { get; init; } = [];

    /// <summary>What the content or the caller gave and the label does not show, in plain words.</summary>
    public required ImmutableArray<string> LeftOut { get; init; }
}
