using LabelForge.Web.Workbench;
using Microsoft.JSInterop;

namespace LabelForge.Web.Tests.Serving;

/// <summary>A window that closes takes its script with it. What it is told last may find it disconnected, its calls cancelled, or its
/// services gone, by how far it has got: none of these is trouble. What else goes wrong still is.</summary>
public class ClosingWindowTests
{
    public static TheoryData<string> Closing => ["disconnected", "cancelled", "gone"];

    [Theory]
    [MemberData(nameof(Closing))]
    public async Task A_window_that_closes_is_told_its_last_without_trouble(string how)
    {
        var window = new ClosedWindow(how switch
        {
            "disconnected" => new JSDisconnectedException("The circuit has disconnected."),
            "cancelled" => new TaskCanceledException(),
            _ => new ObjectDisposedException("IServiceProvider"),
        });
        await window.TellLastAsync("labelforgeScan.leave", 1);
        Assert.Equal(["labelforgeScan.leave"], window.Told);
    }

    [Fact]
    public async Task Other_trouble_of_a_script_is_told()
    {
        var window = new ClosedWindow(new JSException("labelforgeScan is not defined"));
        await Assert.ThrowsAsync<JSException>(async () => await window.TellLastAsync("labelforgeScan.leave"));
    }

    private sealed class ClosedWindow(Exception trouble) : IJSRuntime
    {
        public List<string> Told { get; } = [];

        public ValueTask<TValue> InvokeAsync<TValue>(string identifier, object?[]? args)
        {
            Told.Add(identifier);
            throw trouble;
        }

        public ValueTask<TValue> InvokeAsync<TValue>(string identifier, CancellationToken cancellationToken, object?[]? args) =>
            InvokeAsync<TValue>(identifier, args);
    }
}
