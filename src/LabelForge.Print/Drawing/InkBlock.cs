namespace LabelForge.Print.Drawing;

/// <summary>A block of ink rectangles with its quiet zones, for example a barcode.</summary>
/// <param name="Width">The width of the whole block, quiet zones included.</param>
/// <param name="Height">The height of the whole block, quiet zones included.</param>
/// <param name="Bars">The rectangles of ink.</param>
/// <param name="Caption">Human-readable text to stand under the block, or null.</param>
public sealed record InkBlock(Length Width, Length Height, ImmutableArray<InkRectangle> Bars, string? Caption)
{
    /// <summary>The same block turned by a quarter to the left; scanners read it either way.</summary>
    public InkBlock Turned() => new(Height, Width,
        [.. Bars.Select(b => new InkRectangle(b.YMm, Width.Millimetres - b.XMm - b.WidthMm, b.HeightMm, b.WidthMm))], Caption);
}

/// <summary>A rectangle of ink, in millimetres from the top left corner of its block.</summary>
public readonly record struct InkRectangle(decimal XMm, decimal YMm, decimal WidthMm, decimal HeightMm);
