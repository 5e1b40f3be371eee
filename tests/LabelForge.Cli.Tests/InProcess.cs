using System.Globalization;
using System.Reflection;
using System.Text.Json;

namespace LabelForge.Cli.Tests;

/// <summary>Runs the command within this process, for a script of many calls. What it says goes through the one console there is, so that such tests are of <see cref="OneConsole"/>.</summary>
public static class InProcess
{
    /// <summary>Runs labelforge with these words.</summary>
    public static CommandRun Run(params string[] words)
    {
        var (console, error) = (Console.Out, Console.Error);
        using var output = new StringWriter(CultureInfo.InvariantCulture);
        using var messages = new StringWriter(CultureInfo.InvariantCulture);
        try
        {
            Console.SetOut(output);
            Console.SetError(messages);
            var code = (int)Assembly.Load("LabelForge.Cli").EntryPoint!.Invoke(null, [words])!;
            return new CommandRun(code, output.ToString(), messages.ToString());
        }
        finally
        {
            Console.SetOut(console);
            Console.SetError(error);
        }
    }

    /// <summary>Runs labelforge, which must do what it was asked, and reads the JSON that it answers.</summary>
    public static JsonElement Json(params string[] words)
    {
        var run = Run([.. words, "--format", "json"]);
        Assert.True(run.ExitCode == 0, $"{string.Join(' ', words)}\nended with {run.ExitCode}: {run.Messages}\n{run.Output}");
        return JsonDocument.Parse(run.Output).RootElement;
    }
}
