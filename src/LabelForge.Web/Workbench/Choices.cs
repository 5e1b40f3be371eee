using System.Collections.Concurrent;
using System.Text.Json;
using LabelForge.Print.Output;
using LabelForge.Web.Editing;

namespace LabelForge.Web.Workbench;

/// <summary>How a recipe's labels were last wanted.</summary>
public sealed record Choice(string? Market = null, string? Design = null, string? Stock = null, string? Printer = null);

/// <summary>What was chosen for each recipe's labels, kept beside the drafts, so that a reload does not forget it.</summary>
public sealed class Choices
{
    private readonly ConcurrentDictionary<string, Choice> _of;
    private readonly string _path;
    private readonly Debounce _save;

    /// <summary>The choices of a workshop.</summary>
    public Choices(Desk desk)
    {
        _path = Path.Combine(desk.Folder, ".drafts", "choices.json");
        _of = Read(_path);
        _save = new Debounce(TimeSpan.FromMilliseconds(300), Save);
    }

    /// <summary>The choice for a recipe.</summary>
    public Choice Of(string recipe) => _of.GetValueOrDefault(recipe) ?? new Choice();

    /// <summary>Keeps a choice.</summary>
    public void Keep(string recipe, Choice choice)
    {
        _of[recipe] = choice;
        _save.Start();
    }

    private static ConcurrentDictionary<string, Choice> Read(string path)
    {
        try
        {
            return File.Exists(path) ? JsonSerializer.Deserialize<ConcurrentDictionary<string, Choice>>(File.ReadAllBytes(path)) ?? [] : [];
        }
        catch (Exception e) when (e is IOException or JsonException or UnauthorizedAccessException)
        {
            return [];
        }
    }

    private void Save()
    {
        try
        {
            Directory.CreateDirectory(Path.GetDirectoryName(_path)!);
            AtomicFile.Write(_path, stream => JsonSerializer.Serialize(stream, _of));
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or Measures.InputException)
        {
            // A convenience: what is on the labels does not hang on it.
        }
    }
}
