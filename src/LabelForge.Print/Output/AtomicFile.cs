namespace LabelForge.Print.Output;

/// <summary>Writes a file whole or not at all: into a new file beside it, which then takes its name.</summary>
/// <remarks>Where a write throws, or the person stops the program (Ctrl-C), nothing is left behind and an older file stays.</remarks>
public static class AtomicFile
{
    /// <summary>Writes a text in UTF-8.</summary>
    /// <inheritdoc cref="Write(string, Action{Stream})"/>
    public static void Write(string path, string text) => Write(path, stream => stream.Write(Encoding.UTF8.GetBytes(text)));

    /// <summary>Writes a file.</summary>
    /// <param name="path">Where. Its folder is not made: a slip in the name would go unseen.</param>
    /// <param name="write">Writes the content.</param>
    /// <exception cref="InputException">The folder is not there or may not be written, or the path is a folder.</exception>
    public static void Write(string path, Action<Stream> write)
    {
        var full = Path.GetFullPath(path);
        var folder = Path.GetDirectoryName(full);
        if (folder is null || Directory.Exists(full))
            throw new InputException(path, 0, "output.folder");
        if (!Directory.Exists(folder))
            throw new InputException(path, 0, "output.no-folder", ("folder", folder));
        var beside = Path.Combine(folder, $".{Path.GetFileName(full)}.{Guid.NewGuid():N}.part");
        using var unfinished = UnfinishedFiles.Add(beside);
        try
        {
            using (var stream = new FileStream(beside, FileMode.CreateNew, FileAccess.Write, FileShare.Delete))
            {
                write(stream);
                // On the disk before it takes the name: a power cut leaves the older file or the new one, never an empty one.
                stream.Flush(flushToDisk: true);
            }
            unfinished.Finish(() => File.Move(beside, full, overwrite: true));
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw new InputException(path, 0, "output.not-written", ("message", e.Message));
        }
    }
}
