using System.Diagnostics;

namespace LabelForge.Cli.Tests;

/// <summary>One run of the command as a person would run it, in a process of its own.</summary>
public sealed record CommandRun(int ExitCode, string Output, string Messages)
{
    /// <summary>Runs labelforge with these words.</summary>
    public static CommandRun Of(params string[] words)
    {
        var start = new ProcessStartInfo("dotnet") { RedirectStandardOutput = true, RedirectStandardError = true, UseShellExecute = false };
        start.ArgumentList.Add(Path.Combine(AppContext.BaseDirectory, "LabelForge.Cli.dll"));
        foreach (var word in words)
            start.ArgumentList.Add(word);
        using var process = Process.Start(start)!;
        var messages = process.StandardError.ReadToEndAsync();
        var output = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        return new CommandRun(process.ExitCode, output, messages.GetAwaiter().GetResult());
    }
}
