
namespace LabelForge.Print.Palettes;

/// <summary>
/// A colour by lightness (0 to 1), chroma and hue (degrees) in Oklab's polar form: Ottosson, "A perceptual color space for image
/// processing" (2020), whose matrices these are. Equal steps look equal, so that palettes that differ in hue alone go together.
/// </summary>
public readonly record struct Oklch(double Lightness, double Chroma, double Hue)
{
    /// <summary>The colour of an sRGB value.</summary>
    public static Oklch Of(Colour colour)
    {
        var (lightness, a, bb) = Lab(Colour.Linear(colour.Red), Colour.Linear(colour.Green), Colour.Linear(colour.Blue));
        var hue = Math.Atan2(bb, a) * 180 / Math.PI;
        return new Oklch(lightness, Math.Sqrt(a * a + bb * bb), hue < 0 ? hue + 360 : hue);
    }

    /// <summary>How far two colours are apart in Oklab; below about 0.02 few people see it.</summary>
    public static double Distance(Colour one, Colour other)
    {
        var (l1, a1, b1) = Lab(Colour.Linear(one.Red), Colour.Linear(one.Green), Colour.Linear(one.Blue));
        var (l2, a2, b2) = Lab(Colour.Linear(other.Red), Colour.Linear(other.Green), Colour.Linear(other.Blue));
        return Math.Sqrt((l1 - l2) * (l1 - l2) + (a1 - a2) * (a1 - a2) + (b1 - b2) * (b1 - b2));
    }

    /// <summary>Oklab of linear sRGB.</summary>
    internal static (double L, double A, double B) Lab(double r, double g, double b)
    {
        var l = Math.Cbrt(0.4122214708 * r + 0.5363325363 * g + 0.0514459929 * b);
        var m = Math.Cbrt(0.2119034982 * r + 0.6806995451 * g + 0.1073969566 * b);
        var s = Math.Cbrt(0.0883024619 * r + 0.2817188376 * g + 0.6299787005 * b);
        return (0.2104542553 * l + 0.7936177850 * m - 0.0040720468 * s,
            1.9779984951 * l - 2.4285922050 * m + 0.4505937099 * s, 0.0259040371 * l + 0.7827717662 * m - 0.8086757660 * s);
    }

    /// <summary>The colour of linear sRGB, each channel 0 to 1.</summary>
    internal static Colour FromLinear(double r, double g, double b) => new(Encoded(r), Encoded(g), Encoded(b));

    /// <summary>The sRGB value; where the screen and the printer have no such colour, with as much chroma as they have.</summary>
    public Colour ToColour()
    {
        var chroma = Chroma;
        for (var i = 0; i < 60; i++)
        {
            var (r, g, b) = Linear(Lightness, chroma, Hue);
            if (Math.Min(r, Math.Min(g, b)) >= -0.0005 && Math.Max(r, Math.Max(g, b)) <= 1.0005)
                return new Colour(Encoded(r), Encoded(g), Encoded(b));
            chroma *= 0.96;
        }
        var (r0, g0, b0) = Linear(Lightness, 0, Hue);
        return new Colour(Encoded(r0), Encoded(g0), Encoded(b0));
    }

    private static (double R, double G, double B) Linear(double lightness, double chroma, double hue)
    {
        var (a, b) = (chroma * Math.Cos(hue * Math.PI / 180), chroma * Math.Sin(hue * Math.PI / 180));
        var l = Math.Pow(lightness + 0.3963377774 * a + 0.2158037573 * b, 3);
        var m = Math.Pow(lightness - 0.1055613458 * a - 0.0638541728 * b, 3);
        var s = Math.Pow(lightness - 0.0894841775 * a - 1.2914855480 * b, 3);
        return (4.0767416621 * l - 3.3077115913 * m + 0.2309699292 * s,
            -1.2684380046 * l + 2.6097574011 * m - 0.3413193965 * s,
            -0.0041960863 * l - 0.7034186147 * m + 1.7076147010 * s);
    }

    // IEC 61966-2-1.
    private static byte Encoded(double linear)
    {
        var v = Math.Clamp(linear, 0, 1);
        return (byte)Math.Round(255 * (v <= 0.0031308 ? 12.92 * v : 1.055 * Math.Pow(v, 1 / 2.4) - 0.055));
    }
}
