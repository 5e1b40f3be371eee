using LabelForge.Print.Drawing;
using SkiaSharp;

namespace LabelForge.Print.Proofs;

/// <summary>
/// A label as a printer without colour prints it: each colour as the grey of its own relative luminance (WCAG 2.2), so that contrasts
/// stay as they were measured. A driver may mix its greys otherwise; what it cannot do is tell apart colours that are alike here.
/// </summary>
public static class GreyLabel
{
    // The weights of WCAG 2.2's relative luminance, on values as they are stored: near enough for the maker's own pictures.
    private static readonly float[] Luminance =
    [
        0.2126f, 0.7152f, 0.0722f, 0, 0,
        0.2126f, 0.7152f, 0.0722f, 0, 0,
        0.2126f, 0.7152f, 0.0722f, 0, 0,
        0, 0, 0, 1, 0,
    ];

    /// <summary>The grey of the same luminance.</summary>
    public static Colour Of(Colour colour)
    {
        if (colour.Red == colour.Green && colour.Green == colour.Blue)
            return colour;
        // IEC 61966-2-1, from linear light to the value stored.
        var linear = colour.Luminance;
        var stored = linear <= 0.0031308 ? 12.92 * linear : 1.055 * Math.Pow(linear, 1 / 2.4) - 0.055;
        var grey = (byte)Math.Clamp(Math.Round(stored * 255), 0, 255);
        return new Colour(grey, grey, grey);
    }

    /// <summary>The label in greys.</summary>
    public static LabelLayout Of(LabelLayout label) =>
        label.Recoloured(Of) with { Images = [.. label.Images.Select(i => i with { Bytes = InGrey(i.Bytes) })] };

    /// <summary>Whether anything on the label is printed in a colour that is not a grey.</summary>
    public static bool HasColour(LabelLayout label) => !label.Images.IsEmpty || Inks(label).Any(c => Of(c) != c);

    private static IEnumerable<Colour> Inks(LabelLayout label) =>
        new Colour?[] { label.Design.Ink, label.Design.HasGround ? label.Design.Ground : null }
            .Concat(label.Lines.Select(l => l.Ink)).Concat(label.Bars.Select(b => b.Ink))
            .Concat(label.Drawings.SelectMany(d => d.Paths).SelectMany(p => new[] { p.Fill, p.Stroke }))
            .Concat(label.Shapes.SelectMany(s => new[] { s.Fill, s.Stroke })).OfType<Colour>();

    private static ImmutableArray<byte> InGrey(ImmutableArray<byte> picture)
    {
        using var filter = SKColorFilter.CreateColorMatrix(Luminance);
        return Filtered(picture, filter);
    }

    /// <summary>A picture seen through a filter, as PNG.</summary>
    internal static ImmutableArray<byte> Filtered(ImmutableArray<byte> picture, SKColorFilter filter)
    {
        using var from = SKImage.FromEncodedData(picture.AsSpan());
        using var surface = SKSurface.Create(new SKImageInfo(from.Width, from.Height));
        using var paint = new SKPaint { ColorFilter = filter };
        surface.Canvas.DrawImage(from, 0, 0, new SKSamplingOptions(SKFilterMode.Nearest), paint);
        using var seen = surface.Snapshot();
        using var bytes = seen.Encode(SKEncodedImageFormat.Png, 100);
        return [.. bytes.ToArray()];
    }
}
