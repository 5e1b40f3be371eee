using System.Collections.Concurrent;
using System.Text.Json;
using LabelForge.Print.Output;
using LabelForge.Web.Editing;

namespace LabelForge.Web.Workbench;

/// <summary>What a page keeps by name in one file beside the drafts. A file that cannot be read counts as empty, one that cannot be
/// written is tried again with the next change.</summary>
internal sealed class PageStateFile<T> : IDisposable
{
    private readonly ConcurrentDictionary<string, T> _of;
    private readonly OpenDocuments _documents;
    private readonly string _name;
    private readonly string _path;
    private readonly Debounce _save;
    private volatile bool _over;

    /// <summary>The file of a workshop.</summary>
    public PageStateFile(OpenDocuments documents, string name)
    {
        (_documents, _name) = (documents, name);
        _path = Path.Combine(documents.Folder, ".drafts", name);
        _of = Read(_path);
        _save = new Debounce(TimeSpan.FromMilliseconds(300), Save);
    }

    /// <summary>Whether something is kept under a name, and what.</summary>
    public bool TryGet(string name, out T? kept) => _of.TryGetValue(name, out kept);

    /// <summary>Keeps something; it is written a moment later.</summary>
    public void Keep(string name, T kept)
    {
        _of[name] = kept;
        if (!_over)
            _save.Start();
    }

    /// <summary>Writes it now.</summary>
    public void Save()
    {
        if (_of.IsEmpty)
            return;
        try
        {
            Directory.CreateDirectory(Path.GetDirectoryName(_path)!);
            AtomicFile.Write(_path, stream => JsonSerializer.Serialize(stream, _of));
            _documents.TellNotSaved($".drafts/{_name}", null);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or Measures.InputException)
        {
            // What is on the labels does not hang on it, and what is on the page stays there; but a reload would lose it.
            _documents.TellNotSaved($".drafts/{_name}", e.Message);
        }
    }

    /// <summary>Writes what waits to be written; nothing is written afterwards.</summary>
    public void Dispose()
    {
        _over = true;
        _save.NowAsync().GetAwaiter().GetResult();
    }

    private static ConcurrentDictionary<string, T> Read(string path)
    {
        try
        {
            return File.Exists(path) ? JsonSerializer.Deserialize<ConcurrentDictionary<string, T>>(File.ReadAllBytes(path)) ?? [] : [];
        }
        catch (Exception e) when (e is IOException or JsonException or UnauthorizedAccessException)
        {
            return [];
        }
    }
}
