using LabelForge.Print.Designs;
using LabelForge.Print.Drawing;
using LabelForge.Print.Lettering;

namespace LabelForge.Print.Output;

/// <summary>Writes a label's ground, symbols and art as SVG.</summary>
internal static class SvgArtWriter
{
    /// <summary>A fill where it is not black, which SVG takes without saying.</summary>
    public static string Fill(Colour colour) => colour == Colour.Black ? "" : $" fill=\"{colour}\"";

    public static void WriteUnder(StringBuilder svg, LabelLayout label)
    {
        var design = label.Design;
        var (width, height) = (Points.Of(design.Width), Points.Of(design.Height));
        if (design.HasGround && design.Round)
            svg.Append(CultureInfo.InvariantCulture,
                $"<ellipse cx=\"{width / 2:0.####}\" cy=\"{height / 2:0.####}\" rx=\"{width / 2:0.####}\" ry=\"{height / 2:0.####}\" fill=\"{design.Ground}\"/>\n");
        else if (design.HasGround)
            svg.Append(CultureInfo.InvariantCulture,
                $"<rect width=\"{width:0.####}\" height=\"{height:0.####}\" fill=\"{design.Ground}\"/>\n");
        foreach (var (d, index) in label.Drawings.Select((d, index) => (d, index)))
            Write(svg, d, index);
        foreach (var (i, index) in label.Images.Select((i, index) => (i, index)))
        {
            if (i.Clip is { } clip)
                svg.Append(CultureInfo.InvariantCulture,
                    $"<clipPath id=\"p{index}\"><path transform=\"translate({clip.X:0.####} {clip.Y:0.####}) scale({clip.Scale:0.######})\" d=\"{clip.Outline}\"/></clipPath>\n");
            svg.Append(CultureInfo.InvariantCulture,
                $"<image x=\"{i.X:0.####}\" y=\"{i.Y:0.####}\" width=\"{i.Width:0.####}\" height=\"{i.Height:0.####}\"{Turn(i)}{(i.Clip is null ? "" : $" clip-path=\"url(#p{index})\"")} href=\"data:image/{(i.Bytes[0] == 0x89 ? "png" : "jpeg")};base64,{Convert.ToBase64String(i.Bytes.AsSpan())}\"/>\n");
        }
        foreach (var s in label.Shapes)
            svg.Append(CultureInfo.InvariantCulture,
                $"<path transform=\"translate({s.X:0.####} {s.Y:0.####}) scale({(s.Turned ? -s.Scale : s.Scale):0.######})\" fill=\"{(s.Fill is { } f ? f.ToString() : "none")}\"{StrokeOf(s)} d=\"{s.Path}\"/>\n");
    }

    private static void Write(StringBuilder svg, PlacedDrawing drawing, int index)
    {
        if (drawing.Clip is { } clip)
            svg.Append(CultureInfo.InvariantCulture, $"<clipPath id=\"c{index}\"><path d=\"{clip}\"/></clipPath>\n");
        svg.Append(CultureInfo.InvariantCulture,
            $"<g transform=\"translate({drawing.X:0.####} {drawing.Y:0.####}) scale({(drawing.Turned ? -drawing.Scale : drawing.Scale):0.######})\"{(drawing.Clip is null ? "" : $" clip-path=\"url(#c{index})\"")}>\n");
        foreach (var p in drawing.Paths)
            svg.Append(CultureInfo.InvariantCulture,
                $"<path fill=\"{(p.Fill is { } f ? f.ToString() : "none")}\"{(p.Stroke is { } s ? StrokeOf(s, p.StrokeWidth) : "")} d=\"{p.Data}\"/>\n");
        svg.Append("</g>\n");
    }

    private static string Turn(PlacedImage i) => i.Turned
        ? Invariant($" transform=\"rotate(180 {i.X + i.Width / 2:0.####} {i.Y + i.Height / 2:0.####})\"")
        : "";

    private static string StrokeOf(PlacedShape s) => s.Stroke is { } stroke ? StrokeOf(stroke, s.StrokeWidth) : "";

    private static string StrokeOf(Colour stroke, double width) =>
        Invariant($" stroke=\"{stroke}\" stroke-width=\"{width:0.####}\" stroke-linejoin=\"round\" stroke-linecap=\"round\"");
}
