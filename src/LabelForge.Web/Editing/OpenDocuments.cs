using System.Collections.Concurrent;
using LabelForge.Print.Output;
using LabelForge.Recipes.Files;

namespace LabelForge.Web.Editing;

/// <summary>The files of the workshop that are open, shared by every page that is open on it.</summary>
public sealed partial class OpenDocuments : IDisposable
{
    /// <summary>The room of materials.</summary>
    public const string Materials = "materials";

    /// <summary>The room of recipes.</summary>
    public const string Recipes = "recipes";

    /// <summary>The room of the business's own file, which has no folder.</summary>
    public const string Top = "";

    /// <summary>The id of the business's own file.</summary>
    public const string Business = "workshop";

    /// <summary>The id of the file of wages, fees and packaging, which has no folder either.</summary>
    public const string Costs = "costs";

    private readonly ConcurrentDictionary<(string Room, string Id), EditedFile> _open = [];
    private readonly ConcurrentDictionary<string, string> _notSaved = [];
    private readonly FileWatch _watcher;
    private readonly Debounce _look;

    /// <summary>The open documents of the workshop that is served.</summary>
    public OpenDocuments(ServeOptions options)
    {
        Folder = Path.GetFullPath(options.Folder);
        _look = new Debounce(TimeSpan.FromMilliseconds(150), Look);
        _watcher = new FileWatch(Folder, "*.yaml", deep: true, _look);
    }

    /// <summary>The workshop's folder.</summary>
    public string Folder { get; }

    /// <summary>Told when a file of the workshop was written, here or elsewhere.</summary>
    public event Action? Changed;

    /// <summary>What could not be written to the disk, and why: it is in the program's memory alone until it can be.</summary>
    public IReadOnlyList<(string What, string Why)> NotSaved =>
        [.. _notSaved.OrderBy(n => n.Key, StringComparer.Ordinal).Select(n => (n.Key, n.Value))];

    /// <summary>Whether the folder is a workshop already.</summary>
    public bool HasWorkshop => File.Exists(Path.Combine(Folder, "workshop.yaml"));

    /// <summary>Whether a text may be an id: letters, digits, hyphens and underscores, so that it
    /// names a file in its room and none elsewhere, on any system.</summary>
    public static bool IsId(string? id) => id is not null && IdShape().IsMatch(id) && !DeviceNames.Holds(id);

    /// <summary>Whether a room has a file of that id.</summary>
    public bool Has(string room, string id) => IsId(id) && (File.Exists(PathOf(room, id)) || File.Exists(DraftOf(room, id)));

    /// <summary>The ids in a room, in order; those too that are drafts only.</summary>
    public IReadOnlyList<string> Ids(string room) =>
    [
        .. In(Path.Combine(Folder, room), "*.yaml").Concat(In(Path.Combine(Folder, ".drafts", room), "*.draft"))
            .Where(IsId).Distinct().Order(StringComparer.Ordinal),
    ];

    /// <summary>Opens a file for editing; all who open it share it. Null where there is none.</summary>
    public EditedFile? Open(string room, string id) =>
        Has(room, id)
            ? _open.GetOrAdd((room, id),
                _ => new EditedFile(PathOf(room, id), DraftOf(room, id), text => Judge(room, id, text), Tell,
                    why => TellNotSaved(Shown(room, id), why), TimeSpan.FromMilliseconds(400), VersionsOf(room, id)))
            : null;

    /// <summary>How a file read earlier.</summary>
    public FileVersions VersionsOf(string room, string id) =>
        new(Path.Combine(Folder, ".drafts", "versions", room, IsId(id) ? id : "none"));

    /// <summary>Writes a new file.</summary>
    /// <exception cref="InputException">The id is no name for a file, or there is one already.</exception>
    public void Create(string room, string id, string text)
    {
        if (!IsId(id))
            throw new InputException("form.not-a-file-name", ("id", id));
        if (Has(room, id))
            throw new InputException("form.name-taken", ("id", id));
        if (Judge(room, id, text) is { } problem)
            throw new InputException(problem);
        var path = PathOf(room, id);
        Directory.CreateDirectory(Path.GetDirectoryName(path)!);
        AtomicFile.Write(path, text);
        Tell();
    }

    /// <summary>Takes a file out of the workshop; it is kept where <see cref="Restore"/> fetches it from.</summary>
    /// <exception cref="IOException">It cannot be moved; it is where it was then.</exception>
    public async Task<RemovedFile> RemoveAsync(string room, string id)
    {
        if (_open.TryGetValue((room, id), out var open))
            await open.SaveNowAsync();
        var removed = RemovedFile.New(Folder, room, id, DateTime.UtcNow);
        removed.Take(PathOf(room, id), DraftOf(room, id));
        _open.TryRemove((room, id), out _);
        Tell();
        return removed;
    }

    /// <summary>What was taken out of the workshop, the latest first.</summary>
    public IReadOnlyList<RemovedFile> Removed => RemovedFile.In(Folder);

    /// <summary>Puts a file back that was taken out.</summary>
    /// <exception cref="InputException">There is another one of its name by now.</exception>
    public void Restore(RemovedFile removed)
    {
        if (Has(removed.Room, removed.Id))
            throw new InputException("form.removed-name-taken", ("removed", removed.Id));
        removed.PutBack(PathOf(removed.Room, removed.Id), DraftOf(removed.Room, removed.Id));
        Tell();
    }

    /// <summary>Writes all that waits to be written.</summary>
    public async Task SaveAllAsync()
    {
        foreach (var file in _open.Values)
            await file.SaveNowAsync();
    }

    /// <inheritdoc/>
    public void Dispose() => _watcher.Dispose();

    /// <summary>Tells every page what could not be written, or that it was after all.</summary>
    internal void TellNotSaved(string what, string? why)
    {
        if (why is null ? _notSaved.TryRemove(what, out _) : why != _notSaved.GetValueOrDefault(what))
        {
            if (why is not null)
                _notSaved[what] = why;
            Tell();
        }
    }

    private static string Shown(string room, string id) => room == Top ? $"{id}.yaml" : $"{room}/{id}.yaml";

    private Problem? Judge(string room, string id, string text)
    {
        var shown = Shown(room, id);
        try
        {
            var file = YamlFile.ReadText(text, shown);
            var markets = Shipped.Markets.With(Path.Combine(Folder, "markets"));
            _ = room switch
            {
                Materials => MaterialFile.Read(id, file, markets),
                Recipes => RecipeFile.Read(id, file),
                _ when id == Costs => LabelForge.Records.Money.CostsFile.Read(file, null),
                _ => (object)LabelForge.Recipes.Business.Read(file, markets),
            };
            return null;
        }
        catch (InputException e)
        {
            return e.Problem;
        }
    }

    private void Look()
    {
        foreach (var file in _open.Values)
            file.Look();
        Tell();
    }

    private void Tell() => Changed?.Invoke();

    private static IEnumerable<string> In(string folder, string pattern) =>
        Directory.Exists(folder) ? Directory.EnumerateFiles(folder, pattern).Select(f => Path.GetFileNameWithoutExtension(f)!) : [];

    private string PathOf(string room, string id) => Path.Combine(Folder, room, id + ".yaml");

    // The ending keeps a draft from being taken for a file of the workshop, and from being watched.
    private string DraftOf(string room, string id) => Path.Combine(Folder, ".drafts", room, id + ".draft");

    [GeneratedRegex(@"^[A-Za-z0-9][A-Za-z0-9_-]{0,79}\z")]
    private static partial Regex IdShape();
}
