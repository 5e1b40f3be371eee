using LabelForge.Print.Designs;
using LabelForge.Web.Workbench;

namespace LabelForge.Web.Components.Parts;

/// <content>Words that are moved, and taking back.</content>
public abstract partial class LookView
{
    private readonly Stack<LookTry> _moves = new();

    /// <summary>Moves words, as far as the rules let them; each words' way is one step to take back.</summary>
    protected void MoveWords((Role Role, decimal X, decimal Y, bool Further) to)
    {
        if (Tried is not { } tried)
            return;
        var (x, y) = to.Further ? Settled(tried).MovedBy(to.Role) : default;
        var next = tried.WithMoved(to.Role, x + to.X, y + to.Y);
        if (next == tried)
            return;
        if (_moves.Count == 0 || _moves.Peek() is var last && (last.WithMoved(to.Role, 0, 0) != tried.WithMoved(to.Role, 0, 0)))
            _moves.Push(tried);
        Try(next);
    }

    /// <summary>Takes back what was moved or used last.</summary>
    protected void Undo()
    {
        if (_moves.TryPop(out var before))
        {
            Try(before);
            Told = Words["look.undone"];
            return;
        }
        foreach (var file in _undo)
            file.Undo();
        _undo.Clear();
        Told = Words["look.undone"];
        Tried = null;
        Remake();
    }

    // Words stand where they could go, which may be short of where they were wanted.
    private LookTry Settled(LookTry tried) => Draft is { Layout: { } layout } && Draft.Of == tried
        ? layout.Moved.Aggregate(tried, (t, m) => t.WithMoved(m.Key, LookTry.Millimetres(m.Value.X), LookTry.Millimetres(m.Value.Y)))
        : tried;
}
