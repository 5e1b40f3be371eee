using System.Text.Json;
using LabelForge.Web.Editing;

namespace LabelForge.Web.Workbench;

/// <summary>What was typed into a page and is no file of the workshop yet: kept beside the
/// drafts, so that a reload or a closed lid loses nothing.</summary>
public sealed class Kept(OpenDocuments documents) : IDisposable
{
    private readonly PageStateFile<JsonElement> _kept = new(documents, "typed.json");

    /// <summary>What was typed into a page; a fresh one where nothing was.</summary>
    public T Of<T>(string page) where T : class, new()
    {
        try
        {
            return _kept.TryGet(page, out var kept) ? kept.Deserialize<T>() ?? new T() : new T();
        }
        catch (JsonException)
        {
            return new T();
        }
    }

    /// <summary>Keeps what was typed.</summary>
    public void Keep<T>(string page, T typed) where T : class, new() => _kept.Keep(page, JsonSerializer.SerializeToElement(typed));

    /// <inheritdoc/>
    public void Dispose() => _kept.Dispose();
}
