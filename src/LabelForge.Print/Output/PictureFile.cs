using System.Security;
using LabelForge.Print.Drawing;
using LabelForge.Print.Lettering;
using SkiaSharp;

namespace LabelForge.Print.Output;

/// <summary>Writes a picture as PDF, SVG or PNG.</summary>
public static class PictureFile
{
    /// <summary>Writes the kind of file that the path's ending asks for.</summary>
    /// <param name="path">Where; written whole or not at all.</param>
    /// <param name="info">Title and time.</param>
    /// <param name="dotsPerInch">Of a PNG, from 72 to 2400.</param>
    /// <exception cref="InputException">The ending is none of .pdf, .svg and .png, or the file cannot be written.</exception>
    public static void Write(string path, Picture picture, DocumentInfo info, int dotsPerInch = 150)
    {
        DrawnFile.Write(path, "A drawing", s => WritePdf(s, picture, info, default), s => WriteSvg(s, picture, info.Title),
            s => DrawnFile.WritePng(s, Points.Of(picture.Width), Points.Of(picture.Height), dotsPerInch,
                canvas => PicturePainter.Paint(canvas, picture)));
    }

    /// <summary>Writes a page of the picture's own size.</summary>
    internal static void WritePdf(Stream stream, Picture picture, DocumentInfo info, Registration registration)
    {
        var document = new FormDocument(stream, info);
        using (var page = document.AddPage(picture.Width, picture.Height))
        {
            page.Register(registration);
            page.Place(picture, 0, 0);
        }
        document.Finish();
    }

    private static void WriteSvg(Stream stream, Picture picture, string title)
    {
        var svg = new StringBuilder("<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n");
        Line(svg,
            $"<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"{picture.Width.Millimetres:0.####}mm\" height=\"{picture.Height.Millimetres:0.####}mm\" viewBox=\"0 0 {picture.Width.Points:0.####} {picture.Height.Points:0.####}\">");
        Line(svg, $"<title>{SecurityElement.Escape(title)}</title>");
        foreach (var o in picture.Outlines)
        {
            var pen = Pen(o.Thickness, o.Tint);
            if (o.Ellipse)
                Line(svg,
                    $"<ellipse cx=\"{o.X + o.Width / 2:0.####}\" cy=\"{o.Y + o.Height / 2:0.####}\" rx=\"{o.Width / 2:0.####}\" ry=\"{o.Height / 2:0.####}\" {pen}/>");
            else
                Line(svg,
                    $"<rect x=\"{o.X:0.####}\" y=\"{o.Y:0.####}\" width=\"{o.Width:0.####}\" height=\"{o.Height:0.####}\" rx=\"{o.Corner:0.####}\" {pen}/>");
        }
        foreach (var s in picture.Strokes)
            Line(svg,
                $"<line x1=\"{s.X1:0.####}\" y1=\"{s.Y1:0.####}\" x2=\"{s.X2:0.####}\" y2=\"{s.Y2:0.####}\" {Pen(s.Thickness, s.Tint)}/>");
        foreach (var line in picture.Lines)
            svg.Append(SvgLetters.Line(line.Text, line.X, line.Y));
        svg.Append("</svg>\n");
        stream.Write(Encoding.UTF8.GetBytes(svg.ToString()));
    }

    private static string Pen(double thickness, Tint tint) =>
        Invariant($"fill=\"none\" stroke=\"{(tint == Tint.Grey ? PicturePainter.GreyInHex : "black")}\" stroke-width=\"{thickness:0.####}\"");

    private static void Line(StringBuilder svg, FormattableString text) =>
        svg.Append(text.ToString(CultureInfo.InvariantCulture)).Append('\n');
}
