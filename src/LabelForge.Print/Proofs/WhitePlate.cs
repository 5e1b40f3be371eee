using LabelForge.Print.Drawing;
using SkiaSharp;

namespace LabelForge.Print.Proofs;

/// <summary>
/// What a printer with white ink lays under a label on dark or clear stock, as a plate of its own: black where white is laid, nothing
/// where the stock is to show. It stands under all that is printed and ends where that ends, without choke: how far white is drawn in
/// under its colours is the printer's affair.
/// </summary>
public static class WhitePlate
{
    // The same alpha, and no light.
    private static readonly float[] ToBlack =
    [
        0, 0, 0, 0, 0,
        0, 0, 0, 0, 0,
        0, 0, 0, 0, 0,
        0, 0, 0, 1, 0,
    ];

    /// <summary>Whether white is laid under a label: its stock has a colour of its own, and its colours cover it.</summary>
    public static bool Has(LabelLayout label) =>
        label.Design is { Look.Palette.Covers: true, Stock: var stock } && stock != Colour.White;

    /// <summary>The white plate of a label. What is drawn in the stock's own colour is not printed, and lets the stock through whatever
    /// it stands on.</summary>
    /// <exception cref="InputException">No white is laid under the label.</exception>
    public static LabelLayout Of(LabelLayout label)
    {
        if (!Has(label))
            throw new InputException("label.no-white-plate", ("design", label.Design.Id));
        var plate = label.Recoloured(c => c == label.Design.Stock ? Colour.White : Colour.Black);
        return plate with
        {
            Design = plate.Design with { Stock = Colour.White },
            Images = [.. plate.Images.Select(i => i with { Bytes = Silhouette(i.Bytes) })],
        };
    }

    private static ImmutableArray<byte> Silhouette(ImmutableArray<byte> picture)
    {
        using var filter = SKColorFilter.CreateColorMatrix(ToBlack);
        return GreyLabel.Filtered(picture, filter);
    }
}
