using System.Security;
using LabelForge.Print.Drawing;
using LabelForge.Print.Lettering;

namespace LabelForge.Print.Output;

/// <summary>The letters of an SVG as outlines, in the face's own units; a line of text is one path, whose words are its label for
/// those who hear it.</summary>
/// <remarks>Each letter written once and placed by <c>use</c> (SVG 2, 5.6) is no smaller a file, and browsers draw it at half the
/// speed: five hundred references are five hundred trees of their own.</remarks>
internal static class SvgLetters
{
    /// <summary>A line of a label, straight, upright or round a circle.</summary>
    public static string Line(PlacedLine line, string fill)
    {
        if (line.Radius == 0)
            return Line(line.Text, line.X, line.Y, line.Turned ? 180 : line.Upright ? -90 : 0, fill);
        var scale = line.Text.Size / line.Text.Face.UnitsPerEm;
        var text = new StringBuilder();
        text.Append(CultureInfo.InvariantCulture, $"<g{Heard(line.Text)}{fill}>");
        foreach (var (index, x, y, degrees) in line.OnCircle())
        {
            if (line.Text.Face.Outline(line.Text.Shape.Glyphs[index]) is { } outline)
                text.Append(CultureInfo.InvariantCulture,
                    $"<path transform=\"translate({x:0.####} {y:0.####}) rotate({degrees:0.###}) scale({scale:0.########})\" d=\"{outline.At(0)}\"/>");
        }
        return text.Append("</g>\n").ToString();
    }

    /// <summary>One line of text.</summary>
    /// <param name="x">Where its baseline begins, in points.</param>
    /// <param name="y">How far down the baseline is, in points.</param>
    /// <param name="turn">By how many degrees it is turned about where it begins.</param>
    /// <param name="fill">A fill attribute with a space before it; empty for black.</param>
    public static string Line(MeasuredText text, double x, double y, double turn = 0, string fill = "")
    {
        var line = new StringBuilder();
        line.Append(CultureInfo.InvariantCulture,
            $"<path{Heard(text)}{fill} transform=\"translate({x:0.####} {y:0.####}){(turn == 0 ? "" : $" rotate({turn:0})")} scale({text.Size / text.Face.UnitsPerEm:0.########})\" d=\"");
        for (var i = 0; i < text.Shape.Glyphs.Length; i++)
            line.Append(text.Face.Outline(text.Shape.Glyphs[i])?.At(text.Shape.Offsets[i] * text.Face.UnitsPerEm));
        return line.Append("\"/>\n").ToString();
    }

    private static string Heard(MeasuredText text) => $" role=\"img\" aria-label=\"{SecurityElement.Escape(text.Text.Trim())}\"";
}
