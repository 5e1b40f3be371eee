using System.Security;
using LabelForge.Print.Designs;
using LabelForge.Print.Drawing;
using LabelForge.Print.Lettering;

namespace LabelForge.Print.Output;

/// <summary>Writes one label as PDF, SVG or PNG.</summary>
public static class LabelFile
{
    /// <summary>Dots to the inch of a PNG where none are asked for: a usual label printer's.</summary>
    public const int UsualDotsPerInch = 300;

    /// <summary>Writes the kind of file that the path's ending asks for.</summary>
    /// <exception cref="InputException">The ending is none of .pdf, .svg and .png, or the file cannot be written.</exception>
    public static void Write(string path, LabelLayout label, DocumentInfo info, int dotsPerInch = UsualDotsPerInch)
    {
        if (dotsPerInch is < 72 or > 2400)
            throw new InputException("output.dots", ("dots-per-inch", dotsPerInch));
        DrawnFile.Write(path, "A label", s => WritePdf(s, label, info), s => WriteSvg(s, label, info.Title),
            s => WritePng(s, label, dotsPerInch));
    }

    /// <summary>Writes several labels: one PDF with a page for each, of the label's own size.</summary>
    /// <exception cref="InputException">There are several and the path does not end in .pdf, or the file cannot be written.</exception>
    public static void Write(string path, IReadOnlyList<LabelLayout> labels, DocumentInfo info, int dotsPerInch = UsualDotsPerInch)
    {
        if (labels is [var only])
            Write(path, only, info, dotsPerInch);
        else if (Path.GetExtension(path).Equals(".pdf", StringComparison.OrdinalIgnoreCase))
            AtomicFile.Write(path, stream => WritePdf(stream, labels, info));
        else
            throw new InputException(path, 0, "output.one-label");
    }

    /// <summary>Writes a page of the label's own size.</summary>
    public static void WritePdf(Stream stream, LabelLayout label, DocumentInfo info) => WritePdf(stream, [label], info);

    private static void WritePdf(Stream stream, IReadOnlyList<LabelLayout> labels, DocumentInfo info)
    {
        var document = new FormDocument(stream, info);
        foreach (var label in labels)
        {
            using var page = document.AddPage(label.Design.Width, label.Design.Height);
            page.Place(label, 0, 0);
        }
        document.Finish();
    }

    /// <summary>Writes a picture on white.</summary>
    /// <param name="stream">Where to.</param>
    /// <param name="dotsPerInch">From 72 to 2400.</param>
    /// <exception cref="ArgumentOutOfRangeException">Too few or too many dots.</exception>
    public static void WritePng(Stream stream, LabelLayout label, int dotsPerInch = UsualDotsPerInch)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(dotsPerInch, 72);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(dotsPerInch, 2400);
        DrawnFile.WritePng(stream, Points.Of(label.Design.Width), Points.Of(label.Design.Height), dotsPerInch,
            canvas => LabelPainter.Paint(canvas, label, 0, 0));
    }

    /// <summary>Writes a small PNG of one part of a label, for a screen: a page of many labels shows sooner with these than with the
    /// outlines of all their letters.</summary>
    /// <param name="stream">Where to.</param>
    /// <param name="part">The part; null for the whole.</param>
    /// <param name="longest">How many dots its longer side gets, from 16 to 2000.</param>
    /// <exception cref="ArgumentOutOfRangeException">Too few or too many dots.</exception>
    public static void WriteSmallPng(Stream stream, LabelLayout label, DesignPanel? part, int longest)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(longest, 16);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(longest, 2000);
        var (left, top) = part is null ? (0, 0) : (Points.Of(part.X), Points.Of(part.Y));
        var (wide, high) = (Points.Of(part?.Width ?? label.Design.Width), Points.Of(part?.Height ?? label.Design.Height));
        DrawnFile.WriteScaledPng(stream, wide, high, longest / Math.Max(wide, high),
            canvas => LabelPainter.Paint(canvas, label, -left, -top));
    }

    /// <summary>Writes SVG with letters as outlines, so that it looks the same where the font is
    /// not installed; each line's text is its label.</summary>
    public static void WriteSvg(Stream stream, LabelLayout label, string title)
    {
        var (width, height) = (label.Design.Width, label.Design.Height);
        var svg = new StringBuilder();
        svg.Append("<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n");
        svg.Append(CultureInfo.InvariantCulture,
            $"<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"{width.Millimetres:0.####}mm\" height=\"{height.Millimetres:0.####}mm\" viewBox=\"0 0 {width.Points:0.####} {height.Points:0.####}\">\n");
        svg.Append(CultureInfo.InvariantCulture, $"<title>{SecurityElement.Escape(title)}</title>\n");
        SvgArtWriter.WriteUnder(svg, label);
        foreach (var bar in label.Bars)
            svg.Append(CultureInfo.InvariantCulture,
                $"<rect x=\"{bar.X:0.####}\" y=\"{bar.Y:0.####}\" width=\"{bar.Width:0.####}\" height=\"{bar.Height:0.####}\"{SvgArtWriter.Fill(bar.Ink ?? label.Design.Ink)}/>\n");
        foreach (var line in label.Lines)
            svg.Append(SvgLetters.Line(line, SvgArtWriter.Fill(line.Ink ?? label.Design.Ink)));
        svg.Append("</svg>\n");
        stream.Write(Encoding.UTF8.GetBytes(svg.ToString()));
    }
}
