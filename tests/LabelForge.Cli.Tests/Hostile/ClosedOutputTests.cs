using System.Diagnostics;

namespace LabelForge.Cli.Tests.Hostile;

/// <summary>Standard output and error that are closed, full, or read by nobody.</summary>
public sealed class ClosedOutputTests
{
    [Theory]
    [InlineData("stock 2>&-", 0)]
    [InlineData("stock 2>/dev/full", 0)]
    [InlineData("declare nothing 2>&-", 2)]
    [InlineData("declare nothing 2>/dev/full", 2)]
    [InlineData("frobnicate 2>/dev/full", 2)]
    [InlineData("stock >/dev/full", 2)]
    [InlineData("--help >/dev/full", 2)]
    [InlineData("stock >&- 2>&-", 2)]
    public void Words_that_nobody_can_read_end_no_program_in_the_middle(string call, int code)
    {
        Assert.SkipUnless(OperatingSystem.IsLinux(), "/dev/full is Linux's own.");
        var program = $"dotnet '{Path.Combine(AppContext.BaseDirectory, "LabelForge.Cli.dll")}'";
        var start = new ProcessStartInfo("bash", ["-c", $"{program} {call}"])
        {
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        };
        using var process = Process.Start(start)!;
        var said = process.StandardError.ReadToEnd();
        process.WaitForExit();
        Assert.True(process.ExitCode == code, $"{process.ExitCode}: {said}");
        Assert.DoesNotContain("   at ", said);
    }
}
