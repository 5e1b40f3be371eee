using System.Diagnostics;

namespace LabelForge.Benchmarks;

/// <summary>The programs as they are handed out, save that those with a runtime are not one file: compiled natively, or with
/// their runtime and ahead of time; published once for all parts of a run.</summary>
internal static class Published
{
    private const string Runtime = "linux-x64";

    private static readonly string[] WithItsRuntime = ["--self-contained", "true", "-p:PublishReadyToRun=true", "-p:PublishSingleFile=false"];

    private static readonly Lazy<string> LazyWhole = new(() => Publish("src/LabelForge.Cli", "LabelForge.Cli", "LabelForge.Cli",
        WithItsRuntime));
    private static readonly Lazy<string> LazyCommand = new(Native);
    private static readonly Lazy<string> LazyFloor = new(() => Publish("tests/LabelForge.Benchmarks.Floor", "LabelForge.Benchmarks.Floor",
        "LabelForge.Benchmarks.Floor", WithItsRuntime));

    /// <summary>The command: compiled natively, with the whole one beside it.</summary>
    public static string Command => LazyCommand.Value;

    /// <summary>The whole command, with the books and the page.</summary>
    public static string Whole => LazyWhole.Value;

    /// <summary>The floor's programs.</summary>
    public static string Floor => LazyFloor.Value;

    /// <summary>The command without its profile, to make that anew from.</summary>
    public static string Unprofiled => Publish("src/LabelForge.Cli", "LabelForge.Cli", "unprofiled",
        [.. WithItsRuntime, "-p:StartupProfile=none"]);

    private static string Native()
    {
        var command = Publish("src/LabelForge.Cli", "LabelForge.Cli", "native", "-p:Native=true");
        var beside = Path.Combine(Path.GetDirectoryName(command)!, "labelforge-books");
        File.Delete(beside);
        File.CreateSymbolicLink(beside, Whole);
        return command;
    }

    // Into a folder that stays, so that a second run compiles only what changed.
    private static string Publish(string project, string program, string to, params string[] how)
    {
        var folder = Path.Combine(Path.GetTempPath(), "labelforge-benchmarks", "published", to);
        Console.Error.WriteLine($"publishing {project} ...");
        using var publish = Process.Start(new ProcessStartInfo("dotnet",
            ["publish", Repository.File(project), "-c", "Release", "-r", Runtime, "-o", folder, "-v", "q", "--nologo", .. how])
        { RedirectStandardOutput = true })!;
        var said = publish.StandardOutput.ReadToEnd();
        publish.WaitForExit();
        return publish.ExitCode == 0 ? Path.Combine(folder, program) : throw new InvalidOperationException(said);
    }
}
