using System.Diagnostics;
using System.Reflection;
using System.Text.Json;

namespace LabelForge.Cli.Tests;

/// <summary>One run of the command as a person would run it.</summary>
public sealed record CommandRun(int ExitCode, string Output, string Messages)
{
    private static readonly MethodInfo Main = Assembly.Load("LabelForge.Cli").EntryPoint!;

    /// <summary>Runs labelforge with these words through its entry point, within this process: a
    /// start of its own would take a hundred times as long.</summary>
    public static CommandRun Of(params string[] words)
    {
        var (code, output, messages) = ConsoleOfEachRun.Of(() => (int)Main.Invoke(null, [words])!);
        return new CommandRun(code, output, messages);
    }

    /// <summary>Runs labelforge, which must do what it was asked, and reads the JSON that it answers.</summary>
    public static JsonElement Json(params string[] words)
    {
        var run = Of([.. words, "--format", "json"]);
        Assert.True(run.ExitCode == 0, $"{string.Join(' ', words)}\nended with {run.ExitCode}: {run.Messages}\n{run.Output}");
        return JsonDocument.Parse(run.Output).RootElement;
    }

    /// <summary>Runs labelforge with these words in a process of its own, in a folder: what is
    /// asked of the program and not of its verbs.</summary>
    public static CommandRun OfProgram(string folder, params string[] words)
    {
        var start = new ProcessStartInfo("dotnet", [Path.Combine(AppContext.BaseDirectory, "LabelForge.Cli.dll"), .. words])
        {
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            UseShellExecute = false,
            WorkingDirectory = folder,
        };
        using var process = Process.Start(start)!;
        var messages = process.StandardError.ReadToEndAsync();
        var output = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        return new CommandRun(process.ExitCode, output, messages.GetAwaiter().GetResult());
    }
}
