using LabelForge.Days;

namespace LabelForge.Web.Workbench;

/// <summary>What the workshop's suppliers and wrappers have to be asked. It takes the proof of every product: it is found once for the
/// files as they stand, for all windows, away from the thread that draws them.</summary>
public sealed class WorkshopQuestions
{
    private readonly Lock _gate = new();
    private (Workshop Workshop, DateOnly On, Task<ImmutableArray<OpenThing>> Found)? _known;

    /// <summary>The questions, or the work that finds them.</summary>
    /// <param name="workshop">The workshop as its files stand.</param>
    /// <param name="on">The day.</param>
    public Task<ImmutableArray<OpenThing>> Of(Workshop workshop, DateOnly on)
    {
        lock (_gate)
        {
            if (_known is { } known && ReferenceEquals(known.Workshop, workshop) && known.On == on)
                return known.Found;
            var found = Task.Run(() => OpenQuestions.Of(workshop, on));
            _known = (workshop, on, found);
            return found;
        }
    }
}
