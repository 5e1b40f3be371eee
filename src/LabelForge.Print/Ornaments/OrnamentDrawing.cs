namespace LabelForge.Print.Ornaments;

/// <summary>Which of a palette's inks a part of an ornament takes.</summary>
public enum OrnamentInk
{
    /// <summary>The ground's own colour: what stands in front covers what is behind.</summary>
    Ground,

    /// <summary>The first ink.</summary>
    First,

    /// <summary>The second ink.</summary>
    Second,
}

/// <summary>Shapes of one ink.</summary>
/// <param name="Data">Path data as SVG writes it, in millimetres from the drawing's top left corner.</param>
/// <param name="Ink">The ink.</param>
/// <param name="Stroke">The thickness of the line in millimetres; 0 for what is filled.</param>
public sealed record OrnamentPath(string Data, OrnamentInk Ink, double Stroke);

/// <summary>An ornament drawn into a box. It may reach beyond the box; whoever places it clips it.</summary>
/// <param name="Width">The box's width in millimetres.</param>
/// <param name="Height">The box's height in millimetres.</param>
/// <param name="Paths">Its parts in painting order.</param>
public sealed record OrnamentDrawing(double Width, double Height, ImmutableArray<OrnamentPath> Paths);
