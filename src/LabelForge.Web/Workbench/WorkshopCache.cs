using LabelForge.Web.Editing;

namespace LabelForge.Web.Workbench;

/// <summary>The workshop as its files stand, read once and kept until one of them changes.</summary>
public sealed class WorkshopCache
{
    private readonly Lock _gate = new();
    private readonly OpenDocuments _documents;
    private (Workshop? Workshop, Problem? Problem)? _read;

    /// <summary>The workshop whose files are open.</summary>
    public WorkshopCache(OpenDocuments documents)
    {
        _documents = documents;
        documents.Changed += () =>
        {
            lock (_gate)
                _read = null;
        };
    }

    /// <summary>The workshop; null where one of its files cannot be used, and then which and why.</summary>
    public (Workshop? Workshop, Problem? Problem) Read()
    {
        lock (_gate)
        {
            if (_read is { } known)
                return known;
        }
        (Workshop?, Problem?) fresh;
        try
        {
            // The page stands on the whole workshop: one file that cannot be read is named at its head, with the way to it.
            var opened = Workshop.Open(_documents.Folder);
            fresh = opened.Unreadable.IsEmpty ? (opened, null) : (null, opened.Unreadable.Values.First());
        }
        catch (InputException e)
        {
            fresh = (null, e.Problem);
        }
        lock (_gate)
            _read = fresh;
        return fresh;
    }
}
