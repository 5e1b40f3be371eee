namespace LabelForge.Web.Serving;

/// <summary>One page at a time on a workshop: a file that the page holds open for as long as it is served.</summary>
/// <remarks>
/// The hold ends with the program, however it ends; a file left behind by one that was killed stops nobody. The file is never
/// removed: between closing and removing it another page could hold it, and a third one a new file of the same name. A link in
/// its place is refused, so that a folder from elsewhere cannot have the page write into a file outside it.
/// </remarks>
public sealed class WorkshopLock : IDisposable
{
    /// <summary>The file's name in the workshop's folder.</summary>
    public const string FileName = ".labelforge-page";

    private const UnixFileMode OwnerOnly = UnixFileMode.UserRead | UnixFileMode.UserWrite;

    private readonly string _path;
    private readonly FileStream _held;
    private FileStream? _address;

    private WorkshopLock(string path, FileStream held) => (_path, _held) = (path, held);

    /// <summary>Takes hold of a workshop.</summary>
    /// <exception cref="InputException">Another page holds it, the folder cannot be written, or a
    /// link stands in the file's place.</exception>
    public static WorkshopLock Take(string folder)
    {
        var path = Path.Combine(folder, FileName);
        try
        {
            Directory.CreateDirectory(folder);
            RefuseLink(path);
            return new WorkshopLock(path, Hold(path));
        }
        catch (IOException) when (File.Exists(path))
        {
            throw new InputException("page.open-already", ("at", At(path)));
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw new InputException("page.folder-read-only", ("folder", folder), ("message", e.Message));
        }
    }

    /// <summary>Writes down where the page is, for whoever comes second. The address lets in
    /// whoever has it, so only its owner may read it.</summary>
    public void Announce(Uri address)
    {
        // The hold is on the whole file, so the address stands in one beside it. Only the page that holds the workshop touches
        // that: it takes away what was left behind (a link, not what it points to) and makes its own, which must be a new file.
        var path = AddressPath(_path);
        File.Delete(path);
        _address = new FileStream(path, Options(FileMode.CreateNew, FileShare.ReadWrite | FileShare.Delete));
        _address.Write(Encoding.UTF8.GetBytes(address.ToString()));
        _address.Flush(flushToDisk: true);
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        if (_address is not null)
        {
            _address.Dispose();
            File.Delete(AddressPath(_path));
        }
        // Last, so that nobody else can be announced before.
        _held.Dispose();
    }

    private static FileStream Hold(string path)
    {
        var held = new FileStream(path, Options(FileMode.OpenOrCreate, FileShare.None));
        try
        {
            // It may have come between the look and the opening. Nothing was written through it.
            RefuseLink(path);
            return held;
        }
        catch
        {
            held.Dispose();
            throw;
        }
    }

    private static FileStreamOptions Options(FileMode mode, FileShare share)
    {
        var options = new FileStreamOptions { Mode = mode, Access = FileAccess.ReadWrite, Share = share };
        if (!OperatingSystem.IsWindows())
            options.UnixCreateMode = OwnerOnly;
        return options;
    }

    private static void RefuseLink(string path)
    {
        if (new FileInfo(path).LinkTarget is { } target)
            throw new InputException("page.lock-is-a-link", ("target", target));
    }

    private static string AddressPath(string path) => path + "-address";

    private static string At(string path)
    {
        try
        {
            if (new FileInfo(AddressPath(path)) is not { Exists: true, LinkTarget: null } file)
                return "";
            using var reader = new StreamReader(new FileStream(file.FullName, FileMode.Open, FileAccess.Read,
                FileShare.ReadWrite | FileShare.Delete), Encoding.UTF8);
            return $", at {reader.ReadToEnd().Trim()}";
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return "";
        }
    }
}
