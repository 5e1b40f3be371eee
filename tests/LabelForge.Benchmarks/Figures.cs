using System.Globalization;

namespace LabelForge.Benchmarks;

/// <summary>Measurements as people read them: three digits and a unit.</summary>
internal static class Figures
{
    public static string Time(double seconds) => seconds switch
    {
        >= 1 => Digits(seconds) + " s",
        >= 1e-3 => Digits(seconds * 1e3) + " ms",
        _ => Digits(seconds * 1e6) + " us",
    };

    public static string Bytes(double bytes) => bytes switch
    {
        >= 1e9 => Digits(bytes / 1e9) + " GB",
        >= 1e6 => Digits(bytes / 1e6) + " MB",
        _ => Digits(bytes / 1e3) + " kB",
    };

    public static string Ratio(double ratio) => Digits(ratio);

    private static string Digits(double value) =>
        value.ToString(value >= 99.95 ? "0" : value >= 9.995 ? "0.0" : "0.00", CultureInfo.InvariantCulture);
}
