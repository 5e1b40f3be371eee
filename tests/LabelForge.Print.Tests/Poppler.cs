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

    /// <summary>The first page as a picture, in grey, without smoothing.</summary>
    public static SKBitmap Raster(string pdf, int dpi)
    {
        var name = Path.ChangeExtension(pdf, null);
        Run("pdftoppm", "-r", dpi.ToString(CultureInfo.InvariantCulture), "-gray", "-aa", "no", "-aaVector", "no", "-f", "1", "-l", "1",
            "-singlefile", "-png", pdf, name);
        return SKBitmap.Decode(name + ".png");
    }
}
