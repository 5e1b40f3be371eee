using System.Runtime.InteropServices;

namespace LabelForge.Print.Lettering;

/// <summary>Text turned into glyphs with kerning, at a size of one; every length is a share of the type size (em).</summary>
/// <param name="Text">The text.</param>
/// <param name="Glyphs">The glyphs, in drawing order.</param>
/// <param name="Offsets">Where each glyph's origin stands, from the left.</param>
/// <param name="Width">The advance of the whole, letter-spacing after the last letter left out.</param>
/// <param name="Top">How far ink reaches above the baseline.</param>
/// <param name="Bottom">How far ink reaches below the baseline; zero where none does.</param>
public sealed record ShapedText(string Text, ImmutableArray<ushort> Glyphs, ImmutableArray<double> Offsets, double Width, double Top,
    double Bottom)
{
    /// <summary>The same text with other figures at its end, each as wide as it is by itself.</summary>
    /// <param name="figures">As many figures as stand there now.</param>
    /// <param name="face">The face it is shaped in, a glyph to each of its letters.</param>
    public ShapedText EndingIn(string figures, TypeFace face)
    {
        var (glyphs, offsets, first) = (Glyphs.ToArray(), Offsets.ToArray(), Glyphs.Length - figures.Length);
        var pen = offsets[first];
        for (var i = 0; i < figures.Length; i++)
        {
            var figure = face.Shape(Figures[figures[i] - '0']);
            (glyphs[first + i], offsets[first + i]) = (figure.Glyphs[0], pen);
            pen += figure.Width;
        }
        return this with
        {
            Text = string.Concat(Text.AsSpan(0, Text.Length - figures.Length), figures),
            Glyphs = ImmutableCollectionsMarshal.AsImmutableArray(glyphs),
            Offsets = ImmutableCollectionsMarshal.AsImmutableArray(offsets),
            Width = pen,
        };
    }

    private static readonly string[] Figures = ["0", "1", "2", "3", "4", "5", "6", "7", "8", "9"];
}
