using System.Net;
using LabelForge.Checks;
using LabelForge.Print.Output;

namespace LabelForge.Print.Findings;

/// <summary>A marked page as SVG that can stand inside HTML.</summary>
internal static class FindingsSvg
{
    private const double Room = 14;

    /// <summary>The picture: frames around the places, the findings' numbers beside them; a must
    /// is framed solid, the rest dashed.</summary>
    public static string Of(MarkedPage page, CheckReport report)
    {
        var svg = new StringBuilder();
        svg.Append(CultureInfo.InvariantCulture,
            $"<svg class=\"label\" xmlns=\"http://www.w3.org/2000/svg\" width=\"{page.Width * 2:0.##}\" viewBox=\"{-Room:0} {-Room:0} {page.Width + (2 * Room):0.##} {page.Height + (2 * Room):0.##}\" role=\"img\" aria-label=\"The label with the places of {report.Findings.Length} findings\">");
        svg.Append(CultureInfo.InvariantCulture,
            $"<rect width=\"{page.Width:0.##}\" height=\"{page.Height:0.##}\" fill=\"#fff\" stroke=\"#bbb\" stroke-width=\"0.5\"/>");
        if (page.Label is { } label)
        {
            using var drawn = new MemoryStream();
            LabelFile.WriteSvg(drawn, label, "label");
            // Inside another picture it stands at its own size, in the same points.
            var text = Encoding.UTF8.GetString(drawn.ToArray());
            svg.Append(SizedInPoints(text[text.IndexOf("<svg", StringComparison.Ordinal)..], page));
        }
        foreach (var word in page.Words)
            svg.Append(CultureInfo.InvariantCulture,
                $"<text x=\"{word.X:0.##}\" y=\"{word.Y + word.Height * 0.82:0.##}\" font-size=\"{Math.Max(1, word.Height):0.##}\" font-family=\"sans-serif\" fill=\"#333\" textLength=\"{Math.Max(1, word.Width):0.##}\" lengthAdjust=\"spacingAndGlyphs\">{Safe(word.Text)}</text>");
        foreach (var place in page.Marks.GroupBy(m => (m.X, m.Y, m.Width, m.Height)))
        {
            var worst = place.Min(m => m.Severity);
            var (x, y, width, height) = place.Key;
            svg.Append(CultureInfo.InvariantCulture,
                $"<rect x=\"{x - 1:0.##}\" y=\"{y - 1:0.##}\" width=\"{width + 2:0.##}\" height=\"{height + 2:0.##}\" fill=\"{Colour(worst)}\" fill-opacity=\"0.12\" stroke=\"{Colour(worst)}\" stroke-width=\"0.7\"{(worst == Severity.Must ? "" : " stroke-dasharray=\"2 1.5\"")}/>");
        }
        foreach (var first in page.Marks.GroupBy(m => m.Number).Select(g => g.First()).GroupBy(m => (m.X, m.Y)))
            svg.Append(CultureInfo.InvariantCulture,
                $"<text x=\"{first.Key.X - 1:0.##}\" y=\"{first.Key.Y - 2:0.##}\" font-size=\"6\" font-weight=\"bold\" "
                    + $"font-family=\"sans-serif\" fill=\"{Colour(first.Min(m => m.Severity))}\" stroke=\"#fff\" stroke-width=\"1.4\" "
                    + $"paint-order=\"stroke\">{string.Join(' ', first.Select(m => m.Number))}</text>");
        return svg.Append("</svg>").ToString();
    }

    private static string SizedInPoints(string svg, MarkedPage page)
    {
        var close = svg.IndexOf('>');
        return Invariant($"<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"{page.Width:0.##}\" height=\"{page.Height:0.##}\" viewBox=\"0 0 {page.Width:0.##} {page.Height:0.##}\">{svg[(close + 1)..]}");
    }

    private static string Colour(Severity severity) => severity switch
    {
        Severity.Must => "#b00020",
        Severity.Should => "#b36b00",
        _ => "#4a6078",
    };

    private static string Safe(string text) => WebUtility.HtmlEncode(text);
}
