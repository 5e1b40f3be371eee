using LabelForge.Web.Workbench;
using Microsoft.AspNetCore.Components;
using Microsoft.JSInterop;

namespace LabelForge.Web.Components.Parts;

/// <summary>A page with a form: what is wrong with a field stands at that field, and the focus goes there; what no field is to blame for
/// is told beside the button.</summary>
public abstract class FormView : ComponentBase
{
    private bool _toField;

    [Inject]
    private IJSRuntime Page { get; set; } = default!;

    /// <summary>What the page says.</summary>
    [Inject]
    public required Say PageSay { get; init; }

    /// <summary>Why the last thing asked for could not be done.</summary>
    protected Problem? Refused { get; set; }

    /// <summary>What was done last.</summary>
    protected string? Done { get; set; }

    /// <summary>What is wrong with a field; null where it is not to blame.</summary>
    /// <param name="field">The field's id.</param>
    protected string? Wrong(string field) => Entry.WrongAt(Refused, field, PageSay.Language);

    /// <summary>Does something, and tells on the page what became of it.</summary>
    /// <returns>Whether it was done.</returns>
    protected async Task<bool> Try(Func<Task<string>> act)
    {
        (Refused, Done) = (null, null);
        try
        {
            Done = await act();
            return true;
        }
        catch (InputException e)
        {
            Refused = PageWords.Of(e.Problem, PageSay.Language);
            _toField = Entry.IsAtField(Refused);
            return false;
        }
    }

    /// <inheritdoc/>
    protected override async Task OnAfterRenderAsync(bool firstRender)
    {
        if (!_toField)
            return;
        _toField = false;
        await Page.InvokeVoidAsync("labelforge.focus", Entry.FieldOf(Refused));
    }
}
