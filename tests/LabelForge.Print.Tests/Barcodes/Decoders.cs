using System.Diagnostics;
using LabelForge.Measures;
using LabelForge.Print.Drawing;
using SkiaSharp;

namespace LabelForge.Print.Tests.Barcodes;

/// <summary>Prints a block on a page, rasterises it with Poppler and reads it with decoders that are not the encoder.</summary>
internal static class Decoders
{
    /// <summary>What zbarimg reads: kind and data, as in "EAN-13:9521321000018".</summary>
    public static string Zbar(InkBlock block, int dpi = 300, params string[] settings) =>
        Read(block, dpi, "zbarimg", png => [.. settings, "--quiet", "--nodbus", png]);

    /// <summary>What zbarimg reads in a picture.</summary>
    public static string ZbarPicture(string png) => Run("zbarimg", ["--quiet", "--nodbus", png]).TrimEnd('\n');

    /// <summary>What dmtxread reads, with ~ for FNC1; it refuses a symbol that does not begin with FNC1.</summary>
    public static string Dmtx(InkBlock block, int dpi = 300) =>
        Read(block, dpi, "dmtxread", png => ["-N1", "-m5000", "-G126", png]);

    /// <summary>What dmtxread reads on a page of one symbol, with ~ for FNC1.</summary>
    public static string DmtxPage(string pdf, int dpi = 300)
    {
        InstalledProgram.OrSkip("pdftoppm");
        InstalledProgram.OrSkip("dmtxread");
        Run("pdftoppm", ["-r", dpi.ToString(), "-png", "-singlefile", pdf, pdf]);
        try
        {
            return DmtxPicture(pdf + ".png");
        }
        finally
        {
            File.Delete(pdf + ".png");
        }
    }

    /// <summary>What dmtxread reads in a picture, with ~ for FNC1.</summary>
    public static string DmtxPicture(string png) => Run("dmtxread", ["-N1", "-m5000", "-G126", png]).TrimEnd('\n');

    /// <summary>The codewords that dmtxread finds in the symbol, decoded no further.</summary>
    public static string DmtxCodewords(InkBlock block, int dpi = 300) =>
        Read(block, dpi, "dmtxread", png => ["-N1", "-m5000", "-c", png]);

    /// <summary>The block drawn and rasterised, black and white, one pixel a dot.</summary>
    public static SKBitmap Raster(InkBlock block, int dpi)
    {
        var png = Render(block, dpi);
        try
        {
            return SKBitmap.Decode(png);
        }
        finally
        {
            File.Delete(png);
        }
    }

    private static string Read(InkBlock block, int dpi, string tool, Func<string, string[]> arguments)
    {
        InstalledProgram.OrSkip(tool);
        var png = Render(block, dpi);
        try
        {
            return Run(tool, arguments(png)).TrimEnd('\n');
        }
        finally
        {
            File.Delete(png);
        }
    }

    private static string Render(InkBlock block, int dpi)
    {
        InstalledProgram.OrSkip("pdftoppm");
        var name = Path.Combine(Path.GetTempPath(), Guid.NewGuid().ToString("N"));
        // Skia rounds a page to whole points, so the page is larger, in steps that are whole dots (6 pt = 25 dots at
        // 300 dpi), and what is read is cut to the block: a decoder sees the quiet zones that the block brings, no more.
        using (var document = SKDocument.CreatePdf(name + ".pdf"))
        {
            var canvas = document.BeginPage(Page(block.Width), Page(block.Height));
            using var ink = new SKPaint { Color = SKColors.Black, IsAntialias = false };
            foreach (var bar in block.Bars)
                canvas.DrawRect(Points(bar.XMm), Points(bar.YMm), Points(bar.WidthMm), Points(bar.HeightMm), ink);
            document.EndPage();
            document.Close();
        }

        Run("pdftoppm",
            ["-r", dpi.ToString(), "-aa", "no", "-aaVector", "no", "-x", "0", "-y", "0", "-W", Dots(block.Width, dpi), "-H",
                Dots(block.Height, dpi), "-png", "-singlefile", name + ".pdf", name]);
        File.Delete(name + ".pdf");
        return name + ".png";
    }

    private static float Page(Length side) => 6 * (float)Math.Ceiling(side.Points / 6);

    private static string Dots(Length side, int dpi) => ((int)Math.Round(side.Inches * dpi)).ToString();

    private static float Points(decimal millimetres) => (float)(millimetres * 72 / 25.4m);

    private static string Run(string tool, string[] arguments)
    {
        var start = new ProcessStartInfo(tool, arguments) { RedirectStandardOutput = true, RedirectStandardError = true };
        using var process = Process.Start(start)!;
        var errors = process.StandardError.ReadToEndAsync();
        var output = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        _ = errors.Result;
        return output;
    }
}
