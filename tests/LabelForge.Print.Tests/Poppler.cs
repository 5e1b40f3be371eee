using System.Diagnostics;
using System.Globalization;
using SkiaSharp;

namespace LabelForge.Print.Tests;

/// <summary>Poppler's programs, which read PDF and had no part in writing it.</summary>
internal static class Poppler
{
    /// <summary>What a program writes; the test is skipped where the program is missing.</summary>
    public static string Run(string tool, params string[] arguments)
    {
        InstalledProgram.OrSkip(tool);
        using var process = Process.Start(new ProcessStartInfo(tool, arguments)
        {
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        })!;
        var errors = process.StandardError.ReadToEndAsync();
        var output = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        Assert.True(process.ExitCode == 0, errors.Result);
        return output;
    }

    /// <summary>The first page as a picture, in grey, without smoothing; or a part of it, in its dots.</summary>
    public static SKBitmap Raster(string pdf, int dpi, SKRectI? part = null)
    {
        var name = Path.ChangeExtension(pdf, null);
        string[] cut = part is { } p ? ["-x", Of(p.Left), "-y", Of(p.Top), "-W", Of(p.Width), "-H", Of(p.Height)] : [];
        Run("pdftoppm", ["-r", Of(dpi), .. cut, "-gray", "-aa", "no", "-aaVector", "no", "-f", "1", "-l", "1", "-singlefile", "-png", pdf,
            name]);
        return SKBitmap.Decode(name + ".png");
    }

    private static string Of(int dots) => dots.ToString(CultureInfo.InvariantCulture);
}
