namespace LabelForge.Print.Lettering;

/// <summary>One line of text in one face at one size: what is drawn, and what can be measured of it.</summary>
/// <param name="Face">The face.</param>
/// <param name="Size">The type size in points.</param>
/// <param name="Shape">The glyphs.</param>
public sealed record MeasuredText(TypeFace Face, double Size, ShapedText Shape)
{
    /// <summary>The text.</summary>
    public string Text => Shape.Text;

    /// <summary>The width in points.</summary>
    public double Width => Shape.Width * Size;

    /// <summary>The height by which the law measures the text, as drawn.</summary>
    public Length LetterHeight => Points.ToLength(Face.LetterHeight(Text) * (float)Size);

    /// <summary>Text set so that its letters are this high.</summary>
    public static MeasuredText WithLetterHeight(TypeFace face, string text, Length height, double tracking = 0) =>
        new(face, face.SizeFor(text, height), face.Shape(text, tracking));

    /// <summary>Several words as one line, one space after each but the last; the words keep the widths they were broken by.</summary>
    /// <param name="face">The face of all of them.</param>
    /// <param name="size">The type size in points.</param>
    /// <param name="tracking">Space after each letter, in em.</param>
    /// <param name="spaceAfter">Whether a space follows the last word too.</param>
    public static MeasuredText OfWords(TypeFace face, double size, IReadOnlyList<string> words, double tracking, bool spaceAfter)
    {
        var space = face.Shape(" ");
        var glyphs = ImmutableArray.CreateBuilder<ushort>();
        var offsets = ImmutableArray.CreateBuilder<double>();
        double pen = 0, top = 0, bottom = 0;
        for (var i = 0; i < words.Count; i++)
        {
            var word = face.Shape(words[i], tracking);
            glyphs.AddRange(word.Glyphs);
            var start = pen;
            offsets.AddRange(word.Offsets.Select(o => start + o));
            pen += word.Width;
            (top, bottom) = (Math.Max(top, word.Top), Math.Max(bottom, word.Bottom));
            if (i == words.Count - 1 && !spaceAfter)
                break;
            glyphs.Add(space.Glyphs[0]);
            offsets.Add(pen + tracking);
            pen += SpaceWidth(face, tracking);
        }
        var text = string.Join(' ', words) + (spaceAfter ? " " : "");
        return new MeasuredText(face, size, new ShapedText(text, glyphs.ToImmutable(), offsets.ToImmutable(), pen, top, bottom));
    }

    /// <summary>The width of the space between words, in em.</summary>
    public static double SpaceWidth(TypeFace face, double tracking) => face.Shape(" ").Width + 2 * tracking;
}
