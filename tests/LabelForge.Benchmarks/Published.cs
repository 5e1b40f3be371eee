using System.Diagnostics;

namespace LabelForge.Benchmarks;

/// <summary>The programs as they are handed out, save that they are not one file: with their
/// runtime and compiled ahead of time, published once for all parts of a run.</summary>
internal static class Published
{
    private const string Runtime = "linux-x64";

    private static readonly Lazy<string> LazyCommand = new(() => Publish("src/LabelForge.Cli", "LabelForge.Cli", "LabelForge.Cli"));
    private static readonly Lazy<string> LazyFloor = new(() => Publish("tests/LabelForge.Benchmarks.Floor", "LabelForge.Benchmarks.Floor",
        "LabelForge.Benchmarks.Floor"));

    /// <summary>The command.</summary>
    public static string Command => LazyCommand.Value;

    /// <summary>The floor's programs.</summary>
    public static string Floor => LazyFloor.Value;

    /// <summary>The command without its profile, to make that anew from.</summary>
    public static string Unprofiled => Publish("src/LabelForge.Cli", "LabelForge.Cli", "unprofiled", "-p:StartupProfile=none");

    // Into a folder that stays, so that a second run compiles only what changed.
    private static string Publish(string project, string program, string to, params string[] also)
    {
        var folder = Path.Combine(Path.GetTempPath(), "labelforge-benchmarks", "published", to);
        Console.Error.WriteLine($"publishing {project} ...");
        using var publish = Process.Start(new ProcessStartInfo("dotnet",
            ["publish", Repository.File(project), "-c", "Release", "-r", Runtime, "--self-contained", "true", "-p:PublishReadyToRun=true",
                "-p:PublishSingleFile=false", "-o", folder, "-v", "q", "--nologo", .. also])
        { RedirectStandardOutput = true })!;
        var said = publish.StandardOutput.ReadToEnd();
        publish.WaitForExit();
        return publish.ExitCode == 0 ? Path.Combine(folder, program) : throw new InvalidOperationException(said);
    }
}
