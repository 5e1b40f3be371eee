namespace LabelForge.Web.Editing;

/// <summary>Tells of files that this program or another wrote, once they have come to rest.</summary>
/// <remarks>Where the system lets no folder be watched, nothing is told; what was written
/// elsewhere is then seen after the next writing here.</remarks>
internal sealed class FileWatch : IDisposable
{
    private readonly FileSystemWatcher? _watcher;

    /// <summary>Begins to watch.</summary>
    /// <param name="folder">The folder.</param>
    /// <param name="files">The files in it, by name or pattern.</param>
    /// <param name="deep">Whether folders below are watched too.</param>
    /// <param name="rest">What is told when files change; it waits for them to come to rest.</param>
    public FileWatch(string folder, string files, bool deep, Debounce rest)
    {
        try
        {
            _watcher = new FileSystemWatcher(folder, files)
            {
                IncludeSubdirectories = deep,
                NotifyFilter = NotifyFilters.FileName | NotifyFilters.LastWrite | NotifyFilters.Size,
            };
            _watcher.Changed += (_, _) => rest.Start();
            _watcher.Created += (_, _) => rest.Start();
            _watcher.Deleted += (_, _) => rest.Start();
            _watcher.Renamed += (_, _) => rest.Start();
            _watcher.EnableRaisingEvents = true;
        }
        catch (Exception e) when (e is IOException or ArgumentException or PlatformNotSupportedException)
        {
            _watcher = null;
        }
    }
    public void Dispose() => _watcher?.Dispose();
}
