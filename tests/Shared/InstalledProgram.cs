namespace LabelForge.Tests.Shared;

/// <summary>Programs that tests use and that are not ours: decoders, Poppler, a browser, a server.</summary>
internal static partial class InstalledProgram
{
    /// <summary>Where a program lies, or nothing. A name that is there but is no program (an empty file, say) does not count.</summary>
    public static string? Find(string name) => (Environment.GetEnvironmentVariable("PATH") ?? "").Split(Path.PathSeparator)
        .SelectMany(folder => OperatingSystem.IsWindows() ? new[] { Path.Combine(folder, name + ".exe") } : [Path.Combine(folder, name)])
        .FirstOrDefault(IsProgram);

    /// <summary>Whether a program lies there: a file that may be run, or a link to one.</summary>
    public static bool IsProgram(string path)
    {
        // A link whose target is gone still counts as a file here.
        if (!File.Exists(path) || (File.ResolveLinkTarget(path, returnFinalTarget: true) is { } target && !target.Exists))
            return false;
        if (OperatingSystem.IsWindows())
            return true;
        return (File.GetUnixFileMode(path) & (UnixFileMode.UserExecute | UnixFileMode.GroupExecute | UnixFileMode.OtherExecute)) != 0;
    }
}
