using System.Diagnostics;

namespace LabelForge.Cli.Tests;

/// <summary>The demo's labels read back as a stranger's scanner would: rasterised by Poppler, decoded by libdmtx.</summary>
public sealed class DemoLabelTests : IDisposable
{
    private readonly string folder = Directory.CreateTempSubdirectory("labelforge-").FullName;

    public void Dispose() => Directory.Delete(folder, recursive: true);

    [Fact]
    public void Every_example_label_carries_its_lot_in_a_barcode_that_reads_at_300_dpi()
    {
        foreach (var tool in new[] { "pdftoppm", "dmtxread" })
            Assert.SkipUnless(Has(tool), $"{tool} is not on this machine.");
        Assert.Equal(0, CommandRun.Of("demo", "--out", folder, "--on", "2026-11-25").ExitCode);
        var recipes = Directory.GetFiles(Path.Combine(folder, "workshop", "recipes")).Select(f => Path.GetFileNameWithoutExtension(f)!).ToList();
        Assert.Equal(7, recipes.Count);
        var read = recipes.Select(recipe => Decode(Path.Combine(folder, recipe, "label.pdf"))).ToList();
        // ~ is FNC1; 01 and fourteen digits the item's number under the example's prefix, 10 the lot.
        Assert.All(read, r => Assert.Matches("^~01095214070000[0-9]{2}1026R25-[0-9A-Z]{3}$", r));
        Assert.Equal(7, read.Distinct().Count());
    }

    private static string Decode(string pdf)
    {
        Run("pdftoppm", ["-r", "300", "-png", "-singlefile", pdf, pdf]);
        return Run("dmtxread", ["-N1", "-m5000", "-G126", pdf + ".png"]).Trim();
    }

    private static string Run(string tool, string[] arguments)
    {
        using var process = Process.Start(new ProcessStartInfo(tool, arguments) { RedirectStandardOutput = true, RedirectStandardError = true })!;
        var errors = process.StandardError.ReadToEndAsync();
        var output = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        _ = errors.Result;
        return output;
    }

    private static bool Has(string tool) => (Environment.GetEnvironmentVariable("PATH") ?? "")
        .Split(Path.PathSeparator).Any(folder => File.Exists(Path.Combine(folder, tool)));
}
