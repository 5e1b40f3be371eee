using LabelForge.Print.Lettering;

namespace LabelForge.Print.Drawing;

/// <summary>How dark a line is drawn.</summary>
public enum Tint
{
    /// <summary>Black.</summary>
    Black,

    /// <summary>A middle grey.</summary>
    Grey,
}

/// <summary>The outline of a rectangle, its corners perhaps rounded, or of the ellipse inside it.
/// Points from the page's top left corner, down.</summary>
public sealed record Outline(double X, double Y, double Width, double Height, double Corner, bool Ellipse, double Thickness, Tint Tint);

/// <summary>A straight line. Points from the page's top left corner, down.</summary>
public sealed record Stroke(double X1, double Y1, double X2, double Y2, double Thickness, Tint Tint);

/// <summary>A line of text. Points from the page's top left corner, down; Y is the baseline.</summary>
public sealed record PictureLine(MeasuredText Text, double X, double Y);

/// <summary>A page of outlines, lines and text: a drawing of stock, a test page.</summary>
public sealed record Picture(Length Width, Length Height)
{
    /// <summary>The outlines.</summary>
    public ImmutableArray<Outline> Outlines { get; init; } = [];

    /// <summary>The straight lines.</summary>
    public ImmutableArray<Stroke> Strokes { get; init; } = [];

    /// <summary>The lines of text.</summary>
    public ImmutableArray<PictureLine> Lines { get; init; } = [];
}
