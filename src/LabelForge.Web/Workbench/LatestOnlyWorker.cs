namespace LabelForge.Web.Workbench;

/// <summary>Does work off the thread that draws, for the latest wish only: an older one is stopped and its answer thrown away.</summary>
/// <param name="work">The work.</param>
/// <param name="ready">Told the answer, on any thread.</param>
/// <param name="failed">Told of trouble that nobody foresaw.</param>
/// <param name="stopping">Whether the program ends, and neither is told any more: windows that
/// lost touch are kept for a while, and draw what they are told.</param>
public sealed class LatestOnlyWorker<TWish, TAnswer>(Func<TWish, CancellationToken, Task<TAnswer>> work, Func<TAnswer, Task> ready,
    Func<Exception, Task> failed, Stopping stopping) : IDisposable
{
    /// <summary>The same, of work that waits for nothing.</summary>
    public LatestOnlyWorker(Func<TWish, CancellationToken, TAnswer> work, Func<TAnswer, Task> ready, Func<Exception, Task> failed,
        Stopping stopping)
        : this((wish, stop) => Task.FromResult(work(wish, stop)), ready, failed, stopping)
    {
    }

    private readonly Lock _gate = new();
    private CancellationTokenSource? _under;
    private (TWish Wish, bool Is) _waiting;
    private bool _busy;
    private bool _over;

    /// <summary>Asks for work.</summary>
    public void Want(TWish wish)
    {
        lock (_gate)
        {
            if (_over)
                return;
            _waiting = (wish, true);
            _under?.Cancel();
            if (_busy)
                return;
            _busy = true;
        }
        _ = Task.Run(Go);
    }

    /// <summary>Nothing is wanted any more; the answer to what is under way is thrown away.</summary>
    public void Forget()
    {
        lock (_gate)
        {
            _waiting = default;
            _under?.Cancel();
        }
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        lock (_gate)
        {
            (_over, _waiting) = (true, default);
            _under?.Cancel();
        }
    }

    private async Task Go()
    {
        while (true)
        {
            TWish wish;
            CancellationTokenSource stop;
            lock (_gate)
            {
                if (!_waiting.Is)
                {
                    _busy = false;
                    return;
                }
                (wish, _waiting) = (_waiting.Wish, default);
                stop = _under = new CancellationTokenSource();
            }
            try
            {
                var answer = await work(wish, stop.Token);
                if (!stop.IsCancellationRequested && !stopping.Is)
                    await ready(answer);
            }
            catch (OperationCanceledException)
            {
                // A newer wish came.
            }
            catch (Exception e)
            {
                if (!stopping.Is)
                    await failed(e);
            }
        }
    }
}
