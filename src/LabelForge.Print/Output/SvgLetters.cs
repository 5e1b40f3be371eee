using System.Security;
using LabelForge.Print.Drawing;
using LabelForge.Print.Lettering;

namespace LabelForge.Print.Output;

/// <summary>The letters of an SVG: each outline stands once, in the face's own whole units, and
/// lines of text place it (SVG 2, 5.6: <c>use</c>).</summary>
internal sealed class SvgLetters
{
    private readonly Dictionary<TypeFace, int> _faces = new(ReferenceEqualityComparer.Instance);
    private readonly SortedDictionary<(int Face, ushort Glyph), string> _outlines = [];

    /// <summary>A line of a label, straight, upright or round a circle.</summary>
    public string Line(PlacedLine line, string fill)
    {
        if (line.Radius == 0)
            return Line(line.Text, line.X, line.Y, line.Turned ? 180 : line.Upright ? -90 : 0, fill);
        var face = FaceNumber(line.Text.Face);
        var scale = line.Text.Size / line.Text.Face.UnitsPerEm;
        var text = new StringBuilder();
        text.Append(CultureInfo.InvariantCulture,
            $"<g role=\"img\" aria-label=\"{SecurityElement.Escape(line.Text.Text.Trim())}\"{fill}>");
        foreach (var (index, x, y, degrees) in line.OnCircle())
        {
            var glyph = line.Text.Shape.Glyphs[index];
            if (line.Text.Face.Outline(glyph) is not { Length: > 0 } outline)
                continue;
            _outlines[(face, glyph)] = outline;
            text.Append(CultureInfo.InvariantCulture,
                $"<use href=\"#f{face}g{glyph}\" transform=\"translate({x:0.####} {y:0.####}) rotate({degrees:0.###}) scale({scale:0.########})\"/>");
        }
        return text.Append("</g>\n").ToString();
    }

    /// <summary>One line of text; its words are its label, for those who hear it.</summary>
    /// <param name="text">The text.</param>
    /// <param name="x">Where its baseline begins, in points.</param>
    /// <param name="y">How far down the baseline is, in points.</param>
    /// <param name="turn">By how many degrees it is turned about where it begins.</param>
    /// <param name="fill">A fill attribute with a space before it; empty for black.</param>
    public string Line(MeasuredText text, double x, double y, double turn = 0, string fill = "")
    {
        var face = FaceNumber(text.Face);
        var line = new StringBuilder();
        line.Append(CultureInfo.InvariantCulture,
            $"<g role=\"img\" aria-label=\"{SecurityElement.Escape(text.Text.Trim())}\"{fill} transform=\"translate({x:0.####} {y:0.####}){(turn == 0 ? "" : $" rotate({turn:0})")} scale({text.Size / text.Face.UnitsPerEm:0.########})\">");
        for (var i = 0; i < text.Shape.Glyphs.Length; i++)
        {
            var glyph = text.Shape.Glyphs[i];
            if (text.Face.Outline(glyph) is not { Length: > 0 } outline)
                continue;
            _outlines[(face, glyph)] = outline;
            line.Append(CultureInfo.InvariantCulture,
                $"<use href=\"#f{face}g{glyph}\" x=\"{text.Shape.Offsets[i] * text.Face.UnitsPerEm:0.##}\"/>");
        }
        return line.Append("</g>\n").ToString();
    }

    private int FaceNumber(TypeFace face) => _faces.TryGetValue(face, out var known) ? known : _faces[face] = _faces.Count;

    /// <summary>The outlines that the lines so far place.</summary>
    public string Outlines() =>
        _outlines.Count == 0
            ? ""
            : $"<defs>\n{string.Concat(_outlines.Select(o => $"<path id=\"f{o.Key.Face}g{o.Key.Glyph}\" d=\"{o.Value}\"/>\n"))}</defs>\n";
}
