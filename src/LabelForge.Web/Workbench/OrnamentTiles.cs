using System.Collections.Concurrent;
using LabelForge.Print.Ornaments;
using LabelForge.Print.Palettes;

namespace LabelForge.Web.Workbench;

/// <summary>Small pictures of ornaments and frames to choose from, each drawn once.</summary>
public sealed class OrnamentTiles(TemporaryDownloads papers)
{
    // Wide, high, in millimetres.
    private const double Wide = 22;
    private const double High = 14;
    private const int HueSteps = 24;

    private readonly ConcurrentDictionary<(string Id, int Hue), byte[]> _drawn = [];

    /// <summary>The address of an ornament's picture in about this hue.</summary>
    public string Of(OrnamentFamily family, double hue) =>
        Put($"o-{family.Id}", hue, palette => Drawn(family.Draw(Wide, High, "tile"), palette.Plate.ToString(), palette));

    /// <summary>The address of a frame's picture in about this hue.</summary>
    public string Of(FrameFamily frame, double hue) =>
        Put($"f-{frame.Id}", hue, palette => Drawn(frame.Draw(Wide, High, round: false, "tile"), "#ffffff", palette));

    private string Put(string id, double hue, Func<Palette, byte[]> draw)
    {
        var step = (int)Math.Round(hue / 360 * HueSteps) % HueSteps;
        var bytes = _drawn.GetOrAdd((id, step), _ => draw(Palette.Of(step * 360.0 / HueSteps)));
        return papers.Put(bytes, "image/svg+xml", "tile.svg");
    }

    private static byte[] Drawn(OrnamentDrawing drawing, string ground, Palette palette)
    {
        var light = ground == "#ffffff";
        string Ink(OrnamentInk ink) => ink switch
        {
            OrnamentInk.First => (light ? palette.Deep : palette.PlateFirst).ToString(),
            OrnamentInk.Second => (light ? palette.Accent : palette.PlateSecond).ToString(),
            _ => ground,
        };
        var svg = new StringBuilder();
        svg.Append(CultureInfo.InvariantCulture,
            $"<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 {Wide} {High}\" width=\"{Wide}mm\" height=\"{High}mm\"><rect width=\"{Wide}\" height=\"{High}\" fill=\"{ground}\"/>");
        foreach (var path in drawing.Paths)
        {
            var paint = path.Stroke > 0
                ? string.Create(CultureInfo.InvariantCulture,
                    $"fill=\"none\" stroke=\"{Ink(path.Ink)}\" stroke-width=\"{path.Stroke:0.###}\" stroke-linecap=\"round\"")
                : $"fill=\"{Ink(path.Ink)}\"";
            svg.Append(CultureInfo.InvariantCulture, $"<path d=\"{path.Data}\" {paint}/>");
        }
        return Encoding.UTF8.GetBytes(svg.Append("</svg>").ToString());
    }
}
