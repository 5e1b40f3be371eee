using LabelForge.Web.Editing;
using Microsoft.AspNetCore.Components;

namespace LabelForge.Web.Components.Parts;

/// <summary>A page that shows one file of the workshop and is drawn anew when it changes.</summary>
public abstract class FileView : ComponentBase, IDisposable
{
    private EditedFile? _file;

    /// <summary>The open documents.</summary>
    [Inject]
    public required OpenDocuments OpenDocuments { get; init; }

    /// <summary>The file; null where there is none.</summary>
    protected EditedFile? File
    {
        get => _file;
        set
        {
            if (_file == value)
                return;
            if (_file is not null)
                _file.Changed -= FileChanged;
            _file = value;
            if (_file is not null)
                _file.Changed += FileChanged;
        }
    }

    /// <inheritdoc/>
    protected override void OnInitialized() => OpenDocuments.Changed += WorkshopChanged;

    /// <inheritdoc/>
    public void Dispose()
    {
        Dispose(true);
        GC.SuppressFinalize(this);
    }

    /// <summary>Lets go of what is watched.</summary>
    protected virtual void Dispose(bool disposing)
    {
        File = null;
        OpenDocuments.Changed -= WorkshopChanged;
    }

    /// <summary>The file's text changed; told on any thread.</summary>
    protected virtual void FileChanged() => InvokeAsync(StateHasChanged);

    /// <summary>Some file of the workshop was written; told on any thread.</summary>
    protected virtual void WorkshopChanged() => InvokeAsync(StateHasChanged);
}
