using LabelForge.Print.Palettes;

namespace LabelForge.Print.Scans;

/// <summary>A place in a picture, in hundredths of its width and height from the top left corner.</summary>
/// <param name="X">From the left, 0 to 100.</param>
/// <param name="Y">From the top, 0 to 100.</param>
public readonly record struct PicturePlace(double X, double Y)
{
    /// <summary>The middle.</summary>
    public static PicturePlace Middle { get; } = new(50, 50);

    /// <summary>Reads <c>40,60</c>; null where the text is no place in a picture.</summary>
    public static PicturePlace? Parse(string text) =>
        text.Replace("%", "", StringComparison.Ordinal).Split(',') is [var x, var y]
            && Hundredths(x) is { } across
            && Hundredths(y) is { } down ? new PicturePlace(across, down) : null;

    private static double? Hundredths(string text) =>
        double.TryParse(text.Trim(), NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var value)
            && value is >= 0 and <= 100 ? value : null;
}

/// <summary>
/// The colour of a thing in a photo. A camera shows it in the light of the room: with a white sheet in the same light, that light is
/// divided out channel by channel (von Kries, "Die Gesichtsempfindungen", 1905, in the linear channels of sRGB).
/// </summary>
public static class PhotoColour
{
    // Of the width of the picture, each way from the place.
    private const double Reach = 0.06;

    // Glints and shadows: the lightest and the darkest of a surface are left out.
    private const double LeftOut = 0.2;

    // A white sheet reflects about so much. Common practice.
    private const double WhiteSheet = 0.9;

    /// <summary>The colour round a place.</summary>
    /// <param name="at">The place.</param>
    /// <param name="white">Where a white sheet lies in the same light; null to take the photo as it is.</param>
    public static Colour Of(ColourPicture photo, PicturePlace at, PicturePlace? white = null)
    {
        var (r, g, b) = Around(photo, at);
        if (white is { } sheet)
        {
            var (wr, wg, wb) = Around(photo, sheet);
            (r, g, b) = (r / Math.Max(wr, 0.01) * WhiteSheet, g / Math.Max(wg, 0.01) * WhiteSheet, b / Math.Max(wb, 0.01) * WhiteSheet);
        }
        return Oklch.FromLinear(r, g, b);
    }

    private static (double R, double G, double B) Around(ColourPicture photo, PicturePlace at)
    {
        var reach = Math.Max(1, (int)(Math.Min(photo.Width, photo.Height) * Reach));
        var (x, y) = ((int)(at.X / 100 * (photo.Width - 1)), (int)(at.Y / 100 * (photo.Height - 1)));
        var seen = new List<(double R, double G, double B)>();
        for (var row = Math.Max(0, y - reach); row <= Math.Min(photo.Height - 1, y + reach); row++)
        {
            for (var column = Math.Max(0, x - reach); column <= Math.Min(photo.Width - 1, x + reach); column++)
            {
                var dot = photo.At(column, row);
                seen.Add((Colour.Linear(dot.Red), Colour.Linear(dot.Green), Colour.Linear(dot.Blue)));
            }
        }
        var kept = seen.OrderBy(c => 0.2126 * c.R + 0.7152 * c.G + 0.0722 * c.B).Skip((int)(seen.Count * LeftOut))
            .Take(Math.Max(1, (int)(seen.Count * (1 - 2 * LeftOut)))).ToList();
        return (kept.Average(c => c.R), kept.Average(c => c.G), kept.Average(c => c.B));
    }
}
