using LabelForge.Print.Designs;
using LabelForge.Print.Lettering;

namespace LabelForge.Print.Drawing;

/// <summary>A line of text at its place: points from the label's top left corner, down; Y is the baseline.</summary>
/// <param name="Text">The text.</param>
/// <param name="X">Where it begins.</param>
/// <param name="Y">Its baseline.</param>
/// <param name="Role">What it says; null for lines of no label.</param>
/// <param name="Turned">Whether it runs from here to the left, upside down.</param>
public sealed record PlacedLine(MeasuredText Text, double X, double Y, Role? Role = null, bool Turned = false)
{
    /// <summary>Its ink; null for the label's own.</summary>
    public Colour? Ink { get; init; }

    /// <summary>What it stands on; null for the label's own ground.</summary>
    public Colour? Ground { get; init; }

    /// <summary>Whether it runs upwards, its baseline to the right of its letters' tops.</summary>
    public bool Upright { get; init; }

    /// <summary>
    /// The radius of the circle that its baseline runs round, in points; X and Y are then the circle's middle, and the text is
    /// centred at the top. Below zero it is centred at the bottom and reads from left to right there. 0 for a straight line.
    /// </summary>
    public double Radius { get; init; }

    /// <summary>Where each glyph of a line on a circle stands, and by how many degrees it is turned.</summary>
    public IEnumerable<(int Glyph, double X, double Y, double Degrees)> OnCircle()
    {
        var (shape, size, radius) = (Text.Shape, Text.Size, Math.Abs(Radius));
        for (var i = 0; i < shape.Glyphs.Length; i++)
        {
            var (from, to) = (shape.Offsets[i] * size, (i + 1 < shape.Offsets.Length ? shape.Offsets[i + 1] : shape.Width) * size);
            var along = ((from + to) / 2 - Text.Width / 2) / radius;
            var (cos, sin) = (Math.Cos(along), Math.Sin(along));
            // The middle of the glyph stands on the circle; its origin is half its width before that.
            yield return Radius > 0
                ? (i, X + radius * sin - (to - from) / 2 * cos, Y - radius * cos - (to - from) / 2 * sin, along * 180 / Math.PI)
                : (i, X + radius * sin - (to - from) / 2 * cos, Y + radius * cos + (to - from) / 2 * sin, -along * 180 / Math.PI);
        }
    }
}

/// <summary>A rectangle, in points from the label's top left corner, down; null is the label's own ink.</summary>
public sealed record PlacedBar(double X, double Y, double Width, double Height, Colour? Ink = null);

/// <summary>A drawing at its place: path data as SVG writes it, its units so many points each.</summary>
/// <param name="Path">The path.</param>
/// <param name="X">Where its origin stands, points from the label's left edge; for a turned one, from which it goes left.</param>
/// <param name="Y">Where its origin stands, points from the label's top.</param>
/// <param name="Scale">Points to one unit.</param>
/// <param name="Fill">The fill; null for none.</param>
/// <param name="Stroke">The stroke's colour; null for none.</param>
/// <param name="StrokeWidth">In units.</param>
/// <param name="Turned">Whether it stands upside down.</param>
public sealed record PlacedShape(string Path, double X, double Y, double Scale, Colour? Fill, Colour? Stroke, double StrokeWidth,
    bool Turned);

/// <summary>A picture of the maker's at its place, in points; PNG or JPEG bytes that were decoded once already.</summary>
public sealed record PlacedImage(ImmutableArray<byte> Bytes, double X, double Y, double Width, double Height, bool Turned)
{
    /// <summary>What is cut off of it; null where nothing is.</summary>
    public PictureClip? Clip { get; init; }
}

/// <summary>An outline outside of which a picture is not drawn.</summary>
/// <param name="Outline">Path data as SVG writes it.</param>
/// <param name="X">Where its origin stands, points from the label's left edge.</param>
/// <param name="Y">Where its origin stands, points from the label's top.</param>
/// <param name="Scale">Points to one unit.</param>
public sealed record PictureClip(string Outline, double X, double Y, double Scale);

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
public sealed record PlacedText(Role Role, string Text, Length X, Length Y, Length Width, Length Height, Length LetterHeight,
    Length RequiredFloor, string Source);

/// <summary>A label laid out and ready to draw. All that is drawn is in <see cref="Lines"/> and <see cref="Bars"/>.</summary>
public sealed record LabelLayout
{
    /// <summary>The design it was made from.</summary>
    public required LabelDesign Design { get; init; }

    /// <summary>The lines of text.</summary>
    public required ImmutableArray<PlacedLine> Lines { get; init; }

    /// <summary>Bars and rules.</summary>
    public required ImmutableArray<PlacedBar> Bars { get; init; }

    /// <summary>Plates, ornaments and frames, under all else.</summary>
    public ImmutableArray<PlacedDrawing> Drawings { get; init; } = [];

    /// <summary>Symbols and art of paths.</summary>
    public ImmutableArray<PlacedShape> Shapes { get; init; } = [];

    /// <summary>Art of pixels.</summary>
    public ImmutableArray<PlacedImage> Images { get; init; } = [];

    /// <summary>The elements of text, with the heights they would be printed in.</summary>
    public required ImmutableArray<PlacedText> Texts { get; init; }

    /// <summary>The rules that the layout was measured against, with what it measures and the margin to spare.</summary>
    public ImmutableArray<Constraint> Constraints { get; init; } = [];

    /// <summary>The roles of the elements that stand on it.</summary>
    public ImmutableHashSet<Role> Said { get; init; } = [];

    /// <summary>How far words of the front stand from where the arrangement has them, in points to the right and down; those that the
    /// look moves and that may be moved.</summary>
    public ImmutableDictionary<Role, (double X, double Y)> Moved { get; init; } = ImmutableDictionary<Role, (double X, double Y)>.Empty;

    /// <summary>What the content or the caller gave and the label does not show, in plain words.</summary>
    public required ImmutableArray<string> LeftOut { get; init; }

    /// <summary>The label in other colours; pictures of pixels stay as they are.</summary>
    internal LabelLayout Recoloured(Func<Colour, Colour> of)
    {
        Colour? Of(Colour? colour) => colour is { } known ? of(known) : null;
        return this with
        {
            Design = Design with { Ink = of(Design.Ink), Ground = of(Design.Ground) },
            Lines = [.. Lines.Select(l => l with { Ink = Of(l.Ink), Ground = Of(l.Ground) })],
            Bars = [.. Bars.Select(b => b with { Ink = Of(b.Ink) })],
            Drawings = [
                .. Drawings.Select(d => d with { Paths = [.. d.Paths.Select(p => p with { Fill = Of(p.Fill), Stroke = Of(p.Stroke) })] })],
            Shapes = [.. Shapes.Select(s => s with { Fill = Of(s.Fill), Stroke = Of(s.Stroke) })],
        };
    }

    /// <summary>The label as it is seen, for a picture of it: on its stock's own colour, which
    /// shows through inks that do not cover it. Not for printing.</summary>
    public LabelLayout OnStock()
    {
        if (Design.Stock == Colour.White)
            return this;
        var seen = Recoloured(Design.Seen);
        return seen with { Design = seen.Design with { Ground = Design.Stock, GroundIsStock = false, Bleed = default } };
    }
}
