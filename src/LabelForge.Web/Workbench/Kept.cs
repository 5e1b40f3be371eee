using System.Collections.Concurrent;
using System.Text.Json;
using LabelForge.Print.Output;
using LabelForge.Web.Editing;

namespace LabelForge.Web.Workbench;

/// <summary>What was typed into a page and is no file of the workshop yet: kept beside the drafts, so that a reload or a closed lid loses nothing.</summary>
public sealed class Kept : IDisposable
{
    private readonly ConcurrentDictionary<string, JsonElement> _of;
    private readonly string _path;
    private readonly Debounce _save;

    /// <summary>What was kept for a workshop.</summary>
    public Kept(Desk desk)
    {
        _path = Path.Combine(desk.Folder, ".drafts", "typed.json");
        _of = Read(_path);
        _save = new Debounce(TimeSpan.FromMilliseconds(300), Save);
    }

    /// <summary>What was typed into a page; a fresh one where nothing was.</summary>
    public T Of<T>(string page) where T : class, new()
    {
        try
        {
            return _of.TryGetValue(page, out var kept) ? kept.Deserialize<T>() ?? new T() : new T();
        }
        catch (JsonException)
        {
            return new T();
        }
    }

    /// <summary>Keeps what was typed.</summary>
    public void Keep<T>(string page, T typed) where T : class, new()
    {
        _of[page] = JsonSerializer.SerializeToElement(typed);
        _save.Start();
    }

    /// <inheritdoc/>
    public void Dispose() => Save();

    private static ConcurrentDictionary<string, JsonElement> Read(string path)
    {
        try
        {
            return File.Exists(path) ? JsonSerializer.Deserialize<ConcurrentDictionary<string, JsonElement>>(File.ReadAllBytes(path)) ?? [] : [];
        }
        catch (Exception e) when (e is IOException or JsonException or UnauthorizedAccessException)
        {
            return [];
        }
    }

    private void Save()
    {
        if (_of.IsEmpty)
            return;
        try
        {
            Directory.CreateDirectory(Path.GetDirectoryName(_path)!);
            AtomicFile.Write(_path, stream => JsonSerializer.Serialize(stream, _of));
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or Measures.InputException)
        {
            // What is on the page stays on the page; the next key tries again.
        }
    }
}
