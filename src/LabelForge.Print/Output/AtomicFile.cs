using LabelForge.Measures;

namespace LabelForge.Print.Output;

/// <summary>Writes a file whole or not at all: into a new file beside it, which then takes its name.</summary>
public static class AtomicFile
{
    /// <summary>Writes a file.</summary>
    /// <param name="path">Where.</param>
    /// <param name="write">Writes the content; where it throws, nothing is left behind and an older file stays.</param>
    /// <exception cref="InputException">The folder is not there or may not be written.</exception>
    public static void Write(string path, Action<Stream> write)
    {
        var full = Path.GetFullPath(path);
        var beside = Path.Combine(Path.GetDirectoryName(full)!, $".{Path.GetFileName(full)}.{Guid.NewGuid():N}.part");
        try
        {
            using (var stream = new FileStream(beside, FileMode.CreateNew, FileAccess.Write))
                write(stream);
            File.Move(beside, full, overwrite: true);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw new InputException(new Problem(path, 0, "The file cannot be written.", $"Check that its folder is there and that you may write in it ({e.Message})"));
        }
        finally
        {
            File.Delete(beside);
        }
    }
}
