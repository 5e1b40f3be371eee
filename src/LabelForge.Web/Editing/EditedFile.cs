using LabelForge.Print.Output;
using LabelForge.Recipes.Files;

namespace LabelForge.Web.Editing;

/// <summary>One file of the workshop as it is being edited: saved as typed, with steps back, and
/// watched for changes from outside.</summary>
/// <remarks>
/// What can be used is written to the file itself. What cannot be used yet is kept beside it, under <c>.drafts</c>, so that the
/// command line goes on with the last good text and nothing typed is lost. Several pages may have one file open: they share this.
/// </remarks>
public sealed class EditedFile
{
    private const int MostSteps = 200;
    private static readonly TimeSpan OneStep = TimeSpan.FromSeconds(1.5);
    private static readonly TimeSpan OneBout = TimeSpan.FromMinutes(10);
    private static readonly TimeSpan UntilTriedAgain = TimeSpan.FromSeconds(5);

    private readonly Lock _gate = new();
    private readonly string _path;
    private readonly string _draft;
    private readonly Func<string, Problem?> _judge;
    private readonly Action _saved;
    private readonly Action<string?> _trouble;
    private readonly FileVersions _versions;
    private readonly Debounce _save;
    private readonly Debounce _again;
    private readonly LinkedList<string> _back = [];
    private readonly Stack<string> _forth = new();
    private string? _lastField;
    private DateTime _lastEdit;
    private DateTime? _lastWrite;

    internal EditedFile(string path, string draft, Func<string, Problem?> judge, Action saved, Action<string?> trouble, TimeSpan pause,
        FileVersions versions)
    {
        (_path, _draft, _judge, _saved, _trouble, _versions) = (path, draft, judge, saved, trouble, versions);
        _save = new Debounce(pause, Save);
        _again = new Debounce(UntilTriedAgain, Save);
        OnDisk = File.Exists(path) ? YamlFile.TextOf(path, Path.GetFileName(path)) : "";
        Text = File.Exists(draft) ? File.ReadAllText(draft) : OnDisk;
        Problem = judge(Text);
        if (Problem is null && Text != OnDisk)
            _save.Start();
    }

    /// <summary>Told after every change, from whatever thread made it.</summary>
    public event Action? Changed;

    /// <summary>The text as typed so far.</summary>
    public string Text { get; private set; }

    /// <summary>The file's text as last read or written.</summary>
    public string OnDisk { get; private set; }

    /// <summary>Why the text cannot be used yet; null where it can.</summary>
    public Problem? Problem { get; private set; }

    /// <summary>The file's text where it was changed outside while something here was not saved; null where it was not.</summary>
    public string? Outside { get; private set; }

    /// <summary>Why the text could not be written; null where it was.</summary>
    public string? SaveTrouble { get; private set; }

    /// <summary>Whether there is a step to take back.</summary>
    public bool CanUndo => _back.Count > 0;

    /// <summary>Whether a step was taken back.</summary>
    public bool CanRedo => _forth.Count > 0;

    /// <summary>Whether the file holds what is shown.</summary>
    public bool IsSaved => Text == OnDisk;

    /// <summary>Changes the text. Quick changes of one field count as one step.</summary>
    /// <param name="edit">Makes the new text of the old.</param>
    /// <param name="field">The field, or null for a step of its own.</param>
    public void Apply(Func<string, string> edit, string? field = null)
    {
        lock (_gate)
        {
            var text = edit(Text);
            if (text == Text)
                return;
            var now = DateTime.UtcNow;
            if (field is null || field != _lastField || now - _lastEdit > OneStep)
            {
                _back.AddLast(Text);
                if (_back.Count > MostSteps)
                    _back.RemoveFirst();
            }
            (_lastField, _lastEdit) = (field, now);
            _forth.Clear();
            Take(text);
        }
        Changed?.Invoke();
    }

    /// <summary>Takes the last step back.</summary>
    public void Undo() => Step(() =>
    {
        if (_back.Last is not { } last)
            return null;
        _back.RemoveLast();
        _forth.Push(Text);
        return last.Value;
    });

    /// <summary>Makes the last step that was taken back again.</summary>
    public void Redo() => Step(() =>
    {
        if (!_forth.TryPop(out var next))
            return null;
        _back.AddLast(Text);
        return next;
    });

    /// <summary>Settles a change from outside: takes the file's text, or keeps what is here and writes it over the file.</summary>
    public void Settle(bool takeOutside)
    {
        lock (_gate)
        {
            if (Outside is not { } outside)
                return;
            (Outside, OnDisk) = (null, outside);
            if (takeOutside)
            {
                _back.AddLast(Text);
                Take(outside);
            }
            else
            {
                _save.Start();
            }
        }
        Changed?.Invoke();
    }

    /// <summary>Writes what waits to be written.</summary>
    public async Task SaveNowAsync()
    {
        await _again.NowAsync();
        await _save.NowAsync();
    }

    /// <summary>Looks at the file, which may have been changed outside.</summary>
    internal void Look()
    {
        lock (_gate)
        {
            if (ReadDisk() is not { } disk || disk == OnDisk || disk == Outside)
                return;
            if (Text == OnDisk || Text == disk)
            {
                if (OnDisk.Length > 0)
                    KeepOutside();
                OnDisk = disk;
                (Text, Problem, Outside) = (disk, _judge(disk), null);
            }
            else
            {
                Outside = disk;
            }
        }
        Changed?.Invoke();
    }

    private void Step(Func<string?> step)
    {
        lock (_gate)
        {
            if (step() is not { } text)
                return;
            _lastField = null;
            Take(text);
        }
        Changed?.Invoke();
    }

    private void Take(string text)
    {
        (Text, Problem) = (text, _judge(text));
        _save.Start();
    }

    private void Save()
    {
        var written = false;
        var before = SaveTrouble;
        lock (_gate)
        {
            try
            {
                if (Outside is null && ReadDisk() is { } disk && disk != OnDisk && disk != Text)
                    Outside = disk;
                if (Problem is not null || Outside is not null)
                {
                    Directory.CreateDirectory(Path.GetDirectoryName(_draft)!);
                    Write(_draft, Text);
                }
                else
                {
                    Directory.CreateDirectory(Path.GetDirectoryName(_path)!);
                    if (Text != OnDisk)
                    {
                        KeepEarlier();
                        Write(_path, Text);
                        OnDisk = Text;
                        written = true;
                    }
                    // A workshop without drafts has no folder of them either, and to take nothing away from no folder is an error.
                    if (File.Exists(_draft))
                        File.Delete(_draft);
                }
                SaveTrouble = null;
            }
            catch (Exception e) when (e is InputException or IOException or UnauthorizedAccessException)
            {
                SaveTrouble = e.Message;
                _again.Start();
            }
        }
        if (SaveTrouble != before)
            _trouble(SaveTrouble);
        if (written)
            _saved();
        Changed?.Invoke();
    }

    // What a bout of work began with is a version; the letters typed on the way are steps, and none.
    private void KeepEarlier()
    {
        var now = DateTime.UtcNow;
        if (OnDisk.Length > 0 && (_lastWrite is not { } last || now - last > OneBout))
            _versions.Keep(OnDisk, now);
        _lastWrite = now;
    }

    // Another program wrote: what it wrote over is a version too, where it can be kept.
    private void KeepOutside()
    {
        try
        {
            KeepEarlier();
        }
        catch (Exception e) when (e is InputException or IOException or UnauthorizedAccessException)
        {
            // The other program's text stands in any case.
        }
    }

    private string? ReadDisk()
    {
        try
        {
            return File.Exists(_path) ? File.ReadAllText(_path) : null;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return null;
        }
    }

    private static void Write(string path, string text) => AtomicFile.Write(path, text);
}
