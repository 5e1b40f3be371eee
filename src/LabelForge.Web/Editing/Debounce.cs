namespace LabelForge.Web.Editing;

/// <summary>Does something once things have been quiet for a while.</summary>
internal sealed class Debounce(TimeSpan pause, Action act)
{
    private readonly Lock _gate = new();
    private readonly SemaphoreSlim _one = new(1);
    private CancellationTokenSource? _waiting;

    /// <summary>Begins to wait, or waits anew.</summary>
    public void Start()
    {
        lock (_gate)
        {
            _waiting?.Cancel();
            var own = _waiting = new CancellationTokenSource();
            _ = Task.Delay(pause, own.Token)
                .ContinueWith(_ => Act(own), own.Token, TaskContinuationOptions.OnlyOnRanToCompletion, TaskScheduler.Default);
        }
    }

    /// <summary>Does it now, if it waits; and waits for one that is under way.</summary>
    public async Task NowAsync()
    {
        CancellationTokenSource? waiting;
        lock (_gate)
            waiting = _waiting;
        if (waiting is not null)
            await Task.Run(() => Act(waiting));
        await _one.WaitAsync();
        _one.Release();
    }

    private void Act(CancellationTokenSource own)
    {
        lock (_gate)
        {
            if (_waiting != own)
                return;
            _waiting = null;
            own.Cancel();
        }
        _one.Wait();
        try
        {
            act();
        }
        finally
        {
            _one.Release();
        }
    }
}
