namespace LabelForge.Print.Lettering;

/// <summary>The one edge where lengths become plain points (1/72 in) for drawing, and points become lengths again.</summary>
public static class Points
{
    /// <summary>A length in points.</summary>
    public static double Of(Length length) => (double)length.Points;

    /// <summary>Millimetres in points.</summary>
    public static double OfMillimetres(decimal millimetres) => (double)(millimetres * 72m / Length.MillimetresPerInch);

    /// <summary>Points as a length, rounded down to a ten-thousandth of a millimetre; less than none counts as none.</summary>
    public static Length ToLength(double points) =>
        Length.FromMillimetres(Math.Max(0m, Math.Floor((decimal)(points * 25.4 / 72 + 1e-7) * 10_000m) / 10_000m));
}
