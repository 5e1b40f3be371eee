using LabelForge.Web.Editing;
using LabelForge.Web.Workbench;
using Microsoft.AspNetCore.Components;

namespace LabelForge.Web.Components.Parts;

/// <summary>A page of fields over one file: what is typed goes into the file's text, what is wrong is told at its field.</summary>
public abstract class EditorView : FileView
{
    [Inject]
    private Say Chosen { get; set; } = default!;

    /// <summary>The file's text.</summary>
    protected string Text => File?.Text ?? "";

    /// <summary>What is wrong with the file as it stands; a page may know more than the file.</summary>
    protected virtual Problem? Trouble => File?.Problem;

    /// <summary>The usual order of the file's keys.</summary>
    protected abstract IReadOnlyList<string> Order { get; }

    /// <summary>The value at a path, or nothing.</summary>
    protected string Get(params Step[] path) => YamlEdit.Get(Text, path) ?? "";

    /// <summary>Writes a value as it is typed.</summary>
    protected void Set(string value, params Step[] path)
    {
        if (value.Length == 0 && YamlEdit.Get(Text, path) is null)
            return;
        Edit(text => YamlEdit.Set(text, path, value, Order), string.Join('/', path.Select(s => s.Key ?? $"{s.Index}")));
    }

    // What is being typed in another way than the file has it; the file's own way is shown once the field is left.
    private (string Path, string Typed)? _loose;

    /// <summary>What a field shows that is read loosely: what is typed there, else the file's value.</summary>
    protected string Typed(params Step[] path) => _loose is { } loose && loose.Path == Name(path) ? loose.Typed : Get(path);

    /// <summary>What the file has for what is typed, where it is in other words; null where it is the same.</summary>
    protected string? Understood(params Step[] path) => _loose is { } loose && loose.Path == Name(path) ? Get(path) : null;

    /// <summary>Writes a value as it is typed, in the file's own way.</summary>
    protected void SetLoosely(string typed, Func<string, string> read, params Step[] path)
    {
        var strict = read(typed);
        _loose = strict == typed ? null : (Name(path), typed);
        Set(strict, path);
    }

    /// <summary>The field was left: it shows the file's own way from now on.</summary>
    protected void LeaveLoosely() => _loose = null;

    private static string Name(Step[] path) => string.Join('/', path.Select(s => s.Key ?? $"{s.Index}"));

    /// <summary>On leaving a field that was emptied, its key goes too.</summary>
    protected void Leave(string value, params Step[] path)
    {
        if (value.Length == 0 && YamlEdit.Get(Text, path) is not null)
            Edit(text => YamlEdit.Remove(text, path));
    }

    /// <summary>Changes the text; what cannot be changed here is told on the page.</summary>
    protected void Edit(Func<string, string> edit, string? field = null)
    {
        try
        {
            Refused = null;
            File?.Apply(edit, field);
        }
        catch (InputException e)
        {
            Refused = e.Problem;
        }
    }

    /// <summary>Why the last change could not be made; null where it was.</summary>
    protected Problem? Refused { get; private set; }

    /// <summary>What is wrong at a field, by the place that the problem names; where it names
    /// none, or one that holds the field, by the line.</summary>
    protected string? Wrong(params Step[] path)
    {
        if (Trouble is not { } trouble)
            return null;
        // A letter that cannot be printed has no line: it is looked for where it was typed. Labels may set it in capitals.
        if (trouble.Letter is { } letter)
            return Get(path).Contains(letter, StringComparison.OrdinalIgnoreCase) ? PageWords.Told(trouble, Chosen.Language) : null;
        var field = string.Join('/', path.Select(s => s.Key ?? s.Index.ToString(System.Globalization.CultureInfo.InvariantCulture)));
        var at = trouble.Path ?? "";
        var here = at == field || at.StartsWith(field + "/", StringComparison.Ordinal)
            || ((at.Length == 0 || field.StartsWith(at + "/", StringComparison.Ordinal))
                && trouble.Line > 0
                && YamlEdit.LineOf(Text, path) == trouble.Line);
        return here ? PageWords.Told(trouble, Chosen.Language) : null;
    }
}
