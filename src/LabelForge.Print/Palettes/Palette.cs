
namespace LabelForge.Print.Palettes;

/// <summary>
/// The colours of one product's label, computed from a hue. What the law wants read is set in <see cref="Ink"/> on <see cref="Paper"/>;
/// the product's name may stand on <see cref="Plate"/>. Every pair of colours is measured by WCAG 2.2: 7 to 1 for what the law wants
/// read (success criterion 1.4.6), 4.5 to 1 for the name (1.4.3).
/// </summary>
public sealed record Palette
{
    /// <summary>The least contrast of what the law wants read.</summary>
    public const double RequiredContrast = 7;

    /// <summary>The least contrast of a name set large.</summary>
    public const double DisplayContrast = 4.5;

    /// <summary>The hue, in degrees of Oklch.</summary>
    public required double Hue { get; init; }

    /// <summary>How colourful it is: 1, or less for what is muted.</summary>
    public required double Strength { get; init; }

    /// <summary>What is not printed, as the printer is told it: white, or with white ink the stock's own colour.</summary>
    public required Colour Paper { get; init; }

    /// <summary>The stock's own colour.</summary>
    public Colour Stock { get; init; } = Colour.White;

    /// <summary>Whether inks cover the stock: white is laid under them. Else they are transparent, and the stock shows through.</summary>
    public bool Covers { get; init; } = true;

    /// <summary>A colour as it is seen on the stock.</summary>
    public Colour Seen(Colour ink) => Covers ? ink : ink.On(Stock);

    /// <summary>A light ground.</summary>
    public required Colour Tint { get; init; }

    /// <summary>All small letters.</summary>
    public required Colour Ink { get; init; }

    /// <summary>Names on paper, and the first ink of an ornament on paper.</summary>
    public required Colour Deep { get; init; }

    /// <summary>The second ink of an ornament on paper; never for words.</summary>
    public required Colour Accent { get; init; }

    /// <summary>A solid ground.</summary>
    public required Colour Plate { get; init; }

    /// <summary>Letters on the plate.</summary>
    public required Colour OnPlate { get; init; }

    /// <summary>The first ink of an ornament on the plate.</summary>
    public required Colour PlateFirst { get; init; }

    /// <summary>The second ink of an ornament on the plate.</summary>
    public required Colour PlateSecond { get; init; }

    /// <summary>
    /// Whether the plate is light under dark letters: a yellow or an orange dark enough to bear white letters is no longer one.
    /// </summary>
    public bool PlateIsLight => OnPlate == Ink;

    /// <summary>Computes a palette.</summary>
    /// <param name="hue">Degrees of Oklch: about 25 red, 70 orange, 100 yellow, 145 green, 195
    /// teal, 250 blue, 305 violet, 350 rose.</param>
    /// <param name="strength">From 0 (grey) to 1.3.</param>
    /// <param name="turn">By how many degrees the accent's hue differs; null for the usual.</param>
    /// <param name="paper">The stock's colour; null for white.</param>
    /// <param name="whiteInk">Whether the printer lays white ink under what it prints. Dark stock bears nothing without it.</param>
    public static Palette Of(double hue, double strength = 1, double? turn = null, Colour? paper = null, bool whiteInk = false)
    {
        if (paper is { } tinted && tinted != Colour.White && !whiteInk && !NeedsWhite(tinted))
            return Transparent(Of(hue, strength, turn), tinted);
        var stock = paper ?? Colour.White;
        var h = (hue % 360 + 360) % 360;
        // From yellow, a turn towards red stays warm; the other way it would turn green.
        var t = turn ?? (h is > 58 and < 125 ? -32 : 42);
        // Letters are darker than dark stock can bear: there they are light, and so is all that stands on it.
        var dark = stock.Luminance < 0.18;
        var ink = dark
            ? Lightened(new Oklch(0.9, 0.02 * strength, h), stock, RequiredContrast)
            : Darkened(new Oklch(0.27, 0.055 * strength, h), stock, RequiredContrast + 1);
        var deep = dark
            ? Lightened(new Oklch(0.84, 0.085 * strength, h), stock, DisplayContrast)
            : Darkened(new Oklch(0.47, 0.105 * strength, h), stock, RequiredContrast);
        var light = h is > 30 and < 112 && !dark;
        var plate = light ? new Oklch(0.83, 0.108 * strength, h).ToColour() : dark ? new Oklch(0.86, 0.07 * strength, h).ToColour() : deep;
        var onPlate = light ? ink : dark ? Darkened(new Oklch(0.25, 0.05 * strength, h), plate, RequiredContrast) : stock;
        return new Palette
        {
            Hue = h,
            Strength = strength,
            Paper = stock,
            Stock = stock,
            Tint = dark
                ? new Oklch(Math.Min(0.42, Oklch.Of(stock).Lightness + 0.08), 0.03 * strength, h).ToColour()
                : Tinted(stock, h, strength),
            Ink = ink,
            Deep = deep,
            Accent = dark ? new Oklch(0.72, 0.12 * strength, h + t).ToColour() : new Oklch(0.68, 0.125 * strength, h + t).ToColour(),
            Plate = plate,
            OnPlate = onPlate,
            PlateFirst = light || dark
                ? new Oklch(0.5, 0.11 * strength, h - 12).ToColour()
                : new Oklch(0.835, 0.08 * strength, h).ToColour(),
            PlateSecond = light
                ? new Oklch(0.985, 0.012, h).ToColour()
                : dark
                ? new Oklch(0.62, 0.1 * strength, h + t).ToColour()
                : new Oklch(0.885, 0.085 * strength, h + t).ToColour(),
        };
    }

    /// <summary>Whether even black cannot be read on a stock as the law wants it read: it needs
    /// white ink under all that is printed.</summary>
    public static bool NeedsWhite(Colour stock) => Colour.Contrast(Colour.Black, stock) < RequiredContrast;

    // The same inks on a stock that shows through: what is read is made darker until it is read there too.
    private static Palette Transparent(Palette white, Colour stock)
    {
        Colour Read(Colour ink, Colour ground, double contrast)
        {
            var at = Oklch.Of(ink);
            while (Colour.Contrast(at.ToColour().On(stock), ground) < contrast && at.Lightness > 0)
                at = at with { Lightness = Math.Max(0, at.Lightness - 0.004), Chroma = at.Chroma * 0.99 };
            return at.ToColour();
        }
        var plate = white.PlateIsLight ? white.Plate : Read(white.Plate, stock, DisplayContrast);
        var ink = Read(white.Ink, stock, RequiredContrast);
        ink = white.PlateIsLight ? Read(ink, plate.On(stock), DisplayContrast) : ink;
        return white with
        {
            Stock = stock,
            Covers = false,
            Ink = Read(ink, white.Tint.On(stock), RequiredContrast),
            Deep = Read(white.Deep, white.Tint.On(stock), DisplayContrast) is var deep
                && Colour.Contrast(deep.On(stock), stock) < RequiredContrast
                ? Read(deep, stock, RequiredContrast)
                : Read(white.Deep, white.Tint.On(stock), DisplayContrast),
            Plate = plate,
            OnPlate = white.PlateIsLight ? Read(ink, white.Tint.On(stock), RequiredContrast) : white.OnPlate,
        };
    }

    /// <summary>The palette as a laser printer of one toner prints it, hue taken away and lightness kept.</summary>
    public Palette InGrey() => this with
    {
        Tint = Grey(Tint),
        Ink = Grey(Ink),
        Deep = Grey(Deep),
        Accent = Grey(Accent),
        Plate = Grey(Plate),
        OnPlate = Grey(OnPlate),
        PlateFirst = Grey(PlateFirst),
        PlateSecond = Grey(PlateSecond),
    };

    /// <summary>The grey of the same relative luminance.</summary>
    public static Colour Grey(Colour colour)
    {
        byte low = 0, high = 255;
        while (high - low > 1)
        {
            var middle = (byte)((low + high) / 2);
            if (new Colour(middle, middle, middle).Luminance < colour.Luminance) low = middle; else high = middle;
        }
        return Math.Abs(new Colour(low, low, low).Luminance
            - colour.Luminance) <= Math.Abs(new Colour(high, high, high).Luminance - colour.Luminance)
            ? new(low, low, low)
            : new(high, high, high);
    }

    private static Colour Tinted(Colour stock, double hue, double strength)
    {
        var of = Oklch.Of(stock);
        return new Oklch(Math.Min(0.945, of.Lightness * 0.955), 0.032 * strength, hue).ToColour();
    }

    private static Colour Darkened(Oklch from, Colour against, double contrast) => Moved(from, -0.004, against, contrast);

    private static Colour Lightened(Oklch from, Colour against, double contrast) => Moved(from, 0.004, against, contrast);

    private static Colour Moved(Oklch from, double step, Colour against, double contrast)
    {
        var at = from;
        while (Colour.Contrast(at.ToColour(), against) < contrast && at.Lightness is > 0 and < 1)
            at = at with { Lightness = at.Lightness + step, Chroma = at.Chroma * 0.998 };
        return at.ToColour();
    }
}
