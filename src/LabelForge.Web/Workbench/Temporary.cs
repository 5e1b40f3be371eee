namespace LabelForge.Web.Workbench;

/// <summary>What the libraries write to a file, for the page to keep in memory.</summary>
internal static class Temporary
{
    /// <summary>The bytes that were written; the file itself is gone afterwards.</summary>
    /// <param name="ending">The file's ending, with its full stop.</param>
    /// <param name="write">Writes the file of a path.</param>
    public static byte[] Written(string ending, Action<string> write)
    {
        var folder = Directory.CreateTempSubdirectory("labelforge-");
        try
        {
            var path = Path.Combine(folder.FullName, "paper" + ending);
            write(path);
            return File.ReadAllBytes(path);
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    /// <summary>Has something read a text as a file; the file is gone afterwards.</summary>
    /// <param name="ending">The file's ending, with its full stop.</param>
    /// <param name="text">What it holds.</param>
    /// <param name="read">Reads the file of a path.</param>
    public static T Holding<T>(string ending, string text, Func<string, T> read)
    {
        var folder = Directory.CreateTempSubdirectory("labelforge-");
        try
        {
            var path = Path.Combine(folder.FullName, "list" + ending);
            File.WriteAllText(path, text);
            return read(path);
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }
}
