using Npgsql;

namespace LabelForge.Records.Books;

/// <summary>Tells of what other programs write into books on a server: whoever writes tells the
/// server, and the server all who listen.</summary>
/// <remarks>Where the line to the server breaks it is taken up again, and told, since something may have been written meanwhile.</remarks>
public sealed class ServerWatch : IDisposable
{
    /// <summary>What a writer tells, as SQL; the server passes it on when the transaction is committed, and not before.</summary>
    internal const string Tell = "NOTIFY labelforge_books;";

    private static readonly TimeSpan Again = TimeSpan.FromSeconds(5);

    private readonly CancellationTokenSource _end = new();
    private readonly Action _changed;

    /// <summary>Begins to listen.</summary>
    /// <param name="place">Books on a server.</param>
    /// <param name="changed">Told of each change, on any thread.</param>
    public ServerWatch(BookPlace place, Action changed)
    {
        _changed = changed;
        Server = place.Server ?? throw new ArgumentException("These books are on no server.", nameof(place));
        Listening = new TaskCompletionSource();
        // Taken before anybody can end it: a source that is disposed of gives no token.
        var stop = _end.Token;
        Ended = Task.Run(() => Listen(stop));
    }

    /// <summary>The server that is listened to.</summary>
    public string Server { get; }

    /// <summary>Done once it listens: what is written from then on is told.</summary>
    public TaskCompletionSource Listening { get; }

    /// <summary>Done once it was ended and listens no more; never at fault.</summary>
    public Task Ended { get; }

    /// <inheritdoc/>
    public void Dispose()
    {
        _end.Cancel();
        _end.Dispose();
    }

    private async Task Listen(CancellationToken stop)
    {
        for (var first = true; !stop.IsCancellationRequested; first = false)
        {
            try
            {
                await using var connection = new NpgsqlConnection(new NpgsqlConnectionStringBuilder(Server)
                {
                    Pooling = false,
                    KeepAlive = 30,
                }.ToString());
                await connection.OpenAsync(stop);
                connection.Notification += (_, _) => _changed();
                await using (var listen = new NpgsqlCommand("LISTEN labelforge_books", connection))
                    await listen.ExecuteNonQueryAsync(stop);
                Listening.TrySetResult();
                if (!first)
                    _changed();
                while (true)
                    await connection.WaitAsync(stop);
            }
            catch (Exception e) when (e is NpgsqlException or OperationCanceledException or IOException or ObjectDisposedException)
            {
                // The server went away, or the page closes.
            }
            try
            {
                await Task.Delay(Again, stop);
            }
            catch (OperationCanceledException)
            {
                return;
            }
        }
    }
}
