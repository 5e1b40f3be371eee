using LabelForge.Web.Editing;

namespace LabelForge.Web.Workbench;

/// <summary>The workshop as its files stand, read once and kept until one of them changes.</summary>
public sealed class WorkshopCache
{
    private readonly OpenDocuments _documents;
    // A change while it is read begins another reading: what was read before the change is not kept for after it.
    private Lazy<(Workshop? Workshop, Problem? Problem)> _read;

    /// <summary>The workshop whose files are open.</summary>
    public WorkshopCache(OpenDocuments documents)
    {
        _documents = documents;
        _read = new(Opened);
        documents.Changed += () => Volatile.Write(ref _read, new(Opened));
    }

    /// <summary>The workshop; null where one of its files cannot be used, and then which and why. Those who ask while it is read wait
    /// for the one reading.</summary>
    public (Workshop? Workshop, Problem? Problem) Read()
    {
        var read = Volatile.Read(ref _read);
        try
        {
            return read.Value;
        }
        catch
        {
            // A disk that failed once is asked again.
            Interlocked.CompareExchange(ref _read, new(Opened), read);
            throw;
        }
    }

    private (Workshop? Workshop, Problem? Problem) Opened()
    {
        try
        {
            // The page stands on the whole workshop: one file that cannot be read is named at its head, with the way to it.
            var opened = Shipped.Open(_documents.Folder);
            return opened.Unreadable.IsEmpty ? (opened, null) : (null, opened.Unreadable.Values.First());
        }
        catch (InputException e)
        {
            return (null, e.Problem);
        }
    }
}
