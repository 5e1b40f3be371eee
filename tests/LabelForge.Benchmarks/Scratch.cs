namespace LabelForge.Benchmarks;

/// <summary>A folder for what the measurements write, in memory where the machine has such a place: no disk is measured.</summary>
internal static class Scratch
{
    /// <summary>The folder; made new for each run of this program.</summary>
    public static string Folder { get; } = Make();

    /// <summary>A path in it.</summary>
    public static string Path(string name) => System.IO.Path.Combine(Folder, name);

    private static string Make()
    {
        var folder = Directory.Exists("/dev/shm")
            ? Directory.CreateDirectory($"/dev/shm/labelforge-{Environment.ProcessId}").FullName
            : Directory.CreateTempSubdirectory("labelforge-").FullName;
        AppDomain.CurrentDomain.ProcessExit += (_, _) => Directory.Delete(folder, recursive: true);
        return folder;
    }
}
