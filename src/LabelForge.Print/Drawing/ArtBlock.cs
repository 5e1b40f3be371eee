using LabelForge.Print.Designs;

namespace LabelForge.Print.Drawing;

/// <summary>A path of a drawing; a null fill or stroke is none, and ink is the label's own ink.</summary>
/// <param name="Data">Path data as SVG writes it, in the drawing's units.</param>
/// <param name="Fill">The fill, or null.</param>
/// <param name="Stroke">The stroke's colour, or null.</param>
/// <param name="StrokeWidth">In the drawing's units.</param>
/// <param name="Ink">Whether the label's ink stands for the colours given.</param>
public sealed record ArtPath(string Data, Colour? Fill, Colour? Stroke, double StrokeWidth, bool Ink = false);

/// <summary>A symbol or a maker's art: paths or one picture, and a word that stands inside.</summary>
/// <param name="UnitsWide">Its width in its own units.</param>
/// <param name="UnitsHigh">Its height in its own units.</param>
public sealed record ArtBlock(double UnitsWide, double UnitsHigh)
{
    /// <summary>Its paths, in painting order.</summary>
    public ImmutableArray<ArtPath> Paths { get; init; } = [];

    /// <summary>PNG or JPEG bytes; none for a drawing of paths.</summary>
    public ImmutableArray<byte> Image { get; init; } = [];

    /// <summary>A word that stands inside, or null.</summary>
    public string? Inside { get; init; }
}
