using System.Diagnostics;
using System.Runtime.InteropServices;

namespace LabelForge.Web.Tests;

/// <summary>The tests on a machine that has the SDK and nothing else.</summary>
public sealed class BareMachineTests
{
    [Fact]
    public async Task Without_a_browser_or_a_decoder_a_test_of_the_page_is_skipped_and_says_what_to_install()
    {
        var start = new ProcessStartInfo(Environment.ProcessPath!,
            ["-noLogo", "-noColor", "-class", "LabelForge.Web.Tests.Browsing.ManyPagesTests", "-class",
                "LabelForge.Web.Tests.Browsing.WholeJobTests"])
        {
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        };
        start.Environment["PATH"] = "";
        start.Environment["DOTNET_ROOT"] = Path.GetFullPath(Path.Combine(RuntimeEnvironment.GetRuntimeDirectory(), "..", "..", ".."));
        using var process = Process.Start(start)!;
        var errors = process.StandardError.ReadToEndAsync();
        var said = await process.StandardOutput.ReadToEndAsync();
        await process.WaitForExitAsync();
        Assert.True(process.ExitCode == 0, said + await errors);
        Assert.Matches("Errors: 0, Failed: 0, Skipped: [1-9]", said);
        Assert.Contains("apt install chromium", said);
        Assert.Contains("apt install poppler-utils", said);
    }
}
