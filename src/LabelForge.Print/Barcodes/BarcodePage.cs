using LabelForge.Print.Drawing;
using LabelForge.Print.Lettering;

namespace LabelForge.Print.Barcodes;

/// <summary>A barcode with its text beneath, laid out: points from the top left corner, every bar on a whole printer dot.</summary>
internal sealed record BarcodePage(double Width, double Height, ImmutableArray<PlacedBar> Bars, ImmutableArray<PlacedLine> Lines)
{
    // 2 mm figures are read at arm's length without trouble; common practice. No standard's least is below that for retail.
    private static readonly Length LetterHeight = Length.FromMillimetres(2m);

    // Text under a small square symbol may run wider than it, up to here.
    private const decimal LeastTextWidthMm = 32m;

    private const double Leading = 1.35;

    public static BarcodePage Of(InkBlock block, ImmutableArray<string> text, int dpi, decimal marginMm)
    {
        var dot = 72.0 / dpi;
        double Dots(double points) => Math.Ceiling(points / dot - 1e-6) * dot;
        var margin = Dots(Points.OfMillimetres(marginMm));
        var face = BundledFaces.Regular;
        var widest = Math.Max(Points.Of(block.Width), Points.OfMillimetres(LeastTextWidthMm));
        var lines = BarcodeText.Lines(text, line => Set(face, line).Width <= widest).Select(l => Set(face, l)).ToArray();
        var inner = Dots(lines.Select(l => l.Width).Append(Points.Of(block.Width)).Max());
        var left = margin + Math.Floor((inner - Points.Of(block.Width)) / 2 / dot) * dot;
        var bars = block.Bars.Select(b => new PlacedBar(
            left + Points.OfMillimetres(b.XMm), margin + Points.OfMillimetres(b.YMm), Points.OfMillimetres(b.WidthMm),
            Points.OfMillimetres(b.HeightMm)));
        var baseline = margin + Points.Of(block.Height) + Points.OfMillimetres(marginMm);
        var placed = ImmutableArray.CreateBuilder<PlacedLine>();
        foreach (var line in lines)
        {
            var top = placed.Count == 0 ? line.Shape.Top * line.Size : line.Size * Leading;
            baseline += top;
            placed.Add(new PlacedLine(line, margin + (inner - line.Width) / 2, baseline));
        }
        var bottom = lines.Length == 0 ? margin + Points.Of(block.Height) : baseline + lines[^1].Shape.Bottom * lines[^1].Size;
        return new BarcodePage(inner + 2 * margin, Dots(bottom) + margin, [.. bars], placed.ToImmutable());
    }

    private static MeasuredText Set(TypeFace face, string line) => MeasuredText.WithLetterHeight(face, line, LetterHeight);
}
