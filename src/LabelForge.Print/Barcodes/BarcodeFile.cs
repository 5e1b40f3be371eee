using System.Security;
using LabelForge.Print.Drawing;
using LabelForge.Print.Lettering;
using LabelForge.Print.Output;
using SkiaSharp;

namespace LabelForge.Print.Barcodes;

/// <summary>Writes one barcode as PDF, SVG or PNG, its human-readable text beneath it.</summary>
/// <remarks>
/// Everything stands on whole printer dots, counted from the top left corner, the quiet zones and a margin around it. Print
/// or place it at its own size: scaled, its bars come to parts of dots and a printer rounds them unevenly.
/// </remarks>
public static class BarcodeFile
{
    /// <summary>The margin around the barcode with its quiet zones, so that what is set beside it
    /// does not touch: common practice.</summary>
    private const decimal MarginMm = 1m;

    // A page is whole points in the PDF. Six points are 25 dots at 300 dpi and 50 at 600, so that the page is whole dots too.
    private const double PageStep = 6;

    /// <summary>Writes the kind of file that the path's ending asks for; it is whole or it is not there.</summary>
    /// <param name="path">Where: .pdf, .svg or .png.</param>
    /// <param name="block">The barcode, drawn for the same printer.</param>
    /// <param name="text">The human-readable text, in parts that are not broken; see <see cref="BarcodeText"/>.</param>
    /// <param name="dpi">Dots to the inch of the printer, 300 or 600; a PNG has one pixel a dot.</param>
    /// <param name="info">What the document says about itself.</param>
    /// <exception cref="InputException">The ending is none of the three, or the file cannot be written.</exception>
    public static void Write(string path, InkBlock block, ImmutableArray<string> text, int dpi, DocumentInfo info)
    {
        var page = BarcodePage.Of(block, text, dpi, MarginMm);
        DrawnFile.Write(path, "A barcode",
            s => PdfFile.Write(s, info, WholeSteps(page.Width), WholeSteps(page.Height), [canvas => Paint(canvas, page)]),
            s => WriteSvg(s, page, info.Title), s => DrawnFile.WritePng(s, page.Width, page.Height, dpi, canvas => Paint(canvas, page)));
    }

    private static double WholeSteps(double points) => Math.Ceiling(points / PageStep - 1e-6) * PageStep;

    private static void Paint(SKCanvas canvas, BarcodePage page)
    {
        using var bars = new SKPaint { Color = SKColors.Black, IsAntialias = false };
        using var ink = new SKPaint { Color = SKColors.Black, IsAntialias = true };
        foreach (var bar in page.Bars)
            canvas.DrawRect(SKRect.Create((float)bar.X, (float)bar.Y, (float)bar.Width, (float)bar.Height), bars);
        foreach (var line in page.Lines)
            LabelPainter.Paint(canvas, line.Text, line.X, line.Y, ink);
    }

    private static void WriteSvg(Stream stream, BarcodePage page, string title)
    {
        var svg = new StringBuilder("<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n");
        svg.Append(CultureInfo.InvariantCulture,
            $"<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"{page.Width:0.####}pt\" height=\"{page.Height:0.####}pt\" viewBox=\"0 0 {page.Width:0.####} {page.Height:0.####}\">\n");
        svg.Append(CultureInfo.InvariantCulture, $"<title>{SecurityElement.Escape(title)}</title>\n");
        svg.Append(CultureInfo.InvariantCulture,
            $"<rect width=\"{page.Width:0.####}\" height=\"{page.Height:0.####}\" fill=\"#fff\"/>\n<g shape-rendering=\"crispEdges\">\n");
        foreach (var bar in page.Bars)
            svg.Append(CultureInfo.InvariantCulture,
                $"<rect x=\"{bar.X:0.####}\" y=\"{bar.Y:0.####}\" width=\"{bar.Width:0.####}\" height=\"{bar.Height:0.####}\"/>\n");
        svg.Append("</g>\n");
        foreach (var line in page.Lines)
            svg.Append(SvgLetters.Line(line.Text, line.X, line.Y));
        svg.Append("</svg>\n");
        stream.Write(Encoding.UTF8.GetBytes(svg.ToString()));
    }
}
