using LabelForge.Web.Workbench;
using Microsoft.AspNetCore.Components;
using Microsoft.JSInterop;

namespace LabelForge.Web.Components.Parts;

/// <summary>Sets the focus where a page's reading begins when one arrives at it: on what the page
/// marks with <c>data-first</c>, else on its heading.</summary>
/// <remarks>The framework's own component takes the focus from a field in which one types
/// already, since it is told later than the page is seen.</remarks>
public sealed class FocusOnArrival : ComponentBase
{
    private Type? _page;
    private bool _arrived;

    /// <summary>The page that was come to.</summary>
    [Parameter, EditorRequired]
    public RouteData RouteData { get; set; } = null!;

    [Inject]
    private IJSRuntime Script { get; set; } = null!;

    /// <inheritdoc />
    protected override void OnParametersSet()
    {
        (_arrived, _page) = (_arrived || _page != RouteData.PageType, RouteData.PageType);
    }

    /// <inheritdoc />
    protected override async Task OnAfterRenderAsync(bool firstRender)
    {
        if (!_arrived)
            return;
        _arrived = false;
        await Script.TellLastAsync("labelforge.arrive");
    }
}
