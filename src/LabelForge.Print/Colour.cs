namespace LabelForge.Print;

/// <summary>A colour of ink or ground, as sRGB.</summary>
public readonly record struct Colour(byte Red, byte Green, byte Blue)
{
    /// <summary>Black: the default value.</summary>
    public static Colour Black { get; } = new(0, 0, 0);

    /// <summary>White: the paper.</summary>
    public static Colour White { get; } = new(255, 255, 255);

    /// <summary>The relative luminance: 0.2126 R + 0.7152 G + 0.0722 B of the linear values (WCAG 2.2, "relative luminance").</summary>
    public double Luminance => 0.2126 * Linear(Red) + 0.7152 * Linear(Green) + 0.0722 * Linear(Blue);

    /// <summary>The contrast of two colours, from 1 to 21 (WCAG 2.2, "contrast ratio").</summary>
    public static double Contrast(Colour a, Colour b) =>
        (Math.Max(a.Luminance, b.Luminance) + 0.05) / (Math.Min(a.Luminance, b.Luminance) + 0.05);

    /// <summary>
    /// The colour that this ink gives on a stock: inks of ink-jet and laser printers are transparent, so that light passes the ink, the
    /// stock and the ink again, and each channel is the product of both (the limit of the Clapper and Yule model without scattering
    /// sideways, J. Opt. Soc. Am. 43, 1953). White ink is nothing printed: the stock.
    /// </summary>
    public Colour On(Colour stock) =>
        stock == White
            ? this
            : Palettes.Oklch
                .FromLinear(Linear(Red) * Linear(stock.Red), Linear(Green) * Linear(stock.Green), Linear(Blue) * Linear(stock.Blue));

    /// <summary>Reads <c>#23292e</c>; null where the text is no colour.</summary>
    public static Colour? Parse(string text) =>
        text.Length == 7
            && text[0] == '#'
            && uint.TryParse(text.AsSpan(1), NumberStyles.AllowHexSpecifier, CultureInfo.InvariantCulture, out var rgb)
            ? new Colour((byte)(rgb >> 16), (byte)(rgb >> 8), (byte)rgb)
            : null;

    /// <inheritdoc/>
    public override string ToString() => FormattableString.Invariant($"#{Red:x2}{Green:x2}{Blue:x2}");

    /// <summary>A channel's linear value, 0 to 1 (IEC 61966-2-1).</summary>
    internal static double Linear(byte value)
    {
        var share = value / 255.0;
        return share <= 0.04045 ? share / 12.92 : Math.Pow((share + 0.055) / 1.055, 2.4);
    }
}
