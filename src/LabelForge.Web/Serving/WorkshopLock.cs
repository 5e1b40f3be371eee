using System.Text;
using LabelForge.Measures;

namespace LabelForge.Web.Serving;

/// <summary>One page at a time on a workshop: a file that the page holds open for as long as it is served.</summary>
/// <remarks>The hold ends with the program, however it ends; a file left behind by one that was killed stops nobody.</remarks>
public sealed class WorkshopLock : IDisposable
{
    /// <summary>The file's name in the workshop's folder.</summary>
    public const string FileName = ".labelforge-page";

    private readonly string _path;
    private readonly FileStream _held;

    private WorkshopLock(string path, FileStream held) => (_path, _held) = (path, held);

    /// <summary>Takes hold of a workshop.</summary>
    /// <exception cref="InputException">Another page holds it, or the folder cannot be written.</exception>
    public static WorkshopLock Take(string folder)
    {
        var path = Path.Combine(folder, FileName);
        try
        {
            Directory.CreateDirectory(folder);
            return new WorkshopLock(path, new FileStream(path, FileMode.OpenOrCreate, FileAccess.ReadWrite, FileShare.None));
        }
        catch (IOException) when (File.Exists(path))
        {
            throw new InputException(new Problem(null, 0, $"A page is open on this workshop already{At(path)}.", "Use that one, or stop it first (Ctrl-C where it was started)."));
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw new InputException(new Problem(null, 0, $"The folder {folder} cannot be written.", $"Name a folder that you may write to ({e.Message})"));
        }
    }

    /// <summary>Writes down where the page is, for whoever comes second.</summary>
    public void Announce(Uri address)
    {
        // The hold is on the whole file, so the address stands in one beside it.
        File.WriteAllText(AddressPath(_path), address.ToString(), Encoding.UTF8);
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        _held.Dispose();
        File.Delete(AddressPath(_path));
        File.Delete(_path);
    }

    private static string AddressPath(string path) => path + "-address";

    private static string At(string path)
    {
        try
        {
            return File.Exists(AddressPath(path)) ? $", at {File.ReadAllText(AddressPath(path)).Trim()}" : "";
        }
        catch (IOException)
        {
            return "";
        }
    }
}
