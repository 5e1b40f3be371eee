using LabelForge.Records.Books;
using LabelForge.Tests.Shared;

namespace LabelForge.Records.Tests.Books;

/// <summary>Books on a server are listened to while the page is open, and no longer.</summary>
public sealed class ServerWatchTests
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(60);

    // Port 1 of the machine itself: nothing answers there.
    private static readonly BookPlace Nowhere = BookPlace.OnServer("Host=127.0.0.1;Port=1;Database=books;Username=nobody");

    [Fact]
    public async Task A_watch_that_is_ended_before_it_is_connected_ends_without_a_fault()
    {
        for (var i = 0; i < 50; i++)
        {
            var watch = new ServerWatch(Nowhere, () => { });
            watch.Dispose();
            await watch.Ended.WaitAsync(Patience, TestContext.Current.CancellationToken);
        }
    }

    [Fact]
    public async Task What_another_program_writes_is_told_and_nothing_once_the_watch_has_ended()
    {
        var place = BookPlace.OnServer(TestServer.NewBooks());
        var (told, times) = (new TaskCompletionSource(), 0);
        var watch = new ServerWatch(place, () =>
        {
            Interlocked.Increment(ref times);
            told.TrySetResult();
        });
        await watch.Listening.Task.WaitAsync(Patience, TestContext.Current.CancellationToken);
        Receive(place);
        await told.Task.WaitAsync(Patience, TestContext.Current.CancellationToken);
        watch.Dispose();
        await watch.Ended.WaitAsync(Patience, TestContext.Current.CancellationToken);
        var before = times;
        Receive(place);
        Assert.Equal(before, times);
    }

    private static void Receive(BookPlace place) => StockMovements.Receive(OpenBooks.Open(place),
        new Receipt { On = new(2026, 11, 25), By = "A", Material = "base", Amount = 100, Price = 1, Supplier = "Heron" });
}
