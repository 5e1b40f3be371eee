using System.Xml;
using System.Xml.Linq;
using LabelForge.Print.Designs;
using LabelForge.Print.Drawing;
using SkiaSharp;

namespace LabelForge.Print.Jobs;

/// <summary>
/// Reads the plain part of SVG: path, rect, circle, ellipse, line, polygon, polyline and g, with fill and stroke. What could
/// reach outside the file or run (images, references, scripts, styles, entities) is refused by name.
/// </summary>
internal static class SvgArt
{
    private const int MostShapes = 5_000;
    private static readonly string[] Known = ["path", "rect", "circle", "ellipse", "line", "polygon", "polyline", "g", "svg", "title",
        "desc", "metadata", "defs"];

    public static ArtBlock Read(string path, string file)
    {
        var settings = new XmlReaderSettings
        {
            DtdProcessing = DtdProcessing.Prohibit,
            XmlResolver = null,
            MaxCharactersInDocument = 5_000_000,
        };
        try
        {
            using var reader = XmlReader.Create(path, settings);
            var root = XDocument.Load(reader).Root!;
            var box = (root.Attribute("viewBox")?.Value ?? $"0 0 {root.Attribute("width")?.Value} {root.Attribute("height")?.Value}")
                .Split([' ', ','], StringSplitOptions.RemoveEmptyEntries).Select(v => Number(v, file)).ToArray();
            if (root.Name.LocalName != "svg" || box.Length != 4 || box[2] <= 0 || box[3] <= 0)
                throw ArtFile.Refusal(file, "art.no-size");
            var shapes = Shapes(root, SKMatrix.CreateTranslation((float)-box[0], (float)-box[1]), null, null, 1, file, 0)
                .Take(MostShapes + 1).ToImmutableArray();
            return shapes.Length > MostShapes
                ? throw ArtFile.Refusal(file, "art.too-many-shapes", ("most-shapes", MostShapes))
                : new ArtBlock(box[2], box[3]) { Paths = shapes };
        }
        catch (XmlException e)
        {
            throw ArtFile.Refusal(file, "art.unreadable", ("message", e.Message));
        }
    }

    private static IEnumerable<ArtPath> Shapes(XElement at, SKMatrix outer, string? fill, string? stroke, double width, string file,
        int depth)
    {
        if (depth > 30)
            throw ArtFile.Refusal(file, "art.too-deep");
        if (!Known.Contains(at.Name.LocalName)
            || at.Attributes().Any(a => a.Name.LocalName is "href" or "style" or "class" or "filter" or "clip-path" or "mask"))
            throw ArtFile.Refusal(file, "art.element-not-read", ("local-name", at.Name.LocalName));
        if (at.Name.LocalName is "title" or "desc" or "metadata" or "defs")
            yield break;
        var matrix = outer.PreConcat(Transform(at.Attribute("transform")?.Value, file));
        (fill, stroke) = (at.Attribute("fill")?.Value ?? fill, at.Attribute("stroke")?.Value ?? stroke);
        width = at.Attribute("stroke-width") is { } w ? Number(w.Value, file) : width;
        foreach (var child in at.Elements())
            foreach (var shape in Shapes(child, matrix, fill, stroke, width, file, depth + 1))
                yield return shape;
        if (Outline(at, file) is not { } path)
            yield break;
        path.Transform(matrix);
        var scale = Math.Sqrt(Math.Abs(matrix.ScaleX * matrix.ScaleY - matrix.SkewX * matrix.SkewY));
        yield return new ArtPath(path.ToSvgPathData(), ColourOf(fill ?? "black", file), ColourOf(stroke ?? "none", file), width * scale,
            (fill ?? stroke) == "currentColor");
    }

    private static SKPath? Outline(XElement at, string file)
    {
        if (Data(at, file) is not { } data)
            return null;
        return SKPath.ParseSvgPathData(data) ?? throw ArtFile.Refusal(file, "art.element-unreadable", ("local-name", at.Name.LocalName));
    }

    // Every shape as path data.
    private static string? Data(XElement at, string file)
    {
        double N(string name) => at.Attribute(name) is { } a ? Number(a.Value, file) : 0;
        static string Oval(double x, double y, double rx, double ry) =>
            Invariant($"M{x - rx} {y}A{rx} {ry} 0 1 1 {x + rx} {y}A{rx} {ry} 0 1 1 {x - rx} {y}Z");
        return at.Name.LocalName switch
        {
            "path" => at.Attribute("d")?.Value ?? "",
            "rect" => Invariant($"M{N("x")} {N("y")}h{N("width")}v{N("height")}h{-N("width")}Z"),
            "circle" => Oval(N("cx"), N("cy"), N("r"), N("r")),
            "ellipse" => Oval(N("cx"), N("cy"), N("rx"), N("ry")),
            "line" => Invariant($"M{N("x1")} {N("y1")}L{N("x2")} {N("y2")}"),
            "polygon" => $"M{at.Attribute("points")?.Value}Z",
            "polyline" => $"M{at.Attribute("points")?.Value}",
            _ => null,
        };
    }

    private static SKMatrix Transform(string? text, string file)
    {
        var all = SKMatrix.Identity;
        foreach (var part in (text ?? "").Split(')', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries))
        {
            var open = part.IndexOf('(', StringComparison.Ordinal);
            var n = open < 0
                ? []
                : part[(open + 1)..].Split([' ', ','], StringSplitOptions.RemoveEmptyEntries).Select(v => (float)Number(v, file))
                    .ToArray();
            all = all.PreConcat((open < 0 ? part : part[..open].Trim(' ', ','), n) switch
            {
                ("translate", [var x, .. var y]) => SKMatrix.CreateTranslation(x, y.Length > 0 ? y[0] : 0),
                ("scale", [var x, .. var y]) => SKMatrix.CreateScale(x, y.Length > 0 ? y[0] : x),
                ("rotate", [var a]) => SKMatrix.CreateRotationDegrees(a),
                ("rotate", [var a, var x, var y]) => SKMatrix.CreateRotationDegrees(a, x, y),
                ("matrix", [var a, var b, var c, var d, var e, var f]) => new SKMatrix(a, c, e, b, d, f, 0, 0, 1),
                _ => throw ArtFile.Refusal(file, "art.transform-not-read", ("part", part)),
            });
        }
        return all;
    }

    private static Colour? ColourOf(string text, string file) => text switch
    {
        "none" => null,
        "black" or "currentColor" => Colour.Black,
        "white" => Colour.White,
        { Length: 4 } when text[0] == '#' => Colour.Parse($"#{text[1]}{text[1]}{text[2]}{text[2]}{text[3]}{text[3]}"),
        _ => Colour.Parse(text) ?? throw ArtFile.Refusal(file, "art.colour-not-read", ("text", text)),
    };

    private static double Number(string text, string file) =>
        double.TryParse(text.EndsWith("px", StringComparison.Ordinal) ? text[..^2] : text, NumberStyles.Float,
            CultureInfo.InvariantCulture, out var number) && Math.Abs(number) < 1e6
            ? number
            : throw ArtFile.Refusal(file, "art.not-a-number", ("text", text));
}
