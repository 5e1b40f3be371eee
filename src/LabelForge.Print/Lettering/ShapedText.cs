namespace LabelForge.Print.Lettering;

/// <summary>Text turned into glyphs with kerning, at a size of one; every length is a share of the type size (em).</summary>
/// <param name="Text">The text.</param>
/// <param name="Glyphs">The glyphs, in drawing order.</param>
/// <param name="Offsets">Where each glyph's origin stands, from the left.</param>
/// <param name="Width">The advance of the whole, letter-spacing after the last letter left out.</param>
/// <param name="Top">How far ink reaches above the baseline.</param>
/// <param name="Bottom">How far ink reaches below the baseline; zero where none does.</param>
public sealed record ShapedText(string Text, ImmutableArray<ushort> Glyphs, ImmutableArray<double> Offsets, double Width, double Top,
    double Bottom);
