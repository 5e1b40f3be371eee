using LabelForge.Print.Designs;

namespace LabelForge.Print.Drawing;

/// <summary>A path with its colours; a null fill or stroke is none.</summary>
/// <param name="Data">Path data as SVG writes it, in the drawing's units.</param>
/// <param name="Fill">The fill.</param>
/// <param name="Stroke">The stroke's colour.</param>
/// <param name="StrokeWidth">In the drawing's units.</param>
public sealed record DrawnPath(string Data, Colour? Fill, Colour? Stroke, double StrokeWidth);

/// <summary>An ornament, a frame or a plate at its place, under all letters.</summary>
/// <param name="Paths">Its paths, in painting order.</param>
/// <param name="Clip">A path that nothing is drawn outside of, in the drawing's units; null for none.</param>
/// <param name="X">Where its origin stands, points from the label's left edge; for a turned one, from which it goes left.</param>
/// <param name="Y">Where its origin stands, points from the label's top.</param>
/// <param name="Scale">Points to one unit.</param>
/// <param name="Turned">Whether it stands upside down.</param>
public sealed record PlacedDrawing(ImmutableArray<DrawnPath> Paths, string? Clip, double X, double Y, double Scale, bool Turned = false)
{
    /// <summary>What lies inside this, in points: no word of the law's may stand there unless the
    /// drawing is a plain ground for it.</summary>
    public (double Left, double Top, double Width, double Height) Box { get; init; }

    /// <summary>Whether it is a plain ground, of one colour.</summary>
    public bool IsGround { get; init; }
}
