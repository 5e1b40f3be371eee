using System.Diagnostics;

namespace LabelForge.Cli.Tests;

/// <summary>Every kind that <c>lot barcode</c> writes is read back by zbar or dmtx from every kind of file.</summary>
public sealed class LotBarcodeTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("labelforge-").FullName;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    // 9521321000018: the prefix 952 is kept for examples; 614141123452 is the GS1 General Specifications' own example.
    [Theory]
    [InlineData("code128", "pdf", 300, "CODE-128:26R25-01E")]
    [InlineData("code128", "png", 600, "CODE-128:26R25-01E")]
    [InlineData("gs1-128", "png", 300, "CODE-128:010952132100001811261125172811301026R25-01E", "--gtin", "9521321000018", "--made",
        "2026-11-25", "--use-by", "2028-11-30")]
    [InlineData("gs1-128", "pdf", 600, "CODE-128:01095213210000181026R25-01E", "--gtin", "9521321000018")]
    [InlineData("datamatrix", "pdf", 300, "~010952132100001811261125172811301026R25-01E", "--gtin", "9521321000018", "--made",
        "2026-11-25", "--use-by", "2028-11-30")]
    [InlineData("datamatrix", "png", 600, "~01095213210000181026R25-01E", "--gtin", "9521321000018")]
    [InlineData("qr", "png", 300, "QR-Code:https://id.example.com/01/09521321000018/10/26R25-01E?11=261125", "--gtin", "9521321000018",
        "--made", "2026-11-25", "--link", "https://id.example.com")]
    [InlineData("qr", "pdf", 600, "QR-Code:https://id.example.com/01/09521321000018/10/26R25-01E", "--gtin", "9521321000018", "--link",
        "https://id.example.com")]
    [InlineData("ean13", "pdf", 300, "EAN-13:9521321000018", "--gtin", "9521321000018")]
    [InlineData("ean13", "png", 300, "EAN-13:9521321000018", "--gtin", "9521321000018")]
    [InlineData("upca", "png", 300, "UPC-A:614141123452", "--gtin", "614141123452")]
    [InlineData("upca", "pdf", 600, "UPC-A:614141123452", "--gtin", "614141123452")]
    public void A_written_barcode_is_read_back(string kind, string ending, int dpi, string read, params string[] more)
    {
        var file = Path.Combine(_folder, $"lot.{ending}");
        var run = CommandRun.Of(["lot", "barcode", "26R25-01E", "--kind", kind, "--dpi", $"{dpi}", "--out", file, .. more]);
        Assert.Equal((0, ""), (run.ExitCode, run.Messages));
        Assert.Equal(read, Decoded(kind, Raster(file, dpi)));
    }

    [Fact]
    public void The_SVG_holds_the_bars_and_the_text()
    {
        var file = Path.Combine(_folder, "lot.svg");
        Assert.Equal(0, CommandRun.Of("lot", "barcode", "26R25-01E", "--out", file).ExitCode);
        var svg = File.ReadAllText(file);
        Assert.Contains("aria-label=\"26R25-01E\"", svg, StringComparison.Ordinal);
        // Nine characters, start, check and stop: three bars each, and the stop's fourth.
        Assert.True(svg.Split("<rect ").Length - 2 >= 3 * 10 + 4, svg);
    }

    [Theory]
    [InlineData("gs1-128")]
    [InlineData("ean13")]
    [InlineData("ean13", "--gtin", "9521321000019")]
    [InlineData("upca", "--gtin", "9521321000018")]
    [InlineData("qr", "--gtin", "9521321000018")]
    [InlineData("code128", "--gtin", "9521321000018")]
    [InlineData("code128", "--made", "2026-11-25")]
    [InlineData("datamatrix", "--gtin", "9521321000018", "--link", "https://id.example.com")]
    [InlineData("datamatrix", "--gtin", "9521321000018", "--made", "2026-11-25", "--use-by", "2026-11-24")]
    public void What_would_not_be_in_the_barcode_is_refused(string kind, params string[] more)
    {
        var run = CommandRun.Of(["lot", "barcode", "26R25-01E", "--kind", kind, "--out", Path.Combine(_folder, "lot.png"), .. more]);
        Assert.Equal((2, ""), (run.ExitCode, run.Output));
        Assert.Single(run.Messages.Trim().Split('\n'));
        Assert.Empty(Directory.GetFiles(_folder));
    }

    private static string Raster(string file, int dpi)
    {
        if (!file.EndsWith(".pdf", StringComparison.Ordinal))
            return file;
        Run("pdftoppm", "-r", $"{dpi}", "-aa", "no", "-aaVector", "no", "-png", "-singlefile", file, file);
        return file + ".png";
    }

    private static string Decoded(string kind, string png) => kind switch
    {
        "datamatrix" => Run("dmtxread", "-N1", "-m60000", "-G126", png),
        // zbar calls UPC-A EAN-13 unless told to look for it.
        "upca" => Run("zbarimg", "-Supca.enable", "--quiet", "--nodbus", png),
        _ => Run("zbarimg", "--quiet", "--nodbus", png),
    };

    private static string Run(string tool, params string[] words)
    {
        InstalledProgram.OrSkip(tool);
        using var process = Process.Start(new ProcessStartInfo(tool, words)
        {
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        })!;
        var errors = process.StandardError.ReadToEndAsync();
        var output = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        _ = errors.Result;
        return output.TrimEnd('\n');
    }
}
