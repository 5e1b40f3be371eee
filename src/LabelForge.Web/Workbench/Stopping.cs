namespace LabelForge.Web.Workbench;

/// <summary>Whether the program is about to end: from then on no window is told anything, for
/// what a window would be drawn with is being put away.</summary>
public sealed class Stopping
{
    private volatile bool _is;

    /// <summary>Whether it has begun.</summary>
    public bool Is => _is;

    /// <summary>Begins it; there is no way back.</summary>
    internal void Begin() => _is = true;
}
