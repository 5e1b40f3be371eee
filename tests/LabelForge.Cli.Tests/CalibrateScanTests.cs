using LabelForge.Print.Output;
using LabelForge.Print.Sheets;

namespace LabelForge.Cli.Tests;

/// <summary>A printer set right from a picture of its test page.</summary>
public sealed class CalibrateScanTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("labelforge").FullName;

    public CalibrateScanTests() => CommandRun.Of("init", _folder);

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public void What_a_picture_shows_is_said_and_remembered_for_the_printer_named()
    {
        var page = Path.Combine(_folder, "page.png");
        var stock = LabelStock.Load("us-letter-10-2x4in");
        PictureFile.Write(page, CalibrationPage.Of(stock, Printer.Unknown), new DocumentInfo("Test page", DateTimeOffset.UnixEpoch), 200);
        // A fiftieth fewer dots than the picture has: a print that came out two percent too large.
        var run = CommandRun.Of("calibrate", "--scan", page, "--scan-dpi", "196", "--printer", "kitchen", "--workshop", _folder);
        Assert.Equal(0, run.ExitCode);
        Assert.Contains("us-letter-10-2x4in", run.Output);
        Assert.Contains("edges cannot be seen", run.Output);
        var remembered = PrinterFile.Load(_folder, "kitchen").Registration;
        Assert.Equal(-2.0, (double)remembered.StretchXPercent, 0.1);
        Assert.Equal(-2.0, (double)remembered.StretchYPercent, 0.1);
    }

    [Fact]
    public void A_picture_without_the_codes_is_refused_and_nothing_remembered()
    {
        var page = Path.Combine(_folder, "page.png");
        File.WriteAllText(page, "no picture");
        var run = CommandRun.Of("calibrate", "--scan", page, "--printer", "kitchen", "--workshop", _folder);
        Assert.Equal((2, ""), (run.ExitCode, run.Output));
        Assert.False(File.Exists(Path.Combine(_folder, "printers", "kitchen.yaml")));
    }

    [Fact]
    public void A_print_is_measured_on_its_scan_against_what_was_asked()
    {
        var (recipe, scan) = (Path.Combine(_folder, "recipes", "first-bar.yaml"), Path.Combine(_folder, "scan.png"));
        Assert.Equal(0, CommandRun.Of("label", recipe, "--lot", "26R25-01E", "--out", scan, "--dpi", "300").ExitCode);
        var right = CommandRun.Of("label", recipe, "--lot", "26R25-01E", "--proof", "--scan", scan, "--scan-dpi", "300");
        Assert.Equal(0, right.ExitCode);
        Assert.Contains("net-quantity", right.Output);
        // The same dots closer together: a print shrunk to nine tenths.
        var small = CommandRun.Of("label", recipe, "--lot", "26R25-01E", "--proof", "--scan", scan, "--scan-dpi", "316");
        Assert.Equal(1, small.ExitCode);
        Assert.Contains("TOO LOW", small.Output);
        Assert.Equal(2, CommandRun.Of("label", recipe, "--lot", "26R25-01E", "--scan", scan).ExitCode);
    }
}
