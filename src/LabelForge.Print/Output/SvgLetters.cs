using System.Globalization;
using System.Security;
using System.Text;
using LabelForge.Print.Lettering;

namespace LabelForge.Print.Output;

/// <summary>The letters of an SVG: each outline stands once, in the face's own whole units, and lines of text place it (SVG 2, 5.6: <c>use</c>).</summary>
internal sealed class SvgLetters
{
    private readonly Dictionary<TypeFace, int> _faces = new(ReferenceEqualityComparer.Instance);
    private readonly SortedDictionary<(int Face, ushort Glyph), string> _outlines = [];

    /// <summary>One line of text; its words are its label, for those who hear it.</summary>
    /// <param name="text">The text.</param>
    /// <param name="x">Where its baseline begins, in points.</param>
    /// <param name="y">How far down the baseline is, in points.</param>
    /// <param name="turned">Whether it stands on its head.</param>
    /// <param name="fill">A fill attribute with a space before it; empty for black.</param>
    public string Line(MeasuredText text, double x, double y, bool turned = false, string fill = "")
    {
        var face = _faces.TryGetValue(text.Face, out var known) ? known : _faces[text.Face] = _faces.Count;
        var line = new StringBuilder();
        line.Append(CultureInfo.InvariantCulture, $"<g role=\"img\" aria-label=\"{SecurityElement.Escape(text.Text.Trim())}\"{fill} transform=\"translate({x:0.####} {y:0.####}){(turned ? " rotate(180)" : "")} scale({text.Size / text.Face.UnitsPerEm:0.########})\">");
        for (var i = 0; i < text.Shape.Glyphs.Length; i++)
        {
            var glyph = text.Shape.Glyphs[i];
            if (text.Face.Outline(glyph) is not { Length: > 0 } outline)
                continue;
            _outlines[(face, glyph)] = outline;
            line.Append(CultureInfo.InvariantCulture, $"<use href=\"#f{face}g{glyph}\" x=\"{text.Shape.Offsets[i] * text.Face.UnitsPerEm:0.##}\"/>");
        }
        return line.Append("</g>\n").ToString();
    }

    /// <summary>The outlines that the lines so far place.</summary>
    public string Outlines() =>
        _outlines.Count == 0 ? "" : $"<defs>\n{string.Concat(_outlines.Select(o => $"<path id=\"f{o.Key.Face}g{o.Key.Glyph}\" d=\"{o.Value}\"/>\n"))}</defs>\n";
}
