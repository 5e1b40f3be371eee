using Microsoft.JSInterop;

namespace LabelForge.Web.Workbench;

/// <summary>What is said to a page's script while the page may be closing.</summary>
internal static class PageScript
{
    /// <summary>Tells the script that something ends; where the window is closed already, its
    /// script is gone with it and nothing has to be told.</summary>
    /// <remarks>A window that closes is disconnected, its calls are cancelled, or its services are gone, by how far it has got.</remarks>
    public static async ValueTask TellLastAsync(this IJSRuntime script, string what, params object?[] with)
    {
        try
        {
            await script.InvokeVoidAsync(what, with);
        }
        catch (Exception e) when (e is JSDisconnectedException or OperationCanceledException or ObjectDisposedException)
        {
        }
    }
}
